#include "study/findings/unstated_inside.hpp"

namespace beamfork {

std::string where_glass_is_taken(const FindingScope& scope, std::size_t part) {
    return "if the glass of " + scope.name(part) + " stands where "
           + (stated_light_path(scope.setup.parts[part].body) ? "the stated light path puts it"
                                                              : "it usually does");
}

std::string measure_from_seat() {
    return "Measure the depth from the seat to the first glass (study “Home measurements”) and "
           "state it "
           "as “Seat height”.";
}

std::string measure_from_front() {
    return "Measure the depth from the front face to the first glass (study “Home measurements”) "
           "and "
           "state it as “Air before the cube”.";
}

std::string measure_inside() {
    return "Measure the depths to the first glass, from the front face and from the seat (study "
           "“Home "
           "measurements”), and state them as “Air before the cube” and “Seat height”.";
}

}  // namespace beamfork
