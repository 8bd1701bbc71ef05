#include "parts/splitter_head.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/prism_diagonal.hpp"

namespace beamfork {

namespace {

FieldInfo hinge_info(std::string key, std::string label, std::string help) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::degree;
    info.low = 0;
    info.high = 80;
    info.usual_low = 0;
    info.usual_high = 60;
    return info;
}

std::vector<Field<SplitterHead>> prism_fields() {
    FieldInfo glass;
    glass.key = "glass";
    glass.label = "Glass";
    glass.help = "Glass type of all prisms in the head.";
    using S = SplitterHead;
    return {
        number_field(length_info("entry_clear_diameter_mm", "Entry opening",
                                 "Clear diameter of the nose where light enters.", 5, 80, 15, 45),
                     &S::entry_clear),
        number_field(
            length_info(
                "nose_length_mm", "Nose length",
                "How far the nose reaches forward from the entry face into the part before it.", 0,
                80, 0, 40),
            &S::nose_length),
        number_field(length_info("entry_air_mm", "Air before the cube",
                                 "From the entry face to the glass of the cube.", 0, 150, 2, 40),
                     &S::entry_air),
        number_field(length_info("prism_width_mm", "Prism width",
                                 "Side of the cube and of the other prisms.", 5, 60, 15, 45),
                     &S::prism_width),
        number_field(
            length_info(
                "arm_offset_mm", "Arm offset",
                "From the entry axis to the axis of each eyepiece; twice this is the widest pupil "
                "distance.",
                20, 80, 30, 45),
            &S::arm_offset),
        optional_field(
            length_info(
                "compensator_mm", "Compensating glass",
                "Length of the block that makes up for the rhomboid's glass; unstated: exactly "
                "right.",
                0, 120, 0, 60),
            &S::compensator),
        word_field(glass, &S::glass, glass_names()),
        choice_field(coating_info(), &S::reflecting_faces, coating_words()),
    };
}

std::vector<Field<SplitterHead>> arm_end_fields() {
    using S = SplitterHead;
    return {
        number_field(length_info("exit_clear_diameter_mm", "Exit opening",
                                 "Clear diameter behind the last prism of each arm.", 5, 80, 15,
                                 45),
                     &S::exit_clear),
        number_field(
            length_info(
                "seat_height_mm", "Seat height",
                "From the last glass face to the seat on which the eyepiece's shoulder rests.", 1,
                150, 5, 50),
            &S::seat_height),
        number_field(
            length_info(
                "seat_travel_mm", "Seat travel",
                "How far each eyepiece can be focused by itself, in and out, to suit each eye.", 0,
                15, 0, 6),
            &S::seat_travel),
        number_field(hinge_info("hinge_low_deg", "Hinge, widest",
                                "How far each arm drops when the head is opened widest."),
                     &S::hinge_low),
        number_field(hinge_info("hinge_high_deg", "Hinge, narrowest",
                                "How far each arm drops when the head is closed to its narrowest."),
                     &S::hinge_high),
        optional_field(stated_light_path_info(), &S::stated_light_path),
    };
}

}  // namespace

std::vector<Field<SplitterHead>> SplitterHead::fields() {
    auto fields = prism_fields();
    for (auto& field : arm_end_fields())
        fields.push_back(std::move(field));
    return fields;
}

Millimetres SplitterHead::pupil_distance_at(Degrees hinge) const {
    return 2 * arm_offset * std::cos(to_radians(hinge).value);
}

Degrees SplitterHead::hinge_for(Millimetres pupil_distance) const {
    const double cosine = std::clamp(pupil_distance / (2 * arm_offset), 0.0, 1.0);
    return std::clamp(to_degrees(Radians{std::acos(cosine)}), hinge_low, hinge_high);
}

bool SplitterHead::hinge_reaches(Millimetres pupil_distance) const {
    constexpr Millimetres rounding{1e-9};
    return pupil_distance <= pupil_distance_at(hinge_low) + rounding
           && pupil_distance >= pupil_distance_at(hinge_high) - rounding;
}

namespace {

constexpr double floor_thickness = 2;

// A plate from the entry axis to the eyepiece's axis at +y, round at both ends.
std::vector<glm::dvec2> arm_outline(double offset, double half_width) {
    std::vector<glm::dvec2> corners;
    constexpr int steps = 16;
    for (int i = 0; i <= 2 * steps + 1; ++i) {
        const bool is_far = i <= steps;
        const double turn = std::numbers::pi * (is_far ? i : i - 1) / steps;
        corners.emplace_back(half_width * std::cos(turn),
                             half_width * std::sin(turn) + (is_far ? offset : 0));
    }
    return corners;
}

// Housing, nose and seat to look at. Inner sizes leave the glass free.
void add_bodies(PartLayout& layout, const SplitterHead& head, const Pose& arm, Eye eye) {
    const double width = head.prism_width.value;
    const double wall = 2;
    const double exit_clear = head.exit_clear.value;
    constexpr double barrel_bore = 32;  // of the seat: takes the common 1.25 inch barrel
    const Pose seat = layout.part_from_exit;
    const Pose last_face = seat * translation(0, 0, -head.seat_height.value);
    layout.bodies.push_back(tube_body(last_face * translation(0, 0, 3), head.seat_height.value - 3,
                                      std::max(exit_clear, barrel_bore), wall));
    layout.bodies.push_back(
        ring_body(last_face * translation(0, 0, 1), exit_clear, exit_clear + 10));
    // A floor under the prisms of each arm: the left arm's under the cube, the right arm's behind it.
    const double gap = head.arm_offset.value - width;
    const bool is_left = eye == Eye::left;
    const double floor_at =
        head.entry_air.value + (is_left ? 0 : width + gap) - floor_thickness - 0.5;
    const double opening = is_left ? head.entry_clear.value / 2 : width / 2;
    if (is_left || gap > floor_thickness + 1) {
        layout.bodies.push_back(
            {PlateBody{arm_outline(head.arm_offset.value, width / 2 + 4), floor_thickness, opening},
             arm * translation(0, 0, floor_at)});
    }
    if (eye == Eye::right) return;
    const double nose = head.nose_length.value + head.entry_air.value - 2;
    if (nose > 1) {
        layout.bodies.push_back(tube_body(translation(0, 0, -head.nose_length.value), nose,
                                          head.entry_clear.value, wall));
    }
    layout.bodies.push_back(ring_body(Pose{}, head.entry_clear.value, head.entry_clear.value + 14));
}

}  // namespace

PartLayout SplitterHead::layout(const LayoutContext& context) const {
    const double width = prism_width.value;
    const double gap = arm_offset.value - width;
    const double drop = hinge_for(context.pupil_distance).value;
    const PrismGlass kind{glass, reflecting_faces};
    // Each arm is laid out towards +y of its own frame and turned to its side: left is -x, right +x.
    const Pose left_arm = rotation_about_z(to_radians(Degrees{90 + drop}));
    const Pose right_arm = rotation_about_z(to_radians(Degrees{-90 - drop}));
    const Pose to_cube = translation(0, 0, entry_air.value);

    PartLayout layout;
    layout.surfaces.push_back(
        round_stop("nose", translation(0, 0, -nose_length.value), entry_clear.value));
    layout.surfaces.push_back(round_stop("entry collar", Pose{}, entry_clear.value));
    const bool is_left = context.eye == Eye::left;
    const Pose arm = is_left ? left_arm : right_arm;
    Pose glass_exit;
    if (is_left) {
        const Prism cube = cube_reflecting(width, glass);
        const Prism turn = right_angle_prism(width, kind, "arm prism");
        // The arm prism turns light that runs towards +y back to +z: folded towards -y of its own frame.
        const Pose beside = arm * to_cube * cube.prism_from_exit * translation(0, 0, gap)
                            * rotation_about_z(to_radians(Degrees{180}));
        append(layout.surfaces, cube, arm * to_cube);
        append(layout.surfaces, turn, beside);
        layout.bodies.push_back({cube.body, arm * to_cube});
        layout.bodies.push_back({turn.body, beside});
        glass_exit = beside * turn.prism_from_exit;
        if (compensator_length().value > 0) {
            const Prism block =
                glass_block(width, compensator_length().value, glass, "compensator");
            layout.surfaces.pop_back();  // cemented to the prism: no air in between
            Surface joint{"compensator entry face", SurfaceKind::stop, glass_exit,
                          rectangle(width, width)};
            layout.surfaces.push_back(joint);
            Surface leaving = block.surfaces.back();
            leaving.part_from_surface = glass_exit * leaving.part_from_surface;
            layout.surfaces.push_back(leaving);
            layout.bodies.push_back({block.body, glass_exit});
            glass_exit = glass_exit * block.prism_from_exit;
        }
    } else {
        const Prism cube = cube_transmitting(width, glass);
        const Prism rhomboid = rhomboid_prism(width, arm_offset.value, kind, "rhomboid");
        const Pose behind = arm * to_cube * cube.prism_from_exit * translation(0, 0, gap);
        append(layout.surfaces, cube, left_arm * to_cube);  // the cube turns with the left arm
        append(layout.surfaces, rhomboid, behind);
        layout.bodies.push_back({rhomboid.body, behind});
        glass_exit = behind * rhomboid.prism_from_exit;
    }
    // Eyepieces sit upright on both arms whatever the hinge does.
    const Pose upright{glm::dmat3(1.0), glass_exit.origin};
    layout.surfaces.push_back(round_stop("exit opening", upright, exit_clear.value));
    layout.part_from_exit = upright * translation(0, 0, seat_height.value);
    layout.end_air = seat_height.value;
    add_bodies(layout, *this, arm, context.eye);
    return layout;
}

std::optional<std::string> SplitterHead::contradiction() const {
    if (arm_offset < prism_width) {
        return "arm_offset_mm must be at least prism_width_mm, or the prisms would stand in each "
               "other";
    }
    if (hinge_low > hinge_high) return "hinge_low_deg must not be more than hinge_high_deg";
    return std::nullopt;
}

}  // namespace beamfork
