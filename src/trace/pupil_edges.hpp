// Every place of a straightened path where light can end, as linear measures of where and how light meets it.
#pragma once

#include <optional>
#include <vector>

#include "trace/pupil_map.hpp"
#include "trace/roof_meetings.hpp"

namespace beamfork {

/// A number taken from a ray at a plane.
struct Gauge {
    enum class Of : std::uint8_t {
        place,        ///< along . place - from
        more_than,    ///< |along . direction| - from
        no_more_than  ///< from - |along . direction|
    };
    Of of = Of::place;
    Direction along{0.0};  ///< in the straightened path, 1/mm
    double from = 0;
};

/// A PupilBound before anything is traced.
struct PupilEdge {
    std::size_t surface = 0;
    bool is_leak = false;
    PupilBound::Shape shape = PupilBound::Shape::half;
    Gauge u, v;
    /// Of a roof's face: which roof, index into PupilEdges::roofs, and which way of meeting it.
    std::optional<std::size_t> roof;
    RoofHit hit = RoofHit::first;
};

struct PupilEdges {
    std::vector<PupilEdge> edges;  ///< in the order of the light
    std::vector<RoofFaces> roofs;
};

/// Of a path straightened without stacks of plates. Nothing where an obstruction has corners.
std::optional<PupilEdges> pupil_edges(const StraightPath& path);

}  // namespace beamfork
