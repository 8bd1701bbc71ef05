#include "plan/quick_focus.hpp"

#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/focuser.hpp"
#include "study/focus/focus_budget.hpp"

namespace beamfork {

namespace {

// Back through the axis: what is needed behind the drawtube for an image that far behind the head's entry face.
double needed_behind_drawtube(const Axis& axis, double behind_head, double& factor) {
    double distance = behind_head + axis.lengths[axis.lenses];
    for (std::size_t i = axis.lenses; i-- > 0;) {
        const double made = 1 - distance / axis.focal_lengths[i];
        factor *= made;
        distance = distance / made + axis.lengths[i];
    }
    return distance;
}

// And forth: where the image falls behind the head's entry face.
double image_behind_head(const Axis& axis, double behind_drawtube) {
    double distance = behind_drawtube;
    for (std::size_t i = 0; i < axis.lenses; ++i) {
        distance -= axis.lengths[i];
        distance = 1 / (1 / distance + 1 / axis.focal_lengths[i]);
    }
    return distance - axis.lengths[axis.lenses];
}

}  // namespace

TubeFocus::TubeFocus(const Tube& tube)
    : tube_(&tube),
      focuser_(find_part<Focuser>(tube.alone)),
      mirrors_(find_part<CassegrainMovingMirror>(tube.alone)) {
    BEAMFORK_EXPECTS(focuser_ != nullptr);
}

void TubeFocus::by_drawtube(QuickFocus& found, double back_focus, double needed) const {
    found.margin_in = back_focus - needed;
    found.margin_out = focuser_->travel.value - found.margin_in;
    found.drawtube = focuser_->held_at ? focuser_->held_at->value
                                       : std::clamp(found.margin_in, 0.0, focuser_->travel.value);
}

double
TubeFocus::by_primary(QuickFocus& found, std::optional<Millimetres> distance, double needed) const {
    const double racked_in = focuser_->held_at.value_or(Millimetres{0}).value;
    const double racked_out = focuser_->held_at.value_or(focuser_->travel).value;
    const Millimetres wanted = mirrors_->moved_for({needed + racked_in}, distance);
    found.primary_moved = std::clamp(wanted, -mirrors_->travel_down, mirrors_->travel_up);
    const double back_focus = mirrors_->focus_at(found.primary_moved, distance).back_focus.value;
    found.margin_in =
        mirrors_->focus_at(mirrors_->travel_up, distance).back_focus.value - (needed + racked_in);
    found.margin_out =
        needed + racked_out - mirrors_->focus_at(-mirrors_->travel_down, distance).back_focus.value;
    found.drawtube = std::clamp(back_focus - needed, racked_in, racked_out);
    if (std::abs(found.drawtube - racked_in) < exact_fit.value) found.drawtube = racked_in;
    return back_focus;
}

QuickFocus TubeFocus::focus(const Axis& axis,
                            const Ending& ending,
                            double seat_travel,
                            std::size_t use) const {
    QuickFocus found;
    const double needed = needed_behind_drawtube(axis, ending.needed, found.factor);
    double back_focus = *tube_->back_focus[use];
    if (mirrors_ == nullptr) {
        by_drawtube(found, back_focus, needed);
    } else {
        back_focus = by_primary(found, tube_->distance[use], needed);
    }
    found.reaches = found.margin() >= -exact_fit.value;
    if (!found.reaches && !focuser_->held_at) {
        // What the seats have left beside what eyes and arms ask of them.
        const double missed = image_behind_head(axis, back_focus - found.drawtube) - ending.needed;
        found.reaches =
            std::abs(missed) + std::abs(ending.seats_ask) <= seat_travel + exact_fit.value;
    }
    if (std::abs(ending.arm_difference) / 2 - seat_travel > exact_fit.value) found.reaches = false;
    return found;
}

}  // namespace beamfork
