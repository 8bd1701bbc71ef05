// Findings beside the picture, most severe first, each with its cures as buttons.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

/// Remembered.
struct FindingsSession {
    bool shows_all = false;  ///< false: only what fails or is poor, or else the first
};

struct FindingsUi : Ui {
    const std::string& report_error;  ///< why there is no report
    FindingsSession& session;
};

void draw_findings_panel(const FindingsUi& ui);

}  // namespace beamfork
