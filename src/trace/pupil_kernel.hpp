// The inner loops behind pupil_map and pupil_outline, compiled once for each set of vector instructions; the program takes
// the best the processor has.
#pragma once

#include "trace/pupil_edges.hpp"

namespace beamfork {

// --- Bounds from rays: field points side by side.

/// Where the nodes' rays of all field points met one plane, and how they came: columns of pupil_node_count *
/// fields_at_once numbers, node by node.
struct NodeMeetings {
    std::array<const double*, 3> at{};
    std::array<const double*, 3> along{};
};

/// A bound of many field points.
struct BoundLanes {
    CubicLanes u, v;
    FieldLanes
        nearest{};  ///< below 0 where the bound may take light; else its cubics may be left unset
};

void fit_bound(const PupilEdge& edge,
               const NodeMeetings& met,
               const CubicFit& fit,
               BoundLanes& found);

// --- Light from bounds: azimuths side by side.

inline constexpr std::size_t most_azimuths = 128;
struct alignas(64) AzimuthColumn : std::array<double, most_azimuths> {};

/// Lines from one point of the pupil to its rim.
struct AzimuthLines {
    std::size_t count = most_azimuths;  ///< a multiple of 16
    AzimuthColumn x, y;                 ///< unit directions
    AzimuthColumn end;                  ///< length
};

/// A bound seen from the point where the lines start.
struct SeenBound {
    PupilBound::Shape shape = PupilBound::Shape::half;
    PupilCubic u, v;
    double residual = 0;  ///< of the value whose sign tells inside from outside
};

/// On each line the stretch that is inside the bound's edge; empty where none is. It may be told to end beyond the line.
struct InsideStretches {
    AzimuthColumn from, to;
    AzimuthColumn off;  ///< how far the line's crossings may be wrong; 0 where it crosses nothing
    bool starts_inside = false;  ///< the point is: all stretches begin there
    /// Of an opening: all lines are inside to their end, nothing else is told.
    bool is_whole = false;
};

void find_inside(const SeenBound& bound, const AzimuthLines& lines, InsideStretches& found);

}  // namespace beamfork
