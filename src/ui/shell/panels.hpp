// The panels around the picture, one file each, listed in one table. A panel reads, draws and asks; sums are
// made by scene's rows.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "ui/shell/layout.hpp"
#include "ui/shell/ui.hpp"

namespace beamfork {

void draw_findings_panel(const Ui& ui);
void draw_train_panel(const Ui& ui);
void draw_part_panel(const Ui& ui);
void draw_focus_budget_panel(const Ui& ui);
void draw_light_at_stops_panel(const Ui& ui);
void draw_magnification_panel(const Ui& ui);
void draw_unfolded_path_panel(const Ui& ui);
void draw_ways_to_focus_panel(const Ui& ui);
void draw_image_quality_panel(const Ui& ui);
void draw_reach_table_panel(const Ui& ui);
void draw_fit_panel(const Ui& ui);
void draw_brightness_panel(const Ui& ui);
void draw_alignment_panel(const Ui& ui);
void draw_uncertainty_panel(const Ui& ui);
void draw_tune_panel(const Ui& ui);
void draw_comparison_panel(const Ui& ui);
void draw_sight_view_panel(const Ui& ui);
void draw_home_measurement_panel(const Ui& ui);
void draw_tours_panel(const Ui& ui);

struct PanelEntry {
    std::string_view stem;  ///< of its files and tests; Session::folded and Session::study name it
    std::string_view title;
    std::string_view help;
    Area Layout::*area = nullptr;
    void (*draw)(const Ui& ui) = nullptr;
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
const PanelEntry& shown_study(const Session& session);
/// What stands in the strip's last place: that study; in a narrow window any panel of the strip.
const PanelEntry& shown_in_strip(const Session& session, bool is_narrow);
std::string window_name(const PanelEntry& entry);

/// All of them, each with a heading by which it folds.
void draw_panels(const Ui& ui, const Layout& layout);

}  // namespace beamfork
