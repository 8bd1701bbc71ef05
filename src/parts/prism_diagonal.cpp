#include "parts/prism_diagonal.hpp"

#include <numbers>

#include "parts/mirror_diagonal.hpp"

namespace beamfork {

FieldInfo coating_info() {
    FieldInfo info;
    info.key = "reflecting_faces";
    info.label = "Reflecting faces";
    info.help = "Bare glass reflects without loss but lets steep rays leak out; a mirrored face "
                "reflects at any angle.";
    return info;
}

std::vector<std::string> coating_words() { return {"bare glass", "mirrored"}; }

std::vector<Field<PrismDiagonal>> PrismDiagonal::fields() {
    FieldInfo glass;
    glass.key = "glass";
    glass.label = "Glass";
    glass.help =
        "Glass type of the prism; a low index lets the steep rays of a fast telescope leak.";
    return {
        number_field(grows_with_openings(ruled_by_light_path(length_info(
                         "entry_leg_mm", "Entry leg",
                         "From the front face to the fold, along the light.", 5, 200, 12, 60))),
                     &PrismDiagonal::entry_leg),
        number_field(grows_with_openings(ruled_by_light_path(length_info(
                         "exit_leg_mm", "Exit leg",
                         "From the fold to the rear face, along the light.", 5, 200, 12, 60))),
                     &PrismDiagonal::exit_leg),
        number_field(grows_with_openings(ruled_by_light_path(
                         length_info("prism_width_mm", "Prism width",
                                     "Side of the prism's square entry face.", 5, 120, 15, 45))),
                     &PrismDiagonal::prism_width),
        number_field(
            front_opening(length_info("clear_diameter_mm", "Opening",
                                      "Clear diameter of the rings at both ends.", 5, 150, 14, 48)),
            &PrismDiagonal::clear_diameter),
        word_field(ruled_by_light_path(glass), &PrismDiagonal::glass, glass_names()),
        choice_field(coating_info(), &PrismDiagonal::hypotenuse, coating_words()),
        choice_field(anti_reflection_info(), &PrismDiagonal::coating, anti_reflection_words()),
        number_field(turned_info(), &PrismDiagonal::turned),
        optional_field(stated_light_path_info(), &PrismDiagonal::stated_light_path),
    };
}

PartLayout PrismDiagonal::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double width = prism_width.value;
    const double clear = clear_diameter.value;
    const Pose roll = rotation_about_z(to_radians(turned));
    const Pose entry = roll * translation(0, 0, entry_leg.value - width / 2);
    Prism prism = right_angle_prism(width, {glass, hypotenuse}, "prism");
    const Pose leaving = entry * prism.prism_from_exit;
    const double air_out = exit_leg.value - width / 2;
    layout.part_from_exit = leaving * translation(0, 0, air_out);
    const Pose hypotenuse_stands = entry * prism.surfaces[1].part_from_surface;
    layout.surfaces.reserve(prism.surfaces.size() + 2);
    layout.surfaces.push_back(round_stop("front opening", Pose{}, clear));
    append(layout.surfaces, std::move(prism.surfaces), entry);
    coat(layout.surfaces, coating);
    layout.surfaces.push_back(round_stop("rear opening", layout.part_from_exit, clear));
    layout.end_air = air_out;
    if (context.shows_shared_bodies()) {
        const double wall = 2.5;
        const double air_in = entry_leg.value - width / 2;
        const double frame = (width > clear ? width : clear) + 6;
        const Pose behind_hypotenuse = hypotenuse_stands * translation(0, 0, 1);
        layout.bodies = {{prism.body(), entry},
                         plate_body(entry * translation(0, 0, -2.5), frame, clear),
                         plate_body(leaving * translation(0, 0, 0.5), frame, clear),
                         {PlateBody{rectangle(width, width * std::numbers::sqrt2).corners, 1.5, 0},
                          behind_hypotenuse}};
        if (air_in > 1) layout.bodies.push_back(tube_body(roll, air_in, clear, wall));
        if (air_out > 1) layout.bodies.push_back(tube_body(leaving, air_out, clear, wall));
    }
    return layout;
}

std::optional<std::string> PrismDiagonal::contradiction() const {
    if (2 * entry_leg.value < prism_width.value || 2 * exit_leg.value < prism_width.value) {
        return "each leg must be at least half of prism_width_mm, or the prism would stick out of "
               "its end";
    }
    return std::nullopt;
}

}  // namespace beamfork
