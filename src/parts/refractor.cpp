#include "parts/refractor.hpp"

#include <cmath>

namespace beamfork {

std::vector<Field<Refractor>> Refractor::fields() {
    return {
        number_field(length_info("aperture_mm", "Aperture", "Clear diameter of the objective lens.",
                                 20, 400, 50, 200),
                     &Refractor::aperture),
        number_field(length_info("focal_length_mm", "Focal length",
                                 "Distance from the objective to the image of a star.", 100, 5000,
                                 300, 1500),
                     &Refractor::focal_length),
        number_field(
            measured_at_home(
                length_info(
                    "back_focus_mm", "Back focus",
                    "How far the image of a star lies behind the drawtube's rear face when the "
                    "drawtube is racked fully in: the light path you can spend.",
                    -100, 1000, 0, 250),
                back_focus_at_the_moon),
            &Refractor::back_focus),
        number_field(
            length_info(
                "blue_focus_shift_mm", "Blue focus shift",
                "How much farther out blue light (486 nm) comes to focus than green (546 nm).", -10,
                10, -1, 1),
            &Refractor::blue_shift),
        number_field(
            length_info(
                "red_focus_shift_mm", "Red focus shift",
                "How much farther out red light (656 nm) comes to focus than green (546 nm).", -10,
                10, -1, 1),
            &Refractor::red_shift),
        optional_field(
            length_info("baffle_diameter_mm", "Baffle opening",
                        "Clear diameter of the narrowest baffle inside the tube, if it has one.", 5,
                        400, 30, 150),
            &Refractor::baffle_diameter),
        number_field(length_info("baffle_position_mm", "Baffle position",
                                 "Distance of that baffle behind the objective.", 1, 4900, 50,
                                 1000),
                     &Refractor::baffle_position),
        choice_field(anti_reflection_info(), &Refractor::coating, anti_reflection_words()),
        number_field(lens_faces_info(), &Refractor::lens_faces),
    };
}

PartLayout Refractor::layout(const LayoutContext& context) const {
    PartLayout layout;
    Surface objective{"objective", SurfaceKind::objective, Pose{}, Circle{aperture.value / 2}};
    objective.focal_length = focal_length.value;
    objective.blue_shift = blue_shift.value;
    objective.red_shift = red_shift.value;
    objective.coating.face = coating;
    objective.coating.lens_faces = static_cast<int>(std::lround(lens_faces));
    layout.surfaces.push_back(objective);
    if (baffle_diameter) {
        layout.surfaces.push_back(round_stop(
            "tube baffle", translation(0, 0, baffle_position.value), baffle_diameter->value));
    }
    const double rear = focal_length.value - back_focus.value;
    layout.part_from_exit = translation(0, 0, rear);
    if (!context.shows_shared_bodies()) return layout;

    const double wall = 2;
    const double tube_inner = aperture.value + 12;
    const double shade = 0.6 * aperture.value;  // a dew shade in front of the lens
    const double tube_end =
        rear - 70 > 60 ? rear - 70 : rear * 0.8;  // the focuser's body begins there
    layout.bodies.push_back(
        tube_body(translation(0, 0, -shade), shade + 20, tube_inner + 14, wall));
    layout.bodies.push_back(tube_body(translation(0, 0, 20), tube_end - 20, tube_inner, wall));
    layout.bodies.push_back(ring_body(Pose{}, aperture.value, tube_inner + 14));
    layout.bodies.push_back({LensBody{aperture.value / 2, 6, 10}, Pose{}});
    if (baffle_diameter) {
        layout.bodies.push_back(ring_body(translation(0, 0, baffle_position.value),
                                          baffle_diameter->value, tube_inner));
    }
    return layout;
}

std::optional<std::string> Refractor::contradiction() const {
    if (back_focus.value > focal_length.value - 10) {
        return "back_focus_mm must be at least 10 mm shorter than focal_length_mm";
    }
    if (focal_length.value < 2 * aperture.value) {
        return "focal_length_mm must be at least twice aperture_mm (f/2); check the two numbers";
    }
    if (baffle_diameter && baffle_position.value > focal_length.value - back_focus.value) {
        return "baffle_position_mm must lie between the objective and the drawtube's rear face";
    }
    return std::nullopt;
}

}  // namespace beamfork
