// The face that divides the light: tinted and outlined, for all else in the picture follows from it.
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"
#include "trace/forked_ray.hpp"

namespace beamfork {

void add_splitting_face(Frame& frame, const PictureInput& input) {
    const EyePath& path = input.train().path(Eye::left);
    const PlacedSurface& face = path.surfaces[dividing_surface(input.train())];
    const int part = static_cast<int>(face.part);
    const auto edge = outline(face.aperture, input.effort.round_segments);
    Mesh tint;
    tint.finish = Finish::glass;
    tint.tint = 2.5F * role_rgb(ColourRole::left_arm);
    tint.part = part;
    constexpr double half_thickness = 0.05;
    add_plate(tint, face.world_from_surface, edge, -half_thickness, half_thickness);
    frame.meshes.push_back(std::move(tint));
    std::vector<Point> corners;
    for (const glm::dvec2& corner : edge)
        corners.push_back(face.world_from_surface.point_out({corner, 0}));
    const Line line{.role = ColourRole::undivided_beam, .width_px = 2.2F, .part = part};
    add_outline(frame.lines, corners, line);
    if (corners.size() != 4) return;
    for (std::size_t i = 0; i < 2;
         ++i) {  // a cross from corner to corner: this plane, not the cube's sides
        Line diagonal = line;
        diagonal.width_px = 1;
        diagonal.shade = 0.35F;
        diagonal.from = glm::vec3(corners[i]);
        diagonal.to = glm::vec3(corners[i + 2]);
        frame.lines.push_back(diagonal);
    }
}

}  // namespace beamfork
