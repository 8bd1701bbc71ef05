// The light of one eye in a section through its unfolded axis: rays really traced from the middle and from both
// edges of the field, gathered into bands that share one fate.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/unfolded_path/unfolded_axis.hpp"

namespace beamfork {

enum class RayFate : std::uint8_t;
struct EyePath;
struct Train;

/// A place on the axis and the heights of the two rays that bound a band there, mm.
struct BandPlace {
    double at = 0;
    double a = 0;
    double b = 0;
};

/// Neighbouring rays with one fate, from the telescope's last lens or mirror to where they end; those that reach the
/// field stop go on behind it.
struct LightBand {
    RayFate fate{};
    std::size_t surface = 0;  ///< where they end, index into EyePath::surfaces
    std::vector<BandPlace> places;
    double width = 0;  ///< share of the pupil's diameter, 0..1
};

/// The light of one point of the field.
struct LightCone {
    double field = 0;  ///< -1 and 1: the edges of the field stop; 0: its middle
    std::vector<LightBand> bands;
    [[nodiscard]] double arriving() const;  ///< share of the pupil's diameter, 0..1
};

/// The middle of the field, then its edge on the side of `across`, then the other edge. `across` is a unit vector in
/// the unfolded frame's x and y; heights are positive on its side. Rays that a telescope's own obstruction takes are
/// left out. Rays that arrive are followed to `end` on the unfolded axis.
std::vector<LightCone> traced_cones(const Train& train,
                                    const EyePath& path,
                                    const UnfoldedAxis& axis,
                                    glm::dvec2 across,
                                    double end);

/// The telescope's last lens or mirror: where the drawn light begins.
std::size_t last_telescope_surface(const EyePath& path);

}  // namespace beamfork
