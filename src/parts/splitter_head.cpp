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

FieldInfo percent_info(std::string key, std::string label, std::string help) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::percent;
    return info;
}

std::vector<Field<SplitterHead>> light_fields() {
    using S = SplitterHead;
    FieldInfo reflected =
        percent_info("reflected_percent", "Reflected at the cube",
                     "Share of the divided light that the cube reflects, to the left eye; the rest "
                     "goes to the right eye.");
    reflected.low = 1;
    reflected.high = 99;
    reflected.usual_low = 30;
    reflected.usual_high = 70;
    FieldInfo loss = percent_info("splitter_loss_percent", "Lost at the cube",
                                  "Light that the dividing layer swallows; none for a dielectric "
                                  "layer, 10 % and more for a metal one (common practice).");
    loss.high = 90;
    loss.usual_high = 30;
    return {
        choice_field(anti_reflection_info(), &S::coating, anti_reflection_words()),
        number_field(reflected, &S::reflected_percent),
        number_field(loss, &S::splitter_loss_percent),
    };
}

std::vector<Field<SplitterHead>> error_fields() {
    using S = SplitterHead;
    FieldInfo stand;
    stand.key = "prisms_stand";
    stand.label = "Prisms stand";
    stand.help =
        "True to their place, or slightly off it as stated prism by prism, to see what that "
        "does to the two images.";
    std::vector<Field<S>> fields{
        choice_field(stand, &S::prisms_stand, {"true to place", "slightly off"})};
    struct Named {
        PrismErrors S::*prism;
        const char* key;
        const char* label;
    };
    for (const Named& one : {Named{&S::cube_errors, "cube", "Cube"},
                             Named{&S::arm_prism_errors, "arm_prism", "Arm prism"},
                             Named{&S::rhomboid_errors, "rhomboid", "Rhomboid"}}) {
        for (const PrismErrorKind& kind : prism_error_kinds()) {
            FieldInfo info = prism_error_info(one.key, one.label, kind);
            info.only_if = {{stand.key, "slightly off"}};
            fields.push_back(prism_error_field(std::move(info), one.prism, kind.value));
        }
    }
    return fields;
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
    for (auto* more : {light_fields, arm_end_fields, error_fields}) {
        for (auto& field : more())
            fields.push_back(std::move(field));
    }
    return fields;
}

double SplitterHead::split_share(Eye eye) const {
    const double reflected = reflected_percent / 100;
    return (1 - splitter_loss_percent / 100) * (eye == Eye::left ? reflected : 1 - reflected);
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

void finish_faces(PartLayout& layout, const SplitterHead& head, Eye eye) {
    coat(layout.surfaces, head.coating);
    for (Surface& surface : layout.surfaces) {
        if (surface.name == cube_interface) surface.coating.stated_share = head.split_share(eye);
    }
}

// Where the cube really stands in the frame in which it should stand, and likewise the other two.
struct RealPlaces {
    Pose cube;
    Pose arm_prism;
    Pose rhomboid;
};
RealPlaces real_places(const SplitterHead& head) {
    if (head.prisms_stand == PrismsStand::true_to_place) return {};
    const double half = head.prism_width.value / 2;
    return {ideal_from_real(head.cube_errors, {0, 0, half}),
            ideal_from_real(head.arm_prism_errors, {0, 0, half}),
            ideal_from_real(head.rhomboid_errors, {0, head.arm_offset.value / 2, half})};
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

namespace {

// The block behind the arm prism, without air in between; returns the block's exit from its entry.
Pose cement_compensator(PartLayout& layout, const SplitterHead& head, const Pose& at) {
    const double width = head.prism_width.value;
    const Prism block =
        glass_block(width, head.compensator_length().value, head.glass, "compensator");
    layout.surfaces.pop_back();
    layout.surfaces.push_back(
        {"compensator entry face", SurfaceKind::stop, at, rectangle(width, width)});
    Surface leaving = block.surfaces.back();
    leaving.part_from_surface = at * leaving.part_from_surface;
    layout.surfaces.push_back(leaving);
    layout.bodies.push_back({block.body, at});
    return block.prism_from_exit;
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
    const RealPlaces real = real_places(*this);
    const bool is_left = context.eye == Eye::left;
    const Pose arm = is_left ? left_arm : right_arm;
    Pose glass_exit;
    if (is_left) {
        const Prism cube = cube_reflecting(width, glass);
        const Prism turn = right_angle_prism(width, kind, "arm prism");
        // The arm prism turns light that runs towards +y back to +z: folded towards -y of its own frame.
        const Pose beside = arm * to_cube * cube.prism_from_exit * translation(0, 0, gap)
                            * rotation_about_z(to_radians(Degrees{180}));
        append(layout.surfaces, cube, arm * to_cube * real.cube);
        append(layout.surfaces, turn, beside * real.arm_prism);
        layout.bodies.push_back({cube.body, arm * to_cube * real.cube});
        layout.bodies.push_back({turn.body, beside * real.arm_prism});
        glass_exit = beside * turn.prism_from_exit;
        if (compensator_length().value > 0) {
            const Pose cemented = beside * real.arm_prism * turn.prism_from_exit;
            glass_exit = glass_exit * cement_compensator(layout, *this, cemented);
        }
    } else {
        const Prism cube = cube_transmitting(width, glass);
        const Prism rhomboid = rhomboid_prism(width, arm_offset.value, kind, "rhomboid");
        const Pose behind = arm * to_cube * cube.prism_from_exit * translation(0, 0, gap);
        // The cube turns with the left arm.
        append(layout.surfaces, cube, left_arm * to_cube * real.cube);
        append(layout.surfaces, rhomboid, behind * real.rhomboid);
        layout.bodies.push_back({rhomboid.body, behind * real.rhomboid});
        glass_exit = behind * rhomboid.prism_from_exit;
    }
    finish_faces(layout, *this, context.eye);
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
