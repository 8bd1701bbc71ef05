// The two eyes that look in, the observer's: an eyeball to see through, its iris, open as wide as the observer's pupil; and the exit
// pupil that falls on it.
#include <cmath>
#include <numbers>

#include "parts/observer.hpp"
#include "scene/picture/eye_place.hpp"
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"

#include <fmt/format.h>

namespace beamfork {

EyeBehindEyepiece eye_place(const EyepiecePair& eyepiece) {
    const double body = std::max(18.0, eyepiece.focal_length.value);
    const double depth = eyepiece.field_stop_depth.value;
    return {depth + body - 4, depth + body + 12 + eyepiece.eye_relief.value};
}

namespace {

void add_eyeball(Frame& frame, const Pose& middle, int part, int segments) {
    std::vector<ProfilePoint> profile;
    const int steps = std::max(8, segments / 2);
    for (int i = 0; i <= steps; ++i) {
        const double angle = std::numbers::pi * (static_cast<double>(i) / steps - 0.5);
        const double out = std::cos(angle);
        const double along = std::sin(angle);
        profile.push_back({eyeball_radius_mm * out, eyeball_radius_mm * along, out, along});
    }
    Mesh mesh;
    mesh.finish = Finish::glass;
    mesh.tint = role_rgb(ColourRole::glass);
    mesh.part = part;
    add_turned(mesh, middle, profile, segments);
    frame.meshes.push_back(std::move(mesh));
}

void add_iris(Frame& frame, const Pose& pupil, double pupil_radius, Line line) {
    constexpr int rays = 28;
    add_outline(frame.lines, circle(pupil, iris_radius_mm, 48), line);
    add_outline(frame.lines, circle(pupil, pupil_radius, 36), line);
    line.width_px = 1;
    line.shade = 0.4F;
    for (int i = 0; i < rays; ++i) {
        const double angle = 2 * std::numbers::pi * i / rays;
        const glm::dvec2 way{std::cos(angle), std::sin(angle)};
        line.from = glm::vec3(pupil.point_out({pupil_radius * way, 0}));
        line.to = glm::vec3(pupil.point_out({iris_radius_mm * way, 0}));
        frame.lines.push_back(line);
    }
}

}  // namespace

void add_eyes(Frame& frame, const PictureInput& input) {
    const Train& train = input.train();
    const EyeBehindEyepiece place =
        eye_place(part_as<EyepiecePair>(input.setup, train.choice.eyepiece));
    const auto& observer = part_as<Observer>(input.setup, train.choice.observer);
    const double open = std::min(iris_radius_mm - 1, observer.eye_pupil.value / 2);
    for (const Eye eye : both_eyes) {
        const Pose& stop = train.path(eye).world_from_field_stop;
        const Pose pupil = stop * translation(0, 0, place.pupil);
        const Pose middle = pupil * translation(0, 0, iris_before_middle_mm);
        const Line line{{}, {}, arm_role(eye), 1.5F, false, false};
        add_eyeball(frame, middle, static_cast<int>(train.choice.observer),
                    input.effort.round_segments);
        add_iris(frame, pupil, open, line);
        add_outline(frame.lines, circle(pupil, input.report.magnification.exit_pupil.value / 2, 24),
                    line);
        const Bounds round{glm::vec3(middle.origin) - static_cast<float>(eyeball_radius_mm),
                           glm::vec3(middle.origin) + static_cast<float>(eyeball_radius_mm)};
        Bounds& both = frame.part_bounds.at(train.choice.observer);
        both = eye == Eye::left
                   ? round
                   : Bounds{glm::min(both.low, round.low), glm::max(both.high, round.high)};
        frame.labels.push_back({glm::vec3(middle.origin), fmt::format("{} eye", name_of(eye)),
                                eye == Eye::left ? LabelRole::left_eye : LabelRole::right_eye, -1,
                                5});
    }
}

}  // namespace beamfork
