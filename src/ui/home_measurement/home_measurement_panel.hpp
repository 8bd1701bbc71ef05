// Measuring one's own parts with a ruler, a lamp or a clock, and filling in what was found.
#pragma once

#include "scene/home_measurement/home_measurement_rows.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct MeasurementUi : Ui {
    MeasurementDraft& draft;  ///< what was chosen and typed
};

void draw_home_measurement_panel(const MeasurementUi& ui);

}  // namespace beamfork
