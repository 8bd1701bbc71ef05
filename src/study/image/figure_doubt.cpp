#include "study/image/figure_doubt.hpp"

#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"

#include <fmt/format.h>

namespace beamfork {

bool FigureDoubt::matters() const {
    constexpr double shows = 0.25;
    return std::max(std::abs(low), std::abs(high)) > shows;
}

std::string FigureDoubt::sentence() const {
    return fmt::format("The figure of the telescope's mirrors is not stated: at this focus they "
                       "have between {:+.1f} and {:+.1f} waves of spherical aberration, by kind. "
                       "The sharpness shown assumes a paraboloid with a hyperboloid.",
                       low, high);
}

std::optional<FigureDoubt> figure_doubt(const Setup& setup, const Train& train) {
    const auto* mirrors = find_part<CassegrainMovingMirror>(setup);
    if (mirrors == nullptr || mirrors->figure != MirrorFigure::unknown) return std::nullopt;
    const MirrorDesign design = mirrors->design();
    // A target's distance counts from the main mirror's rim.
    const double rim = design.aperture * design.aperture / (16 * design.primary_focal_length);
    const double wavelength = to_millimetres(traced_wavelengths[primary_wavelength]).value;
    FigureDoubt doubt{HUGE_VAL, -HUGE_VAL};
    for (const MirrorFigure figure : known_mirror_figures()) {
        const double waves = spherical_of_mirrors(design, mirror_shapes(design, figure),
                                                  train.primary.value, train.object_distance + rim)
                             / wavelength;
        doubt.low = std::min(doubt.low, waves);
        doubt.high = std::max(doubt.high, waves);
    }
    return doubt;
}

}  // namespace beamfork
