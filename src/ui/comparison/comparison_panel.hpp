// The setup beside another one, or beside itself before a change.
#pragma once

#include <optional>
#include <string>

#include "ui/comparison/comparison_view.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Remembered, but for the place in the picture.
struct ComparisonSession {
    std::string with;  ///< key of a choice; empty: nothing yet
    CompanionPlace place = CompanionPlace::none;
};

struct ComparisonUi : Ui {
    const ComparisonView& view;
    ComparisonSession& session;
    ComparisonRequests& asks;
};

void draw_comparison_panel(const ComparisonUi& ui);

/// Asks for the other setup while the panel is shown or that setup is in the picture. A talk has no room for its half.
std::optional<ComparisonRequest>
wanted_comparison(const ComparisonSession& session, bool is_shown, bool is_talk);

}  // namespace beamfork
