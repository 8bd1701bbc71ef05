// The panels around the picture, listed in one table that binds each to what it may read, change and ask. A panel reads, draws
// and asks; sums are made by scene's rows.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "ui/window_ui.hpp"

namespace beamfork {

struct PanelEntry {
    std::string_view stem;  ///< of its files and tests; LayoutSession::folded and ::study name it
    std::string_view title;
    std::string_view help;
    Area Layout::*area = nullptr;
    void (*draw)(const WindowUi& ui) = nullptr;
    bool needs_report = false;
    /// One of the studies that share the strip's last place; the session says which is shown.
    [[nodiscard]] bool is_study() const { return area == &Layout::study; }
    /// Below the picture; a narrow window has room for one of these.
    [[nodiscard]] bool is_in_strip() const {
        return is_study() || area == &Layout::focus_budget || area == &Layout::light_at_stops;
    }
};

std::span<const PanelEntry> panels();
/// The study the session has chosen; the first when it names none.
const PanelEntry& shown_study(const LayoutSession& session);
/// What stands in the strip's last place: that study; in a narrow window any panel of the strip.
const PanelEntry& shown_in_strip(const LayoutSession& session, bool is_narrow);
std::string window_name(const PanelEntry& entry);

/// All of them, each with a heading by which it folds.
void draw_panels(const WindowUi& ui, const Layout& layout);

}  // namespace beamfork
