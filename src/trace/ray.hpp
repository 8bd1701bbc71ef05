// One ray through one eye's path, surface by surface: the scalar reference that reads like the textbook.
//
// What becomes of a ray is a value, not an error: it is reached (it arrives at the plane of the last
// surface), clipped outside an opening, leaked through a bare face that should have reflected it, or
// missed (it runs beside a surface it can never meet).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "train/train.hpp"

namespace beamfork {

enum class RayFate : std::uint8_t { reached, clipped, leaked, missed };

struct Ray {
    Point origin{0.0};
    Direction direction{0, 0, 1};  ///< unit
    double path = 0;               ///< optical path length so far, mm
};

struct RayEnd {
    RayFate fate = RayFate::reached;
    std::size_t surface = 0;  ///< where it ended, index into EyePath::surfaces
    Ray ray;                  ///< there: position, direction before that surface acts, optical path
};

/// Where a ray starts, turns or ends.
struct RayCorner {
    std::optional<std::size_t> surface;  ///< index into EyePath::surfaces; none where it starts
    Point at{0.0};                       ///< where it arrives
    Point leaves{0.0};  ///< where it goes on: an ideal objective lets light go on from a sphere
    /// Optical path as it arrives and as it goes on, mm: an ideal lens's glass lies between.
    double path_in = 0;
    double path_out = 0;
};

inline RayCorner start_of(const Ray& ray) {
    return {std::nullopt, ray.origin, ray.origin, ray.path, ray.path};
}

/// One ray from its start to its end.
struct TracedRay {
    RayEnd end;
    /// Its start, where it turns, where it ends, in order; not the openings that it passes.
    std::vector<RayCorner> corners;
    [[nodiscard]] bool is_lost() const { return end.fate != RayFate::reached; }
};

/// Traces to the last surface, whose own opening does not clip: it is the plane where light is counted.
/// `corners`, when given, receives those of TracedRay.
RayEnd trace_ray(const EyePath& path,
                 const Ray& start,
                 std::size_t wavelength,
                 std::vector<RayCorner>* corners = nullptr);
TracedRay trace_with_corners(const EyePath& path, const Ray& start, std::size_t wavelength);

/// The first of the two faces of a roof, which stand side by side in the path and are met in either order.
std::size_t first_of_roof(const EyePath& path, std::size_t face);

/// What happens to a ray that stands on a surface: its new direction, place and path, or nothing when the
/// surface lets it leak out. Positions and directions are in the surface's own frame.
struct LocalRay {
    Point at{0.0};
    Direction direction{0, 0, 1};
    double path = 0;
};
std::optional<LocalRay> interact(const PlacedSurface& surface,
                                 const LocalRay& arriving,
                                 std::size_t wavelength,
                                 double object_distance);

/// Direction after refraction at a plane z = 0 from index n1 into n2 (Snell's law in vector form), or
/// nothing when it is totally reflected.
std::optional<Direction> refracted(const Direction& direction, double n1, double n2);

}  // namespace beamfork
