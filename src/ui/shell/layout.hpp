// Where everything stands in the window: the picture first, findings at its left, a column at its right, a strip
// below it; or findings at its right and the column at its left.
#pragma once

#include <set>
#include <string>
#include <string_view>

#include "ui/kit/area.hpp"

#include <imgui.h>

namespace beamfork {

/// How the panels are arranged: remembered. Lengths in units of the text size, so that they follow it.
struct LayoutSession {
    float text_scale = 1;              ///< 0.75 .. 3
    float column_width = 24;           ///< of the column at the right
    float findings_width = 18;         ///< of the column at the left
    float strip_height = 17;           ///< of the strip at the bottom
    float train_share = 0.5F;          ///< of the column's height
    float budget_share = 0.33F;        ///< of the strip's width
    float light_share = 0.35F;         ///< likewise
    std::string study = "sight_view";  ///< which study the strip's last place shows, by stem
    bool study_is_wide = false;        ///< that study has all of the strip
    bool parts_at_left = false;  ///< list of parts and values at the left, findings at the right
    std::string narrow_shows = "focus_budget";  ///< in a narrow window the strip shows one panel
    bool narrow_findings = false;  ///< in a narrow window findings are folded, unless this is set
    std::set<std::string> folded;  ///< panels that show their heading only, by stem: "focus_budget"
};

struct Layout {
    Area top_bar;
    Area setup_row;   ///< empty while one setup alone is open
    Area notice_bar;  ///< empty when there is nothing to tell
    Area scene;
    Area findings;  ///< at the left of the picture; folded, a line above it
    Area focus_budget;
    Area light_at_stops;
    Area study;  ///< whichever study the session has chosen
    Area train;
    Area part;
    Area status_bar;
    Area column_splitter;  ///< between picture and column; empty while all of the column is folded
    Area findings_splitter;  ///< between findings and picture; empty while they are folded
    Area strip_splitter;     ///< between picture and strip; likewise
    Area train_splitter;
    Area budget_splitter;
    Area light_splitter;
    bool is_narrow = false;  ///< the strip has room for one panel: it stands in `study`
};

/// Bars that come and go, in pixels; 0: not there.
struct BarHeights {
    float setup_row = 0;
    float notice = 0;
};

/// `text_size` in pixels scales everything. Areas never overlap, except that headings of a column that is all
/// folded lie over the picture. Works down to 640 x 400.
Layout
lay_out(ImVec2 window, const LayoutSession& session, float text_size, const BarHeights& bars);

/// Whether the panel shows its heading alone; a narrow window keeps findings folded on its own account.
bool is_panel_folded(const LayoutSession& session, std::string_view stem, bool is_narrow);
void fold_panel(LayoutSession& session, std::string_view stem, bool is_narrow, bool is_folded);

/// The session's sizes after a splitter was dragged, kept within what leaves room for all.
void keep_sizes_sensible(LayoutSession& session);

}  // namespace beamfork
