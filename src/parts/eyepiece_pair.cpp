#include "parts/eyepiece_pair.hpp"

#include <algorithm>

#include "glass/glass.hpp"
#include "parts/prisms.hpp"

namespace beamfork {

Millimetres travel_per_dioptre(Millimetres eyepiece_focal_length) {
    return eyepiece_focal_length * (eyepiece_focal_length.value / 1000);
}

namespace {

FieldInfo play_info(std::string key, std::string label) {
    return length_info(
        std::move(key), std::move(label),
        "How far the eyepiece's axis sits off the middle of its seat, to the right or "
        "up; a barrel with 0.1 mm of play can be off by half of that.",
        -2, 2, -0.2, 0.2);
}

FieldInfo barrel_filter_info(std::string key, std::string label) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help =
        "Share of the light that a filter screwed into this eyepiece's barrel lets through; left "
        "out: no filter. Its glass moves this eye's image outward by a third of its thickness. No "
        "filter here makes the Sun safe.";
    info.unit = FieldUnit::percent;
    info.low = 0.1;
    info.high = 100;
    info.usual_low = 10;
    info.usual_high = 98;
    return info;
}

constexpr const char* filter_glass_type = "N-BK7";  // common practice, no source

// A plate at the barrel's front end, and in front of the field stop. What its faces take is in what it passes.
void put_filter(PartLayout& layout, const EyepiecePair& pair, const Pose& shoulder) {
    const double front =
        -std::max(pair.barrel_length, pair.field_stop_depth + pair.filter_glass).value;
    Prism plate =
        glass_block(pair.barrel_clear.value, pair.filter_glass.value, filter_glass_type, "filter");
    for (Surface& surface : plate.surfaces) {
        surface.aperture = Circle{pair.barrel_clear.value / 2};
        surface.coating.transmission = 1;
    }
    append(layout.surfaces, std::move(plate.surfaces), shoulder * translation(0, 0, front));
}

}  // namespace

Millimetres EyepiecePair::filter_shift(Eye eye) const {
    if (!filter(eye)) return {0};
    static const Glass* const glass = standard_catalogue().known(filter_glass_type);
    BEAMFORK_EXPECTS(glass != nullptr);
    return filter_glass * (1 - 1 / refractive_index(*glass, spectral_line::e).value());
}

std::vector<Field<EyepiecePair>> EyepiecePair::fields() {
    FieldInfo apparent;
    apparent.key = "apparent_field_deg";
    apparent.label = "Apparent field";
    apparent.help = "How wide the field looks to the eye.";
    apparent.unit = FieldUnit::degree;
    apparent.low = 20;
    apparent.high = 120;
    apparent.usual_low = 40;
    apparent.usual_high = 100;
    using E = EyepiecePair;
    return {
        number_field(length_info("focal_length_mm", "Focal length",
                                 "Shorter means more magnification.", 2, 60, 5, 40),
                     &E::focal_length),
        number_field(apparent, &E::apparent_field),
        number_field(length_info("field_stop_mm", "Field stop",
                                 "Diameter of the ring that bounds the field of view.", 1, 50, 5,
                                 27),
                     &E::field_stop),
        number_field(
            measured_at_home(
                length_info("field_stop_depth_mm", "Field stop depth",
                            "How far the field stop lies in front of the shoulder, inside the "
                            "barrel; negative "
                            "when it lies behind the shoulder.",
                            -30, 60, -10, 25),
                "Measure with the depth rod of calipers from the shoulder to the field stop."),
            &E::field_stop_depth),
        number_field(grows_with_openings(length_info("barrel_clear_diameter_mm", "Barrel opening",
                                                     "Clear diameter of the barrel's front end.", 5,
                                                     60, 20, 47)),
                     &E::barrel_clear),
        number_field(length_info("barrel_length_mm", "Barrel length",
                                 "From the shoulder to the barrel's front end.", 0, 80, 15, 40),
                     &E::barrel_length),
        number_field(length_info("outer_diameter_mm", "Outer diameter",
                                 "Of the widest part; the two must fit beside each other.", 10, 120,
                                 28, 65),
                     &E::outer_diameter),
        number_field(length_info("eye_relief_mm", "Eye relief", "From the last lens to the eye.", 0,
                                 60, 5, 25),
                     &E::eye_relief),
        choice_field(anti_reflection_info(), &E::coating, anti_reflection_words()),
        number_field(lens_faces_info(), &E::lens_faces),
        optional_field(barrel_filter_info("left_filter_percent", "Left filter passes"),
                       &E::left_filter),
        optional_field(barrel_filter_info("right_filter_percent", "Right filter passes"),
                       &E::right_filter),
        number_field(length_info("filter_glass_mm", "Barrel filter's glass",
                                 "Thickness of a filter in either barrel, where there is one.", 0.1,
                                 10, 1, 3),
                     &E::filter_glass),
        number_field(play_info("left_play_x_mm", "Left eyepiece, aside"), &E::left_play_x),
        number_field(play_info("left_play_y_mm", "Left eyepiece, up"), &E::left_play_y),
        number_field(play_info("right_play_x_mm", "Right eyepiece, aside"), &E::right_play_x),
        number_field(play_info("right_play_y_mm", "Right eyepiece, up"), &E::right_play_y),
    };
}

PartLayout EyepiecePair::layout(const LayoutContext& context) const {
    PartLayout layout;
    const bool is_left = context.eye == Eye::left;
    const Pose shoulder =
        translation((is_left ? left_play_x : right_play_x).value,
                    (is_left ? left_play_y : right_play_y).value, context.seat_shift.value);
    const Pose front = shoulder * translation(0, 0, -barrel_length.value);
    layout.part_from_exit = shoulder * translation(0, 0, -field_stop_depth.value);
    const Surface barrel = round_stop("barrel", front, barrel_clear.value);
    const Surface stop = round_stop("field stop", layout.part_from_exit, field_stop.value);
    if (filter(context.eye)) {
        put_filter(layout, *this, shoulder);
        layout.surfaces.insert(layout.surfaces.begin(), barrel);
        layout.surfaces.push_back(stop);
    } else {
        layout.surfaces = in_order(barrel, stop);
    }
    if (!context.shows_bodies) return layout;
    const double wall = 1.5;
    const double body = std::max(18.0, focal_length.value);
    if (barrel_length.value > 1) {
        layout.bodies.push_back(tube_body(front, barrel_length.value, barrel_clear.value, wall));
    }
    layout.bodies.push_back(
        tube_body(shoulder, body + 12, std::max(5.0, outer_diameter.value - 2 * wall), wall));
    layout.bodies.push_back(ring_body(shoulder, barrel_clear.value, outer_diameter.value));
    layout.bodies.push_back(ring_body(layout.part_from_exit, field_stop.value,
                                      std::max(barrel_clear.value, field_stop.value + 2)));
    const double radius = std::min(0.45 * outer_diameter.value, 0.55 * focal_length.value + 3);
    layout.bodies.push_back({LensBody{radius, 4, 5}, shoulder * translation(0, 0, body - 4)});
    return layout;
}

std::optional<std::string> EyepiecePair::contradiction() const {
    if (field_stop > barrel_clear && field_stop_depth.value > 0) {
        return "field_stop_mm cannot be wider than barrel_clear_diameter_mm when it lies inside "
               "the barrel";
    }
    return std::nullopt;
}

}  // namespace beamfork
