#include "parts/newtonian.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

namespace beamfork {

namespace {

constexpr double most_vane_share = 0.2;

std::vector<Field<Newtonian>> vane_fields() {
    FieldInfo count;
    count.key = "vane_count";
    count.label = "Spider vanes";
    count.help = "How many thin blades carry the secondary; 0 when a glass plate does. Their "
                 "shadow counts in brightness; the spikes they give bright stars are not shown.";
    count.high = 8;
    count.usual_high = 6;
    return {number_field(count, &Newtonian::vane_count),
            number_field(length_info("vane_width_mm", "Vane width",
                                     "How thick one vane is, seen along the tube.", 0, 20, 0.3, 3),
                         &Newtonian::vane_width)};
}

// The vanes from the secondary's stem to the tube, between the focuser's direction and its square.
void append_vanes(std::vector<Body>& bodies, const Newtonian& telescope, const Pose& stem) {
    const int count = static_cast<int>(std::lround(telescope.vane_count));
    const double inner = telescope.obstruction().value / 4;
    const double length = telescope.tube_diameter.value / 2 - inner;
    if (telescope.vane_width.value <= 0) return;
    const double depth = 0.3 * telescope.secondary_minor_axis.value;
    const Polygon edge = rectangle(length, telescope.vane_width.value);
    for (int i = 0; i < count; ++i) {
        const Pose turned = rotation_about_z(to_radians(Degrees{360.0 * (i + 0.5) / count}));
        bodies.push_back({PlateBody{edge.corners, depth, 0},
                          stem * turned * translation(inner + length / 2, 0, 0)});
    }
}

// What may be changed of a main mirror: where it sits, and how bright it is.
std::vector<Field<Newtonian>> place_fields() {
    return {
        number_field(
            length_info(
                "primary_moved_up_mm", "Main mirror moved up",
                "How far the main mirror has been moved up the tube: the image moves out by as "
                "much, and the secondary meets a wider cone.",
                0, 200, 0, 50),
            &Newtonian::primary_moved_up),
        choice_field(mirror_coating_info(), &Newtonian::coating, mirror_coating_words()),
    };
}

// What light meets on its way down the tube.
std::vector<Field<Newtonian>> tube_fields() {
    return {
        optional_field(
            length_info("holder_diameter_mm", "Secondary holder",
                        "Diameter of what holds the secondary, if it shades more than the mirror.",
                        10, 320, 35, 110),
            &Newtonian::holder_diameter),
        number_field(length_info("tube_diameter_mm", "Tube opening",
                                 "Inner diameter of the tube's front end.", 52, 1200, 130, 460),
                     &Newtonian::tube_diameter),
        number_field(
            length_info("tube_overhang_mm", "Tube in front",
                        "How far the tube's front end lies in front of the focuser's middle; a "
                        "long, narrow front cuts the field's edge.",
                        0, 1000, 60, 300),
            &Newtonian::tube_overhang),
    };
}

}  // namespace

std::vector<Field<Newtonian>> Newtonian::fields() {
    std::vector<Field<Newtonian>> fields{
        number_field(length_info("aperture_mm", "Aperture", "Clear diameter of the main mirror.",
                                 50, 1000, 114, 400),
                     &Newtonian::aperture),
        number_field(length_info("focal_length_mm", "Focal length",
                                 "Distance from the main mirror to the image of a star.", 200, 6000,
                                 500, 2000),
                     &Newtonian::focal_length),
        number_field(
            measured_at_home(
                length_info(
                    "back_focus_mm", "Back focus",
                    "How far the image of a star lies behind the drawtube's rear face when the "
                    "drawtube is racked fully in and the main mirror sits where it was made to "
                    "sit: often only a few centimetres.",
                    -100, 400, 0, 60),
                back_focus_at_the_moon),
            &Newtonian::back_focus),
        number_field(
            length_info("axis_to_drawtube_mm", "Axis to drawtube",
                        "From the middle of the tube to the drawtube's rear face, racked fully in.",
                        40, 800, 100, 280),
            &Newtonian::axis_to_drawtube),
        number_field(
            length_info("secondary_minor_axis_mm", "Secondary",
                        "Short axis of the flat mirror: its width seen from the focuser. Too "
                        "small, and the field's edge or even the aperture is cut.",
                        10, 300, 30, 100),
            &Newtonian::secondary_minor_axis),
        optional_field(
            length_info("secondary_offset_mm", "Secondary offset",
                        "How far the flat mirror's middle is shifted towards the main mirror, and "
                        "as much away from the focuser. Unstated, it is taken as centred on the "
                        "light cone: short axis over four times the f-number; 0 stands it on the "
                        "tube's axis.",
                        0, 60, 0, 8),
            &Newtonian::secondary_offset),
    };
    const auto append = [&](std::vector<Field<Newtonian>> more) {
        std::move(more.begin(), more.end(), std::back_inserter(fields));
    };
    append(tube_fields());
    append(place_fields());
    append(vane_fields());
    return fields;
}

Millimetres Newtonian::offset() const {
    return secondary_offset.value_or(secondary_minor_axis * (aperture / (4 * focal_length)));
}

Millimetres Newtonian::obstruction() const {
    return std::max(secondary_minor_axis, holder_diameter.value_or(Millimetres{0}));
}

double Newtonian::vane_share() const {
    const double shadow =
        std::round(vane_count) * vane_width.value * (aperture.value - obstruction().value) / 2;
    return shadow / (std::numbers::pi * aperture.value * aperture.value / 4);
}

Millimetres Newtonian::secondary_to_focus() const {
    return axis_to_drawtube + back_focus + primary_moved_up;
}

Millimetres Newtonian::rim_height() const {
    return {aperture.value * aperture.value / (16 * focal_length.value)};
}

Millimetres Newtonian::fully_lit_field() const {
    const double F = focal_length.value;
    const double l = secondary_to_focus().value;
    return {(secondary_minor_axis.value * F - l * aperture.value) / (F - l)};
}

PartLayout Newtonian::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double F = focal_length.value;
    const double flat_at = -(F - secondary_to_focus().value);
    const double minor = secondary_minor_axis.value;
    const double shift = offset().value;
    const double front = flat_at - tube_overhang.value;
    const Conic paraboloid{-1 / (2 * F), -1};
    const Pose flat =
        pose_facing({0, 0, flat_at}, Direction{0, -1, -1} / std::numbers::sqrt2, {1, 0, 0});
    const Ellipse flat_edge{{minor / 2, minor / std::numbers::sqrt2},
                            {0, shift * std::numbers::sqrt2}};
    const Pose shadow = translation(0, -shift, flat_at);

    Surface primary{"main mirror", SurfaceKind::mirror, Pose{}, Circle{aperture.value / 2}};
    primary.shape = paraboloid;
    layout.surfaces = {
        round_stop("tube's front opening", translation(0, 0, front), tube_diameter.value),
        {"secondary's shadow", SurfaceKind::obstruction, shadow, Circle{obstruction().value / 2}},
        primary,
        {"secondary mirror", SurfaceKind::mirror, flat, flat_edge}};
    for (Surface& surface : layout.surfaces)
        surface.coating.mirror = coating;
    layout.part_from_exit = translation(0, axis_to_drawtube.value, flat_at)
                            * rotation_about_x(to_radians(Degrees{-90}));
    layout.pupil_plane = -rim_height().value;
    layout.light_enters = front;
    if (!context.shows_shared_bodies()) return layout;

    const double thick = aperture.value / 8;
    const double tube_end = thick + 25;
    const Pose stem = translation(0, -shift, flat_at - 0.95 * minor);
    layout.bodies = {
        tube_body(translation(0, 0, front), tube_end - front, tube_diameter.value, 2),
        ring_body(translation(0, 0, front), tube_diameter.value, tube_diameter.value + 10),
        {DishBody{aperture.value / 2, 0, paraboloid, thick}, Pose{}},
        {MirrorBody{outline(flat_edge, 64), minor / 8}, flat},
        // The holder's stem, from in front of the flat.
        {TubeBody{0.45 * minor, 1, obstruction().value / 4}, stem}};
    append_vanes(layout.bodies, *this, stem);
    return layout;
}

std::optional<std::string> Newtonian::contradiction() const {
    if (focal_length.value < 2.5 * aperture.value) {
        return "focal_length_mm must be at least 2.5 times aperture_mm (f/2.5); check the two "
               "numbers";
    }
    if (tube_diameter < aperture) return "tube_diameter_mm must not be less than aperture_mm";
    if (2 * axis_to_drawtube < tube_diameter) {
        return "axis_to_drawtube_mm must be at least half of tube_diameter_mm, or the drawtube "
               "would end inside the tube";
    }
    if (secondary_to_focus().value < 20 || secondary_to_focus().value > 0.7 * focal_length.value) {
        return "axis_to_drawtube_mm, back_focus_mm and primary_moved_up_mm together must be "
               "between 20 mm and 0.7 of focal_length_mm: that is how far the secondary stands "
               "from the focus";
    }
    if (2 * obstruction() > aperture) {
        return "secondary_minor_axis_mm and holder_diameter_mm must not be more than half of "
               "aperture_mm";
    }
    if (vane_share() > most_vane_share) {
        return "vane_count and vane_width_mm together would shade more than a fifth of the "
               "aperture; check the two";
    }
    return std::nullopt;
}

}  // namespace beamfork
