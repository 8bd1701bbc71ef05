#include "parts/spacer.hpp"

namespace beamfork {

std::vector<Field<Spacer>> Spacer::fields() {
    return {
        number_field(
            moved_by_hand(length_info("length_mm", "Length",
                                      "How far it holds its two neighbours apart.", 0, 500, 0, 100),
                          {HandMoves::rear_end, "Length", "Drag to make it longer or shorter.",
                           "no shorter", "no longer", 3}),
            &Spacer::length),
        number_field(front_opening(length_info("clear_diameter_mm", "Opening",
                                               "Clear inner diameter.", 5, 200, 20, 60)),
                     &Spacer::clear_diameter),
    };
}

PartLayout Spacer::layout(const LayoutContext& context) const {
    PartLayout layout;
    layout.surfaces =
        in_order(round_stop("front opening", Pose{}, clear_diameter.value),
                 round_stop("rear opening", translation(0, 0, length.value), clear_diameter.value));
    layout.part_from_exit = translation(0, 0, length.value);
    layout.end_air = length.value;
    if (context.shows_shared_bodies()) {
        const double seen = length.value > 1 ? length.value : 1;
        layout.bodies = {tube_body(Pose{}, seen, clear_diameter.value, 3),
                         ring_body(Pose{}, clear_diameter.value, clear_diameter.value + 6)};
    }
    return layout;
}

}  // namespace beamfork
