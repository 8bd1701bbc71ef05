// Clipping: how much of the objective's light arrives at each point of each field stop, which opening
// took the rest, how large the fully lit middle is, and how much of the aperture works on axis.
//
// The objective's light is what passes the telescope's own obstruction (a secondary and its holder) from the
// same point of the field: that shadow is no loss here, and the middle of an obstructed telescope that clips
// nothing is lit with 1. `obstructed_share` tells it apart.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "train/train.hpp"

namespace beamfork {

/// How the light of a field point is found.
enum class LightForm : std::uint8_t {
    many_rays,  ///< counted: the settled answer
    few_rays,  ///< from how a few rays are bounded (few_ray_light.hpp): for drags; within 0.5 % of the settled answer
};

/// How many rays are spent; the answer's error falls with it (about 0.5 % at 1024 rays a point). Not of meaning where
/// few rays do: those take 16, and a field point that they do not describe is given 4096.
struct ClippingEffort {
    int rays_per_point = 1024;
    LightForm form = LightForm::many_rays;
    bool operator==(const ClippingEffort&) const = default;
};

/// Share of the light that ends at one surface, 0..1 of the objective's light. A leak is told apart: what goes out of a
/// bare face that light meets beyond the critical angle. What that face still reflects goes on (leaky_faces.hpp).
struct EndShare {
    std::size_t surface = 0;  ///< index into EyePath::surfaces
    bool is_leak = false;
    double share = 0;
};

/// One place on the field stop: `at` in units of its radius, in the field stop's frame (+x right, +y up).
struct LitPoint {
    glm::dvec2 at{0};
    double relative = 1;  ///< share of the objective's light that arrives, 0..1
    std::vector<EndShare> ends;
};

/// All azimuths of one field radius together.
struct LitRing {
    double field_fraction = 0;   ///< 0 middle, 1 edge of the field stop
    double relative = 1;         ///< mean over the ring
    double lowest = 1;           ///< its darkest direction
    std::vector<EndShare> ends;  ///< mean over the ring, largest first
};

struct EyeClipping {
    Eye eye = Eye::left;
    std::vector<LitPoint> points;  ///< one in the middle, then ten rings of fifteen
    std::vector<LitRing> rings;    ///< eleven, from the middle to the edge
    Millimetres field_stop;        ///< its diameter
    Millimetres
        fully_illuminated_diameter;  ///< on the field stop, at most its diameter; 0: nowhere
    double edge_relative = 1;        ///< mean at the field stop's edge
    /// Of the aperture's light on axis, 0..1, what the telescope's own obstruction takes.
    double obstructed_share = 0;
    /// Diameter of an aperture that gathers as much on axis through the same share of obstruction: the whole aperture
    /// when nothing clips.
    Millimetres working_aperture;
};

constexpr int lit_ring_count = 10;
constexpr int lit_azimuth_count = 15;  // of the fixed directions (lit_ring.hpp)

EyeClipping clipping(const Train& train, Eye eye, ClippingEffort effort = {});

/// The middle and the mean of the edge alone, at a ninth of the cost or less: enough to compare setups.
struct MiddleAndEdge {
    double middle = 1;             ///< share of the objective's light, 0..1
    double edge = 1;               ///< as EyeClipping::edge_relative
    Millimetres working_aperture;  ///< as EyeClipping::working_aperture
};
MiddleAndEdge middle_and_edge(const Train& train, Eye eye, ClippingEffort effort);

/// EyeClipping::fully_illuminated_diameter alone: rays along the pupil's rim, few of them.
Millimetres fully_illuminated_diameter(const Train& train, Eye eye);

/// Relative illumination at any place of the field stop by linear interpolation between the points.
double relative_at(const EyeClipping& clipping, glm::dvec2 at);

/// "<part>: <opening>" for the user.
std::string end_name(const Setup& setup, const EyePath& path, const EndShare& end);

}  // namespace beamfork
