#include "ui/shell/layout.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace beamfork {

namespace {

// In units of the text size.
constexpr float bar_height = 3;
constexpr float status_height = 1.75F;
constexpr float heading_height = 1.9F;
constexpr float folded_width = 9;
constexpr float splitter_width = 0.33F;
constexpr float least_strip = 42;             // for three panels side by side
constexpr float narrow_column_share = 0.36F;  // of the window's width
constexpr float column_share = 0.45F;

bool is_folded(const LayoutSession& session, const char* stem) {
    return session.folded.contains(stem);
}

// Widths of the strip's three panels: folded ones keep their heading, the others share the rest.
std::array<float, 3> strip_widths(const LayoutSession& session, float whole, float text) {
    const std::array<const char*, 3> stems{"focus_budget", "light_at_stops", "study"};
    const float rest = std::max(0.1F, 1 - session.budget_share - session.light_share);
    std::array<float, 3> shares{session.budget_share, session.light_share, rest};
    float taken = 0;
    float open_shares = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (is_folded(session, stems[i])) {
            taken += std::min(folded_width * text, whole / 3);
        } else {
            open_shares += shares[i];
        }
    }
    std::array<float, 3> widths{};
    for (std::size_t i = 0; i < 3; ++i) {
        widths[i] = is_folded(session, stems[i])
                        ? std::min(folded_width * text, whole / 3)
                        : std::floor((whole - taken) * shares[i] / open_shares);
    }
    return widths;
}

// Findings beside the picture, never over it: the picture yields. Folded, they leave the room of `other_headings`, in
// pixels, to those of a column that is folded too.
void lay_out_findings(
    Layout& layout, const LayoutSession& session, Area room, float text, float other_headings) {
    if (is_panel_folded(session, "findings", layout.is_narrow)) {
        const float heading = std::round(heading_height * text);
        layout.findings = {room.left, room.top, room.width - other_headings, heading};
        layout.scene = {room.left, layout.findings.bottom(), room.width, room.height - heading};
        return;
    }
    const float gap = std::round(splitter_width * text);
    const float width = std::round(std::min(session.findings_width * text, room.width * 0.42F));
    layout.findings = {room.left, room.top, width, room.height};
    layout.findings_splitter = {layout.findings.right(), room.top, gap, room.height};
    const float left = layout.findings_splitter.right();
    layout.scene = {left, room.top, room.right() - left, room.height};
}

void lay_out_strip(Layout& layout, const LayoutSession& session, Area strip, float text) {
    if (layout.is_narrow || (session.study_is_wide && !is_folded(session, "study"))) {
        layout.study = strip;
        return;
    }
    const auto widths = strip_widths(session, strip.width, text);
    const float gap = std::round(splitter_width * text);
    float left = strip.left;
    const auto place = [&](std::size_t i, bool is_last) {
        const Area area{left, strip.top, (is_last ? strip.right() - left : widths[i] - gap),
                        strip.height};
        left += widths[i];
        return area;
    };
    layout.focus_budget = place(0, false);
    layout.light_at_stops = place(1, false);
    const bool last_is_folded = is_folded(session, "study");
    layout.study = place(2, !last_is_folded);
    layout.budget_splitter = {layout.focus_budget.right(), strip.top, gap, strip.height};
    layout.light_splitter = {layout.light_at_stops.right(), strip.top, gap, strip.height};
}

void lay_out_column(Layout& layout, const LayoutSession& session, Area column, float text) {
    const float gap = std::round(splitter_width * text);
    const float heading = std::round(heading_height * text);
    const bool train_folded = is_folded(session, "train");
    const bool part_folded = is_folded(session, "part");
    float train = std::round(column.height * session.train_share);
    if (train_folded) train = heading;
    if (part_folded && !train_folded) train = column.height - heading - gap;
    layout.train = {column.left, column.top, column.width, train};
    layout.train_splitter = {column.left, layout.train.bottom(), column.width, gap};
    const float part_top = layout.train_splitter.bottom();
    layout.part = {column.left, part_top, column.width,
                   part_folded ? heading : column.bottom() - part_top};
}

// The column comes to the left and findings to the right; the strip stays in the order in which it is read.
void swap_sides(Layout& layout, float window, float strip_moves) {
    for (Area* area : {&layout.scene, &layout.findings, &layout.train, &layout.part,
                       &layout.column_splitter, &layout.findings_splitter, &layout.train_splitter})
        area->left = window - area->right();
    for (Area* area : {&layout.focus_budget, &layout.light_at_stops, &layout.study,
                       &layout.strip_splitter, &layout.budget_splitter, &layout.light_splitter})
        area->left += strip_moves;
}

// Below the bars and above the foot.
void lay_out_panels(Layout& layout, const LayoutSession& session, Area room, float text) {
    const float gap = std::round(splitter_width * text);
    const bool column_folded = is_folded(session, "train") && is_folded(session, "part");
    float column = std::round(std::min(session.column_width * text, room.width * column_share));
    layout.is_narrow = room.width - (column_folded ? 0 : column + gap) < least_strip * text;
    if (layout.is_narrow) column = std::min(column, std::round(room.width * narrow_column_share));
    const float picture_right = column_folded ? room.width : room.width - column - gap;
    const bool strip_folded =
        is_folded(session, "study")
        && (layout.is_narrow
            || (is_folded(session, "focus_budget") && is_folded(session, "light_at_stops")));
    const float strip =
        std::round(strip_folded ? heading_height * text
                                : std::min(session.strip_height * text, room.height * 0.5F));
    const float picture_bottom = room.bottom() - strip - gap;

    lay_out_findings(layout, session, {0, room.top, picture_right, picture_bottom - room.top}, text,
                     column_folded ? column : 0);
    if (!column_folded) layout.column_splitter = {picture_right, room.top, gap, room.height};
    if (!strip_folded) layout.strip_splitter = {0, picture_bottom, picture_right, gap};
    lay_out_strip(layout, session, {0, picture_bottom + gap, picture_right, strip}, text);
    lay_out_column(layout, session, {room.width - column, room.top, column, room.height}, text);
    if (session.parts_at_left) swap_sides(layout, room.width, room.width - picture_right);
}

}  // namespace

bool is_panel_folded(const LayoutSession& session, std::string_view stem, bool is_narrow) {
    if (is_narrow && stem == "findings") return !session.narrow_findings;
    return session.folded.contains(std::string(stem));
}

void fold_panel(LayoutSession& session, std::string_view stem, bool is_narrow, bool is_folded) {
    if (is_narrow && stem == "findings") {
        session.narrow_findings = !is_folded;
    } else if (is_folded) {
        session.folded.emplace(stem);
    } else {
        session.folded.erase(std::string(stem));
    }
}

Layout lay_out(ImVec2 window, const LayoutSession& session, float text, const BarHeights& bars) {
    Layout layout;
    const float bar = std::round(bar_height * text);
    const float status = std::round(status_height * text);
    layout.top_bar = {0, 0, window.x, bar};
    layout.setup_row = {0, bar, window.x, bars.setup_row};
    layout.notice_bar = {0, layout.setup_row.bottom(), window.x, bars.notice};
    layout.status_bar = {0, window.y - status, window.x, status};
    const float top = layout.notice_bar.bottom();
    lay_out_panels(layout, session, {0, top, window.x, layout.status_bar.top - top}, text);
    return layout;
}

void keep_sizes_sensible(LayoutSession& session) {
    session.column_width = std::clamp(session.column_width, 16.0F, 48.0F);
    session.findings_width = std::clamp(session.findings_width, 12.0F, 40.0F);
    session.strip_height = std::clamp(session.strip_height, 8.0F, 40.0F);
    session.train_share = std::clamp(session.train_share, 0.15F, 0.8F);
    session.budget_share = std::clamp(session.budget_share, 0.15F, 0.6F);
    session.light_share = std::clamp(session.light_share, 0.15F, 0.85F - session.budget_share);
    session.text_scale = std::clamp(session.text_scale, 0.75F, 3.0F);
}

}  // namespace beamfork
