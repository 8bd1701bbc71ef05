// What every topic of the picture draws from, and the topics themselves: each adds its things to a Frame.
#pragma once

#include "scene/kit/colours.hpp"
#include "scene/picture/picture.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

struct PictureInput {
    const Setup& setup;
    const Report& report;
    const PictureEffort& effort;

    [[nodiscard]] const Train& train() const { return report.train; }
};

constexpr ColourRole arm_role(Eye eye) {
    return eye == Eye::left ? ColourRole::left_arm : ColourRole::right_arm;
}

/// Meshes and edges of all placed parts; fills `part_bounds` (bodies.cpp).
void add_bodies(Frame& frame, const PictureInput& input);

/// Traced rays and the marks where rays die; sets `ray_count` (light.cpp).
void add_light(Frame& frame, const PictureInput& input);

/// One star alone, in a hue of its own all the way to both eyes; what comes to no eye bears the clipping colour from the
/// objective on (light.cpp).
struct StarLight {
    FieldSlope field{0, 0};
    ColourRole role = ColourRole::undivided_beam;
    int rays = 96;
    float strength = 1;  ///< of each ray
};
void add_star_light(Frame& frame, const PictureInput& input, const StarLight& star);

/// Outlines of the openings; those that take light in the clipping colour, named (openings.cpp).
void add_openings(Frame& frame, const PictureInput& input);

/// The light on each field stop as a picture (field_stops.cpp).
void add_field_stops(Frame& frame, const PictureInput& input);

/// The real focus of each eye and, when it is off, the gap to where it should be (focus_gap.cpp).
void add_focus_gap(Frame& frame, const PictureInput& input);

/// The drawtube's travel with its present and its wanted place (drawtube_scale.cpp).
void add_drawtube_scale(Frame& frame, const PictureInput& input);

/// The dividing face, tinted and outlined (splitting_face.cpp).
void add_splitting_face(Frame& frame, const PictureInput& input);

/// The eyes that look in, with their names and the exit pupils; needs `part_bounds` (eyes.cpp).
void add_eyes(Frame& frame, const PictureInput& input);

/// Names of parts; needs `part_bounds` (part_labels.cpp).
void add_part_labels(Frame& frame, const PictureInput& input);

/// When all topics are in: sorts the names, finds the bounds and the revision (picture.cpp).
void finish_frame(Frame& frame, const PictureInput& input);

}  // namespace beamfork
