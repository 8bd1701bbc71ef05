// The curve of the study "tune" with its axes: pointing at it reads it, pressing and dragging sets the varied number.
#pragma once

#include <optional>

#include "scene/tune/tune_rows.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Fills the width that is there. Returns where in the range the press is, 0 to 1, while the plot is pressed.
std::optional<double>
draw_tune_plot(const Ui& ui, const TuneStudy& study, const TuneRows& rows, float height);

}  // namespace beamfork
