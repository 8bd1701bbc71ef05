#include "parts/mount.hpp"

namespace beamfork {

FieldInfo front_fitting_info() {
    FieldInfo info;
    info.key = "front_fitting";
    info.label = "Front fitting";
    info.help = "Barrel or thread at the end towards the telescope. A barrel or a male thread goes "
                "into the part before it; “own” fits only parts of the same maker; filters of 2 "
                "inch have M48x0.75.";
    return info;
}

FieldInfo rear_fitting_info() {
    FieldInfo info = front_fitting_info();
    info.key = "rear_fitting";
    info.label = "Rear fitting";
    info.help = "Barrel holder or thread at the end towards the eyes. A holder or a female thread "
                "takes up the part behind it; “own” fits only parts of the same maker.";
    return info;
}

FieldInfo part_mass_info() {
    return mass_info("mass_g", "Mass", "What it weighs; of a pair, one piece.", 10000, 20, 1200);
}

FieldInfo mass_info(std::string key,
                    std::string label,
                    std::string help,
                    double high,
                    double usual_low,
                    double usual_high) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::gram;
    info.low = 0;
    info.high = high;
    info.usual_low = usual_low;
    info.usual_high = usual_high;
    return apart_from_light(std::move(info));
}

}  // namespace beamfork
