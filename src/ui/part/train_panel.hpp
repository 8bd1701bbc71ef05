// All parts in the order in which light meets them: to select, add, move, remove.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

struct TrainState {
    std::optional<std::size_t> keyboard_row;  ///< part whose row had the keyboard last
};

struct TrainUi : Ui {
    TrainState& state;
};

void draw_train_panel(const TrainUi& ui);

/// Adds a part of that kind behind the selected one, where it may stand, and selects it.
void add_part(const Ui& ui, const std::string& kind);
/// Why none can be added; empty: one can.
std::string why_not_add_part(const Ui& ui, const std::string& kind);

}  // namespace beamfork
