#include "study/ways_to_focus/way_light.hpp"

#include "study/light/brightness.hpp"

namespace beamfork {

GivenLight given_light(const Setup& setup,
                       const Train& train,
                       const Magnification& magnification,
                       ClippingEffort effort) {
    GivenLight light;
    std::array<double, 2> on_axis{};
    for (std::size_t side = 0; side < 2; ++side) {
        const MiddleAndEdge lit = middle_and_edge(train, both_eyes[side], effort);
        on_axis[side] = lit.middle;
        light.edge += lit.edge / 2;
        light.working_aperture += lit.working_aperture / 2;
    }
    for (const EyeBrightness& eye : brightness(setup, train, on_axis, magnification).eyes) {
        light.into_eye += eye.total() / 2;
        light.surface += eye.surface_brightness / 2;
    }
    return light;
}

std::optional<double> magnitudes_lost(double before, double after) {
    if (before <= 0 || after <= 0) return std::nullopt;
    return magnitudes(after / before);
}

}  // namespace beamfork
