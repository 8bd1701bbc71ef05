#include "parts/balance.hpp"

namespace beamfork {

FieldInfo tube_mass_info() {
    return mass_info("tube_mass_g", "Tube mass",
                     "What the tube weighs with its focuser, without anything behind the drawtube.",
                     200000, 1000, 15000);
}

FieldInfo balance_point_info() {
    return apart_from_light(
        length_info("balance_point_mm", "Balance point",
                    "Where that tube balances on a finger, measured along it from the objective "
                    "lens; of a mirror telescope, from the front of the light's path.",
                    -1000, 5000, 50, 1500));
}

FieldInfo counterweight_info() {
    return apart_from_light(
        length_info("counterweight_distance_mm", "Counterweight distance",
                    "How far from the balance point a counterweight can hang on the tube, on "
                    "the other side than the load.",
                    10, 3000, 50, 800));
}

FieldInfo free_behind_info() {
    return apart_from_light(
        length_info("free_behind_mm", "Free at the zenith",
                    "How much room the fork, tripod or pier leaves behind the focuser with the "
                    "drawtube racked in, along the drawtube, when the telescope points up.",
                    0, 5000, 50, 600));
}

}  // namespace beamfork
