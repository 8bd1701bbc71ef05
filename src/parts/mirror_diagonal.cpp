#include "parts/mirror_diagonal.hpp"

#include <numbers>

namespace beamfork {

FieldInfo turned_info() {
    FieldInfo info;
    info.key = "turned_deg";
    info.label = "Turned";
    info.help =
        "Turns the diagonal about the incoming light; 0° looks straight up, positive leans to the "
        "observer's left.";
    info.unit = FieldUnit::degree;
    info.low = -180;
    info.high = 180;
    info.usual_low = -90;
    info.usual_high = 90;
    return info;
}

std::vector<Field<MirrorDiagonal>> MirrorDiagonal::fields() {
    return {
        number_field(grows_with_openings(ruled_by_light_path(length_info(
                         "entry_leg_mm", "Entry leg",
                         "From the front face to the mirror, along the light.", 5, 200, 20, 80))),
                     &MirrorDiagonal::entry_leg),
        number_field(grows_with_openings(ruled_by_light_path(length_info(
                         "exit_leg_mm", "Exit leg",
                         "From the mirror to the rear face, along the light.", 5, 200, 20, 80))),
                     &MirrorDiagonal::exit_leg),
        number_field(front_opening(length_info("clear_diameter_mm", "Opening",
                                               "Clear diameter of both ends and across the mirror.",
                                               5, 150, 20, 50)),
                     &MirrorDiagonal::clear_diameter),
        number_field(turned_info(), &MirrorDiagonal::turned),
        choice_field(mirror_coating_info(), &MirrorDiagonal::coating, mirror_coating_words()),
        optional_field(stated_light_path_info(), &MirrorDiagonal::stated_light_path),
    };
}

PartLayout MirrorDiagonal::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double clear = clear_diameter.value;
    const Pose roll = rotation_about_z(to_radians(turned));
    const Pose fold = roll * translation(0, 0, entry_leg.value);
    const Pose leaving = fold * rotation_about_x(to_radians(Degrees{-90}));
    const Pose mirror = fold * rotation_about_x(to_radians(Degrees{45}));
    const Aperture plate = rectangle(clear, clear * std::numbers::sqrt2);
    layout.part_from_exit = leaving * translation(0, 0, exit_leg.value);
    layout.surfaces = in_order(round_stop("front opening", Pose{}, clear),
                               Surface{"mirror", SurfaceKind::mirror, mirror, plate},
                               round_stop("rear opening", layout.part_from_exit, clear));
    layout.surfaces[1].coating.mirror = coating;
    layout.end_air = exit_leg.value - clear / 2;
    if (context.shows_shared_bodies()) {
        const double wall = 2.5;
        const double tube_in = entry_leg.value - clear / 2;
        const double tube_out = exit_leg.value - clear / 2;
        layout.bodies = {{MirrorBody{outline(plate, 4), 4}, mirror},
                         plate_body(fold * translation(0, 0, -clear / 2 - 2), clear + 10, clear),
                         plate_body(leaving * translation(0, 0, clear / 2), clear + 10, clear)};
        if (tube_in > 1) layout.bodies.push_back(tube_body(roll, tube_in, clear, wall));
        if (tube_out > 1)
            layout.bodies.push_back(
                tube_body(leaving * translation(0, 0, clear / 2), tube_out, clear, wall));
    }
    return layout;
}

std::optional<std::string> MirrorDiagonal::contradiction() const {
    if (2 * entry_leg.value < clear_diameter.value || 2 * exit_leg.value < clear_diameter.value) {
        return "each leg must be at least half of clear_diameter_mm, or the mirror would stick out "
               "of its end";
    }
    return std::nullopt;
}

}  // namespace beamfork
