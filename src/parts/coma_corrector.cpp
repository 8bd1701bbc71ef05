#include "parts/coma_corrector.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace beamfork {

namespace {

constexpr double shortest_lens_to_image = 10;  // mm

FieldInfo corrector_factor_info() {
    FieldInfo info;
    info.key = "stated_factor";
    info.label = "Stated factor";
    info.help = "How much it magnifies at the stated spacing; 1 for one that does not. The real "
                "factor follows from the real spacing.";
    info.unit = FieldUnit::times;
    info.low = 0.7;
    info.high = 1.6;
    info.usual_low = 0.9;
    info.usual_high = 1.3;
    return info;
}

std::vector<Field<ComaCorrector>> spacing_fields() {
    return {
        number_field(
            length_info("spacing_mm", "Wanted spacing",
                        "From its shoulder to the image, counted as light path, as its maker "
                        "states it: there it takes all of the main mirror's coma.",
                        10, 300, 40, 130),
            &ComaCorrector::spacing),
        number_field(
            length_info(
                "spacing_window_mm", "Window",
                "How far off that spacing, either way, still takes all coma; beyond it, every mm "
                "leaves 3 mm / (lens to image) of the coma: our assumption, see “What is assumed”.",
                0, 30, 0.5, 6),
            &ComaCorrector::window),
    };
}

std::vector<Field<ComaCorrector>> body_fields() {
    return {
        number_field(
            length_info(std::string(lens_position_key), "Lens position",
                        "Where its lens acts behind the entry face; negative reaches forward into "
                        "the drawtube.",
                        -200, 200, -60, 20),
            &ComaCorrector::lens_offset),
        number_field(ruled_by_light_path(
                         length_info("length_mm", "Entry to shoulder",
                                     "How far it holds its two neighbours apart; 0 when all of it "
                                     "sits in the drawtube.",
                                     0, 200, 0, 60)),
                     &ComaCorrector::length),
        optional_field(stated_light_path_info(), &ComaCorrector::stated_light_path),
        number_field(
            front_opening(length_info("clear_diameter_mm", "Opening",
                                      "Clear diameter of its narrowest lens.", 5, 150, 20, 48)),
            &ComaCorrector::clear_diameter),
        choice_field(anti_reflection_info(), &ComaCorrector::coating, anti_reflection_words()),
        number_field(lens_faces_info(), &ComaCorrector::lens_faces),
    };
}

}  // namespace

std::vector<Field<ComaCorrector>> ComaCorrector::fields() {
    std::vector<Field<ComaCorrector>> fields{
        number_field(corrector_factor_info(), &ComaCorrector::stated_factor)};
    for (auto& more : {spacing_fields(), body_fields()})
        fields.insert(fields.end(), more.begin(), more.end());
    return fields;
}

Millimetres ComaCorrector::lens_to_shoulder() const {
    return stated_light_path.value_or(length) - lens_offset;
}

Millimetres ComaCorrector::lens_to_image() const { return lens_to_shoulder() + spacing; }

Millimetres ComaCorrector::lens_focal_length() const {
    if (stated_factor == 1) return {std::numeric_limits<double>::infinity()};
    return lens_to_image() / (1 - stated_factor);
}

PartLayout ComaCorrector::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double lens_at = context.lens_at.value_or(lens_offset).value;
    Surface lens{"corrector lens", SurfaceKind::thin_lens, translation(0, 0, lens_at),
                 Circle{clear_diameter.value / 2}};
    lens.focal_length = lens_focal_length().value;
    lens.coating.face = coating;
    lens.coating.lens_faces = static_cast<int>(std::lround(lens_faces));
    layout.surfaces = {lens};
    layout.part_from_exit = translation(0, 0, length.value);
    layout.end_air = std::max(0.0, length.value - lens_at);
    if (!context.shows_shared_bodies()) return layout;

    const double radius = clear_diameter.value / 2;
    const double front = std::min(lens_at - 6, 0.0);
    const double rear = std::max(length.value, lens_at + 6);
    layout.bodies = {
        {LensBody{radius, 5, 3}, translation(0, 0, lens_at - 2)},
        {LensBody{radius, 4, -2}, translation(0, 0, lens_at + 3)},
        tube_body(translation(0, 0, front), rear - front, clear_diameter.value, 1.5),
        ring_body(translation(0, 0, length.value), clear_diameter.value, clear_diameter.value + 9)};
    return layout;
}

std::optional<std::string> ComaCorrector::contradiction() const {
    if (lens_to_image().value < shortest_lens_to_image) {
        return "lens_offset_mm puts the lens less than 10 mm before the image that spacing_mm "
               "asks for; check the two";
    }
    return std::nullopt;
}

}  // namespace beamfork
