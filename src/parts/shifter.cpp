#include "parts/shifter.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

StatedPair lens_of_stated_pair(double factor, Millimetres gain) {
    BEAMFORK_EXPECTS(factor != 1);
    const Millimetres distance = gain * (factor / (factor - 1));
    return {-(distance / (factor - 1)), distance};
}

double shifter_factor(Millimetres focal_length, Millimetres image_distance) {
    return 1 - image_distance / focal_length;
}

Millimetres shifter_gain(Millimetres focal_length, Millimetres image_distance) {
    return image_distance - image_distance / shifter_factor(focal_length, image_distance);
}

Millimetres Shifter::lens_focal_length() const {
    return given == ShifterGiven::focal_length
               ? focal_length
               : lens_of_stated_pair(stated_factor, stated_gain).focal_length;
}

namespace {

FieldInfo corrected_ratio_info() {
    FieldInfo info;
    info.key = "corrected_focal_ratio";
    info.label = "Corrected at f/";
    info.help = "The focal ratio behind it, in that glass, for which it cancels the error; at "
                "faster ratios a little is left over.";
    info.low = 2;
    info.high = 50;
    info.usual_low = 4;
    info.usual_high = 15;
    return info;
}

}  // namespace

std::vector<Field<Shifter>> Shifter::fields() {
    FieldInfo given;
    given.key = "given_by";
    given.label = "Given by";
    given.help = "Whether you know the lens's focal length, or the factor and the gain that its "
                 "maker states.";
    FieldInfo factor;
    factor.key = "stated_factor";
    factor.label = "Stated factor";
    factor.help = "The magnification its maker states; the real one follows from the real spacing.";
    factor.unit = FieldUnit::times;
    factor.low = 0.3;
    factor.high = 6;
    factor.usual_low = 1.1;
    factor.usual_high = 3;
    factor.only_if = {{"given_by", "factor and gain"}};
    FieldInfo gain = length_info(
        std::string(stated_gain_key), "Stated gain",
        "How many mm of light path its maker says it gives back; negative for a reducer.", -200,
        300, 5, 120);
    gain.only_if = factor.only_if;
    FieldInfo focal =
        length_info("focal_length_mm", "Focal length",
                    "Focal length of the lens: negative moves the image outward, positive inward.",
                    -2000, 2000, -250, -30);
    focal.only_if = {{"given_by", "focal length"}};
    return {
        choice_field(given, &Shifter::given, {"focal length", "factor and gain"}),
        number_field(focal, &Shifter::focal_length),
        number_field(factor, &Shifter::stated_factor),
        number_field(gain, &Shifter::stated_gain),
        number_field(moved_by_hand(length_info(std::string(lens_position_key), "Lens position",
                                               "Where the lens sits behind the entry face of its "
                                               "cell; negative reaches forward "
                                               "into the part before it.",
                                               -150, 200, -40, 60),
                                   {HandMoves::lens, "Lens position",
                                    "Drag to move the lens along the light.",
                                    "no nearer to the telescope", "no nearer to the eyes", 1.5}),
                     &Shifter::lens_offset),
        number_field(
            length_info(
                "length_mm", "Cell length",
                "How far the cell holds its two neighbours apart; 0 when it screws into a nose.", 0,
                200, 0, 80),
            &Shifter::length),
        number_field(
            front_opening(length_info("clear_diameter_mm", "Opening",
                                      "Clear diameter of the lens in its cell.", 3, 150, 10, 45)),
            &Shifter::clear_diameter),
        optional_field(
            length_info("corrected_for_glass_mm", "Corrected for glass",
                        "Millimetres of glass behind it whose spherical and colour error it is "
                        "made to cancel, at the focal ratio stated with it; leave it open for a "
                        "plain lens.",
                        0, 400, 20, 160),
            &Shifter::corrected_glass),
        optional_field(corrected_ratio_info(), &Shifter::corrected_focal_ratio),
        choice_field(anti_reflection_info(), &Shifter::coating, anti_reflection_words()),
    };
}

PartLayout Shifter::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double lens_at = context.lens_at.value_or(lens_offset).value;
    Surface lens{"shifter lens", SurfaceKind::thin_lens, translation(0, 0, lens_at),
                 Circle{clear_diameter.value / 2}};
    lens.focal_length = lens_focal_length().value;
    lens.coating.face = coating;
    layout.surfaces = {lens};
    layout.part_from_exit = translation(0, 0, length.value);
    layout.end_air = std::max(0.0, length.value - lens_at);
    if (context.shows_shared_bodies()) {
        const double radius = clear_diameter.value / 2;
        const double bulge = lens.focal_length < 0 ? -3 : 3;
        layout.bodies = {{LensBody{radius, 5, bulge}, lens.part_from_surface},
                         tube_body(translation(0, 0, lens_at - 5), 10, clear_diameter.value, 1.5)};
        if (length.value > 1)
            layout.bodies.push_back(tube_body(Pose{}, length.value, clear_diameter.value + 3, 2.5));
    }
    return layout;
}

std::optional<std::string> Shifter::contradiction() const {
    if (given == ShifterGiven::focal_length) {
        if (std::abs(focal_length.value) < 5)
            return "focal_length_mm of a shifter must be at least 5 mm either way";
        return std::nullopt;
    }
    if (std::abs(stated_factor - 1) < 0.02 || std::abs(stated_gain.value) < 0.5) {
        return "a factor of 1 or a gain of 0 describes no lens; remove the shifter instead";
    }
    if ((stated_factor > 1) != (stated_gain.value > 0)) {
        return "stated_factor above 1 needs a positive stated_gain_mm, below 1 a negative one";
    }
    return std::nullopt;
}

}  // namespace beamfork
