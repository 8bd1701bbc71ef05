// The light on each field stop as a picture, in the hue of its arm, true to scale: what the eye sees of an
// even sky.
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"

namespace beamfork {

namespace {

ImageDisc lit_disc(const EyePath& path, const EyeClipping& clipping, ColourRole role, int size) {
    const Pose& stop = path.world_from_field_stop;
    const double radius = clipping.field_stop.value / 2;
    ImageDisc disc;
    disc.centre = glm::vec3(stop.origin);
    disc.right = glm::vec3(radius * stop.x());
    disc.up = glm::vec3(radius * stop.y());
    disc.role = role;
    disc.size = size;
    disc.light.reserve(static_cast<std::size_t>(size) * static_cast<std::size_t>(size));
    for (int row = 0; row < size; ++row) {
        for (int column = 0; column < size; ++column) {
            const glm::dvec2 at{(column + 0.5) / size * 2 - 1, (row + 0.5) / size * 2 - 1};
            disc.light.push_back(static_cast<float>(relative_at(clipping, at)));
        }
    }
    return disc;
}

}  // namespace

void add_field_stops(Frame& frame, const PictureInput& input) {
    for (const Eye eye : both_eyes) {
        const EyePath& path = input.train().path(eye);
        const EyeClipping& clipping = input.report.clipping_of(eye);
        const ColourRole role = arm_role(eye);
        frame.discs.push_back(lit_disc(path, clipping, role, input.effort.disc_pixels));
        Line rim;
        rim.role = role;
        rim.width_px = 2;
        rim.on_top = true;
        rim.part = static_cast<int>(input.train().choice.eyepiece);
        add_outline(frame.lines,
                    circle(path.world_from_field_stop, clipping.field_stop.value / 2,
                           input.effort.round_segments),
                    rim);
    }
}

}  // namespace beamfork
