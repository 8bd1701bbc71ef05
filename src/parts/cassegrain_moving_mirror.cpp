#include "parts/cassegrain_moving_mirror.hpp"

#include <algorithm>

namespace beamfork {

namespace {

std::vector<Field<CassegrainMovingMirror>> rear_fields() {
    using Kind = CassegrainMovingMirror;
    return {
        number_field(length_info("baffle_diameter_mm", "Baffle opening",
                                 "Clear diameter of the tube that stands in the main mirror's "
                                 "hole.",
                                 8, 200, 22, 60),
                     &Kind::baffle_diameter),
        number_field(length_info("baffle_length_mm", "Baffle length",
                                 "How far that tube stands out in front of the main mirror.", 0,
                                 800, 60, 200),
                     &Kind::baffle_length),
        number_field(length_info("rear_port_diameter_mm", "Rear port",
                                 "Clear diameter of the opening in the tube's rear wall.", 8, 200,
                                 22, 60),
                     &Kind::rear_port_diameter),
        number_field(length_info("rear_port_position_mm", "Rear port position",
                                 "From the main mirror's middle to that opening.", 5, 400, 30, 90),
                     &Kind::rear_port_position),
        number_field(
            length_info("primary_travel_up_mm", "Mirror travel up",
                        "How far the main mirror can move towards the sky from the stated focus: "
                        "the image moves out, about twenty times as far.",
                        0, 60, 2, 10),
            &Kind::travel_up),
        number_field(length_info("primary_travel_down_mm", "Mirror travel down",
                                 "How far it can move the other way: the image moves in.", 0, 60, 1,
                                 6),
                     &Kind::travel_down),
        choice_field(mirror_coating_info(), &Kind::coating, mirror_coating_words()),
        choice_field(mirror_figure_info(), &Kind::figure, mirror_figure_words()),
    };
}

}  // namespace

std::vector<Field<CassegrainMovingMirror>> CassegrainMovingMirror::fields() {
    using Kind = CassegrainMovingMirror;
    std::vector<Field<Kind>> fields{
        number_field(length_info("aperture_mm", "Aperture", "Clear diameter of the main mirror.",
                                 60, 500, 100, 300),
                     &Kind::aperture),
        number_field(
            length_info("focal_length_mm", "Focal length",
                        "Of the whole telescope at the stated back focus; it grows when focus is "
                        "moved farther out.",
                        600, 8000, 1200, 3000),
            &Kind::focal_length),
        number_field(
            measured_at_home(
                length_info(
                    "back_focus_mm", "Back focus",
                    "How far the image of a star lies behind the drawtube's rear face at that "
                    "focal length; the main mirror moves to change it.",
                    20, 600, 80, 200),
                back_focus_at_the_moon),
            &Kind::back_focus),
        number_field(
            length_info("primary_focal_length_mm", "Main mirror alone",
                        "Focal length of the main mirror alone: usually 2 to 3 times its aperture.",
                        100, 2500, 250, 800),
            &Kind::primary_focal_length),
        number_field(length_info("rear_face_mm", "Mirror to rear face",
                                 "From the main mirror's middle to the rear face of the drawtube "
                                 "or visual back.",
                                 10, 500, 60, 180),
                     &Kind::rear_face),
        number_field(length_info("secondary_diameter_mm", "Secondary",
                                 "Clear diameter of the small mirror.", 10, 250, 30, 100),
                     &Kind::secondary_diameter),
        optional_field(
            length_info("holder_diameter_mm", "Secondary holder",
                        "Diameter of what holds the secondary, if it shades more than the mirror.",
                        10, 260, 35, 110),
            &Kind::holder_diameter),
    };
    for (auto& field : rear_fields())
        fields.push_back(std::move(field));
    return fields;
}

namespace {

// From the secondary to where the primary alone would make the image, in the middle position for the sky.
double virtual_object(const CassegrainMovingMirror& mirrors) {
    const double f1 = mirrors.primary_focal_length.value;
    const double m = mirrors.focal_length.value / f1;
    return (f1 + mirrors.rear_face.value + mirrors.back_focus.value) / (m + 1);
}

// How much farther from the primary than for the sky it makes the image of a near target.
double near_shift(const CassegrainMovingMirror& mirrors, std::optional<Millimetres> distance) {
    if (!distance) return 0;
    const double f1 = mirrors.primary_focal_length.value;
    return f1 * f1 / (distance->value + mirrors.rim_height().value - f1);
}

}  // namespace

Millimetres CassegrainMovingMirror::obstruction() const {
    return std::max(secondary_diameter, holder_diameter.value_or(Millimetres{0}));
}

Millimetres CassegrainMovingMirror::rim_height() const {
    return {aperture.value * aperture.value / (16 * primary_focal_length.value)};
}

Millimetres CassegrainMovingMirror::secondary_focal_length() const {
    const double m = focal_length / primary_focal_length;
    return {virtual_object(*this) * m / (m - 1)};
}

Millimetres CassegrainMovingMirror::mirror_distance() const {
    return primary_focal_length - Millimetres{virtual_object(*this)};
}

double CassegrainMovingMirror::focal_length_per_back_focus() const {
    return primary_focal_length / secondary_focal_length();
}

MirrorFocus CassegrainMovingMirror::focus_at(Millimetres moved,
                                             std::optional<Millimetres> distance) const {
    constexpr double nearly_parallel = 0.98;  // of |f2|: beyond it the light leaves almost parallel
    const double f2 = secondary_focal_length().value;
    const double object = std::min(
        virtual_object(*this) + near_shift(*this, distance) + moved.value, nearly_parallel * f2);
    const double image = object * f2 / (f2 - object);
    return {Millimetres{image} - mirror_distance() - rear_face,
            primary_focal_length * (1 + image / f2)};
}

Millimetres CassegrainMovingMirror::moved_for(Millimetres back_focus_wanted,
                                              std::optional<Millimetres> distance) const {
    const double f2 = secondary_focal_length().value;
    const double image = (mirror_distance() + rear_face + back_focus_wanted).value;
    const double object = image * f2 / (image + f2);
    return {object - virtual_object(*this) - near_shift(*this, distance)};
}

namespace {

constexpr double plate_ahead = 20;  // of the secondary's middle: just before its back

// How far the rim of a meniscus lies before its middle: a bowl as strongly curved as a sphere of 1.4 times the aperture.
double bowl_of(const CassegrainMovingMirror& mirrors) {
    if (mirrors.figure != MirrorFigure::spheres_with_meniscus) return 0;
    return mirrors.aperture.value / (8 * 1.4);
}

double front_of(const CassegrainMovingMirror& mirrors) {
    constexpr double tube_beyond = 40;  // the secondary
    constexpr double beyond_bowl = 8;
    return -mirrors.mirror_distance().value
           - std::max(tube_beyond, plate_ahead + bowl_of(mirrors) + beyond_bowl);
}

double inner_diameter_of_tube(const CassegrainMovingMirror& mirrors) {
    return mirrors.aperture.value + 16;
}

// Of the main mirror: as wide as the aperture, and by a quarter more than the corrector spreads the rim's light before it
// comes there, for light that comes aslant.
double main_mirror_radius(const MirrorDesign& design, const PhaseProfile& plate) {
    const double rim = design.aperture / 2;
    const double spread = plate.turn_over_radius(rim * rim) * rim * -design.plate_at;
    return rim + std::max(0.0, 1.25 * spread);
}

// The secondary's frame: it looks back at the main mirror.
Pose facing_back(const MirrorDesign& design) {
    return translation(0, 0, -design.mirror_distance) * rotation_about_y(to_radians(Degrees{180}));
}

// As the secondary's own frame has it, which looks back.
Conic turned_back(Conic secondary) {
    secondary.curvature = -secondary.curvature;
    return secondary;
}

std::vector<Body> bodies_of(const CassegrainMovingMirror& mirrors,
                            const MirrorDesign& design,
                            const MirrorShapes& shapes,
                            const Pose& moved) {
    const double hole = mirrors.baffle_diameter.value + 4;
    const double tube_inner = inner_diameter_of_tube(mirrors);
    const double front = front_of(mirrors);
    const double rear = mirrors.rear_port_position.value;
    const double small = mirrors.secondary_diameter.value;
    const bool has_plate = has_front_plate(mirrors.figure);
    const double thick = has_plate ? std::min(small / 6, plate_ahead - 6) : small / 6;
    const Pose baffle_front = translation(0, 0, -mirrors.baffle_length.value);
    std::vector<Body> bodies{
        tube_body(translation(0, 0, front), rear - front, tube_inner, 2),
        ring_body(translation(0, 0, front), mirrors.aperture.value + 4, tube_inner + 8),
        ring_body(translation(0, 0, rear), mirrors.rear_port_diameter.value, tube_inner),
        {DishBody{main_mirror_radius(design, shapes.plate), hole / 2, shapes.primary,
                  mirrors.aperture.value / 12},
         moved},
        {DishBody{small / 2, 0, turned_back(shapes.secondary), thick}, facing_back(design)},
        tube_body(translation(0, 0, -design.mirror_distance - thick), thick + 4,
                  mirrors.obstruction().value - 2, 1),
        tube_body(baffle_front, rear + mirrors.baffle_length.value, mirrors.baffle_diameter.value,
                  1.5)};
    if (has_plate) {
        const LensBody plate{
            .radius = tube_inner / 2 - 1, .edge_thickness = 5, .bowl = bowl_of(mirrors)};
        bodies.push_back({plate, translation(0, 0, design.plate_at)});
    }
    return bodies;
}

}  // namespace

MirrorDesign CassegrainMovingMirror::design() const {
    return {aperture.value,
            focal_length.value,
            primary_focal_length.value,
            secondary_focal_length().value,
            mirror_distance().value,
            (rear_face + back_focus).value,
            -mirror_distance().value - plate_ahead};
}

PartLayout CassegrainMovingMirror::layout(const LayoutContext& context) const {
    PartLayout layout;
    const MirrorDesign designed = design();
    const MirrorShapes shapes = mirror_shapes(designed, figure);
    const Pose moved = translation(0, 0, -context.primary.value);
    const double hole = baffle_diameter.value + 4;

    if (has_front_plate(figure)) {
        Surface plate{figure == MirrorFigure::spheres_with_meniscus ? "meniscus"
                                                                    : "corrector plate",
                      SurfaceKind::phase_plate, translation(0, 0, designed.plate_at)};
        plate.profile = shapes.plate;
        layout.surfaces.push_back(plate);
    }
    Surface primary{"main mirror", SurfaceKind::mirror, moved,
                    Circle{main_mirror_radius(designed, shapes.plate)}};
    primary.shape = shapes.primary;
    Surface secondary{"secondary mirror", SurfaceKind::mirror, facing_back(designed),
                      Circle{secondary_diameter.value / 2}};
    secondary.shape = turned_back(shapes.secondary);
    for (const Surface& surface : in_order(
             Surface{"secondary's shadow", SurfaceKind::obstruction,
                     translation(0, 0, -designed.mirror_distance), Circle{obstruction().value / 2}},
             Surface{"hole in the main mirror", SurfaceKind::obstruction, moved, Circle{hole / 2}},
             primary, secondary,
             round_stop("baffle tube", translation(0, 0, -baffle_length.value),
                        baffle_diameter.value),
             round_stop("rear port", translation(0, 0, rear_port_position.value),
                        rear_port_diameter.value)))
        layout.surfaces.push_back(surface);
    for (Surface& surface : layout.surfaces)
        surface.coating.mirror = coating;
    layout.part_from_exit = translation(0, 0, rear_face.value);
    layout.pupil_plane = -(context.primary + rim_height()).value;
    layout.light_enters = front_of(*this);
    if (context.shows_shared_bodies()) layout.bodies = bodies_of(*this, designed, shapes, moved);
    return layout;
}

std::optional<std::string> CassegrainMovingMirror::contradiction() const {
    if (primary_focal_length < 1.2 * aperture) {
        return "primary_focal_length_mm must be at least 1.2 times aperture_mm";
    }
    if (focal_length < 2 * primary_focal_length) {
        return "focal_length_mm must be at least twice primary_focal_length_mm: the small mirror "
               "lengthens it";
    }
    if (mirror_distance().value < 0.3 * primary_focal_length.value) {
        return "these lengths put the small mirror too near the main mirror; check "
               "back_focus_mm, rear_face_mm and both focal lengths";
    }
    if (baffle_length.value > 0.8 * mirror_distance().value) {
        return "baffle_length_mm would reach the small mirror";
    }
    const Millimetres object = primary_focal_length - mirror_distance();
    if (object + travel_up > 0.95 * secondary_focal_length() || travel_down > 0.5 * object) {
        return "primary_travel_up_mm or primary_travel_down_mm is so long that no image would "
               "form behind the telescope";
    }
    if (2 * obstruction() > aperture) {
        return "secondary_diameter_mm and holder_diameter_mm must not be more than half of "
               "aperture_mm";
    }
    if (baffle_diameter.value + 4 > obstruction().value) {
        return "baffle_diameter_mm must be at least 4 mm less than the secondary or its holder, "
               "or its hole would cost light";
    }
    if (rear_port_position > rear_face) {
        return "rear_port_position_mm must not be more than rear_face_mm";
    }
    return std::nullopt;
}

}  // namespace beamfork
