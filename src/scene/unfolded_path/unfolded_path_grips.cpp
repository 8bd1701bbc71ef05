#include "scene/unfolded_path/unfolded_track.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

const char* const how_to_move = " In steps of 0.5 mm, with Shift in 0.05 mm; Esc puts it back. "
                                "With the keyboard: choose the part, then "
                                "Left and Right.";

}  // namespace

std::vector<Grip>
unfolded_grips(const Setup& setup, const Report& report, const UnfoldedPathRows& rows) {
    std::vector<Grip> grips;
    for (const PathStretch& stretch : rows.stretches) {
        auto length = movable_length(setup, report, stretch.part);
        if (!length || length->part != stretch.part) continue;  // the arms move across the light
        const bool is_focuser = length->moves == HandMoves::drawtube;
        Grip grip{*std::move(length), 0, is_focuser ? rows.zero : stretch.from, {}, {}};
        grip.at = grip.anchor + grip.value;
        grip.text = told_value(grip, grip.value);
        grip.help =
            fmt::format("{}: {}. {}{}", grip.label, length_text(grip.value), grip.how, how_to_move);
        grips.push_back(std::move(grip));
    }
    return grips;
}

}  // namespace beamfork
