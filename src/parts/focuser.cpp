#include "parts/focuser.hpp"

namespace beamfork {

std::vector<Field<Focuser>> Focuser::fields() {
    return {
        number_field(
            measured_at_home(length_info("travel_mm", "Travel",
                                         "How far the drawtube moves from fully in to fully out.",
                                         0, 500, 20, 150),
                             "Measure the drawtube with a ruler, racked in and racked out."),
            &Focuser::travel),
        number_field(grows_with_openings(length_info("drawtube_diameter_mm", "Drawtube opening",
                                                     "Clear inner diameter of the drawtube.", 10,
                                                     200, 25, 100)),
                     &Focuser::drawtube_diameter),
        number_field(
            length_info(
                "drawtube_length_mm", "Drawtube length",
                "From its rear face to its front end: racked in, the front end reaches into "
                "the light cone and can cut it.",
                5, 600, 40, 250),
            &Focuser::drawtube_length),
        optional_field(
            moved_by_hand(
                length_info("held_at_mm", "Held at",
                            "Hold the drawtube at this extension instead of focusing; leave it "
                            "open to focus.",
                            0, 500, 0, 150),
                {HandMoves::drawtube, "Drawtube",
                 "Drag to hold the drawtube where you want it; double-click to let it focus again.",
                 "fully in", "fully out", 10}),
            &Focuser::held_at),
        optional_field(mass_info("rated_load_g", "Rated load",
                                 "What its maker says the drawtube may carry; the weight behind it "
                                 "is held against this.",
                                 20000, 500, 5000),
                       &Focuser::rated_load),
    };
}

PartLayout Focuser::layout(const LayoutContext& context) const {
    PartLayout layout;
    const double rear = context.drawtube.value;
    const double front = rear - drawtube_length.value;
    layout.surfaces = in_order(
        round_stop("drawtube front end", translation(0, 0, front), drawtube_diameter.value),
        round_stop("drawtube rear opening", translation(0, 0, rear), drawtube_diameter.value));
    layout.part_from_exit = translation(0, 0, rear);
    if (!context.shows_shared_bodies()) return layout;
    const double wall = 2.5;
    layout.bodies = {
        tube_body(translation(0, 0, front), drawtube_length.value, drawtube_diameter.value, wall),
        ring_body(translation(0, 0, front), drawtube_diameter.value,
                  drawtube_diameter.value + 2 * wall),
        ring_body(translation(0, 0, rear), drawtube_diameter.value,
                  drawtube_diameter.value + 8 * wall),
        // The body stands still while the drawtube moves.
        tube_body(translation(0, 0, -70), 60, drawtube_diameter.value + 8, 4)};
    return layout;
}

std::optional<std::string> Focuser::contradiction() const {
    if (held_at && *held_at > travel) return "held_at_mm must not be more than travel_mm";
    return std::nullopt;
}

}  // namespace beamfork
