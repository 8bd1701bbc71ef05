#include "parts/prism_errors.hpp"

namespace beamfork {

const std::array<PrismErrorKind, 6>& prism_error_kinds() {
    using E = PrismErrors;
    static constexpr std::array kinds{
        PrismErrorKind{&E::tilt_x, FieldUnit::arcminute, "tilt_x_arcmin", "tilt in its bend",
                       "How far the prism is turned in the plane in which it bends the light."},
        PrismErrorKind{&E::tilt_y, FieldUnit::arcminute, "tilt_y_arcmin", "tilt across its bend",
                       "How far the prism is turned about the direction to which it sends the "
                       "light."},
        PrismErrorKind{&E::roll, FieldUnit::arcminute, "roll_arcmin", "roll",
                       "How far the prism is turned about the light that enters it."},
        PrismErrorKind{&E::shift_x, FieldUnit::millimetre, "shift_x_mm", "shift across its bend",
                       "How far the prism stands beside the plane in which the light is bent."},
        PrismErrorKind{&E::shift_y, FieldUnit::millimetre, "shift_y_mm", "shift in its bend",
                       "How far the prism stands off, towards the side to which it sends the "
                       "light."},
        PrismErrorKind{&E::shift_z, FieldUnit::millimetre, "shift_z_mm", "shift along the light",
                       "How far the prism stands off along the light that enters it."},
    };
    return kinds;
}

Pose ideal_from_real(const PrismErrors& errors, const Point& middle) {
    if (errors == PrismErrors{}) return {};
    const auto angle = [](double arcminutes) { return to_radians(Arcminutes{arcminutes}); };
    const Pose turned = rotation_about_x(angle(errors.tilt_x))
                        * rotation_about_y(angle(errors.tilt_y))
                        * rotation_about_z(angle(errors.roll));
    return translation(middle.x + errors.shift_x, middle.y + errors.shift_y,
                       middle.z + errors.shift_z)
           * turned * translation(-middle.x, -middle.y, -middle.z);
}

FieldInfo prism_error_info(const std::string& prism_key,
                           const std::string& prism_label,
                           const PrismErrorKind& kind) {
    FieldInfo info;
    info.key = prism_key + "_" + std::string(kind.key);
    info.label = prism_label + ": " + std::string(kind.words);
    info.help = std::string(kind.help);
    info.unit = kind.unit;
    const bool is_turn = kind.unit == FieldUnit::arcminute;
    info.high = is_turn ? 120 : 3;
    info.low = -info.high;
    info.usual_high = is_turn ? 20 : 0.5;
    info.usual_low = -info.usual_high;
    return info;
}

}  // namespace beamfork
