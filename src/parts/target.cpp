#include "parts/target.hpp"

namespace beamfork {

std::vector<Field<Target>> Target::fields() {
    FieldInfo distance;
    distance.key = "distance_m";
    distance.label = "Distance";
    distance.help =
        "From the telescope's front lens, or from the rim of its main mirror; leave it unstated "
        "for the sky.";
    distance.unit = FieldUnit::metre;
    distance.low = 5;
    distance.high = 1e7;
    distance.usual_low = 10;
    distance.usual_high = 1000;
    return {optional_field(distance, &Target::distance)};
}

}  // namespace beamfork
