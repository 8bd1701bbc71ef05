// What can be taken hold of along the unfolded path: the knobs of lengths, and the parts by name.
#pragma once

#include "ui/unfolded_path/unfolded_path_picture.hpp"
#include "ui/unfolded_path/unfolded_path_state.hpp"

namespace beamfork {

struct PathPanel {
    const Ui& ui;
    const UnfoldedPathRows& rows;
    UnfoldedPathState& state;

    /// The part's length that can be moved; null: it has none.
    [[nodiscard]] const Grip* grip_of(std::optional<std::size_t> part) const;
    void set_length(const Grip& grip, double value) const;
    /// While the last widget has the keyboard and the part is selected, Left and Right change the part's length.
    void use_length_keys(std::optional<std::size_t> part) const;
};

/// A knob at the lower edge of the picture for every length that can be moved.
void draw_path_knobs(const PathPanel& panel, const PathCanvas& canvas);

/// Below the picture: every part's name over what it spends of the light path, side by side.
void draw_path_names(const PathPanel& panel, const PathCanvas& canvas, const Area& lane);

/// The same, one below the other, for a narrow panel.
void draw_path_lines(const PathPanel& panel);

}  // namespace beamfork
