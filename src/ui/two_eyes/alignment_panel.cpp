#include "ui/two_eyes/alignment_panel.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "scene/two_eyes/alignment_rows.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

// The picture's plane: arcminutes, the right image's middle at the origin.
struct Plane {
    ImVec2 middle;
    float scale;
    [[nodiscard]] ImVec2 at(double x, double y) const {
        return {middle.x + scale * static_cast<float>(x), middle.y - scale * static_cast<float>(y)};
    }
};

void draw_box(ImDrawList& list, const Plane& plane, const AlignmentBox& box, bool dashed) {
    const ImVec2 a = plane.at(box.low_x, box.half_height);
    const ImVec2 b = plane.at(box.high_x, -box.half_height);
    const ImU32 ink = colour(dashed ? Tone::text_dim : Tone::text, 0.8F);
    const float width = std::max(1.0F, grid(0.25F));
    if (!dashed) {
        list.AddRect(a, b, ink, 0, 0, width);
        return;
    }
    dashed_line(list, a, {b.x, a.y}, ink, width);
    dashed_line(list, {b.x, a.y}, b, ink, width);
    dashed_line(list, b, {a.x, b.y}, ink, width);
    dashed_line(list, {a.x, b.y}, a, ink, width);
}

// Upright cross for the right eye; for the left one with a ring, turned as its image is.
void draw_cross(ImDrawList& list, ImVec2 at, double degrees, ColourRole role, bool ringed) {
    const float size = grid(3);
    const auto angle = static_cast<float>(degrees * std::numbers::pi / 180);
    const ImVec2 along{std::cos(angle) * size, -std::sin(angle) * size};
    const float width = grid(0.5F);
    list.AddLine({at.x - along.x, at.y - along.y}, {at.x + along.x, at.y + along.y}, colour(role),
                 width);
    list.AddLine({at.x - along.y, at.y + along.x}, {at.x + along.y, at.y - along.x}, colour(role),
                 width);
    if (ringed) list.AddCircle(at, size * 0.6F, colour(role), 0, width);
}

void draw_picture(const Ui& ui, const AlignmentRows& rows, ImVec2 low, ImVec2 size) {
    constexpr const char* help =
        "Where the left image (ringed) stands against the right one, as seen, in arcminutes. Full "
        "frame: comfortable; dashed frame: the end. The frames reach farther to the side to which "
        "eyes "
        "turn inward.";
    ImGui::SetCursorScreenPos(low);
    ImGui::InvisibleButton("alignment/picture", size);
    ui.describe("alignment/picture", rows.sentence, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 high{low.x + size.x, low.y + size.y};
    list.AddRectFilled(low, high, colour(Tone::ground), grid(0.5F));
    list.PushClipRect(low, high, true);
    const float scale = size.x / static_cast<float>(2 * rows.reach);
    const Plane plane{{low.x + size.x / 2, low.y + size.y / 2}, scale};
    draw_box(list, plane, rows.end, true);
    draw_box(list, plane, rows.comfortable, false);
    draw_cross(list, plane.at(0, 0), 0, ColourRole::right_arm, false);
    draw_cross(list, plane.at(rows.left_x, rows.left_y), rows.turned, ColourRole::left_arm, true);
    list.PopClipRect();
    const float line = ImGui::GetTextLineHeight();
    text_at(list, {low.x + grid(1), high.y - line - grid(0.5F)}, "outward", colour(Tone::text_dim));
    text_ending_at(list, {high.x - grid(1), high.y - line - grid(0.5F)}, "inward",
                   colour(Tone::text_dim));
    text_at(list, {low.x + grid(1), low.y + grid(0.5F)}, "left", text_colour(ColourRole::left_arm));
    text_ending_at(list, {high.x - grid(1), low.y + grid(0.5F)}, "right",
                   text_colour(ColourRole::right_arm));
}

void draw_values(const Ui& ui, const AlignmentRows& rows) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float right = ImGui::GetCursorScreenPos().x + ImGui::GetContentRegionAvail().x;
    const float verdict = right - text_width("comfortable");
    const float unit = verdict - grid(5);
    std::size_t number = 0;
    for (const AlignmentRow& row : rows.values) {
        const ImVec2 low = line_area(
            ui, "alignment/value/" + std::to_string(number++), row.label,
            row.help + (row.limit == "–" ? "" : " Here: " + row.limit + " " + row.unit + "."));
        const std::string value = typeset(row.value);
        const float room = unit - low.x - text_width(value, TextFace::bold) - grid(3);
        text_at(list, low, shortened(row.label, room), colour(Tone::text_dim));
        text_ending_at(list, {unit - grid(1), low.y}, value, colour(Tone::text), TextFace::bold);
        text_at(list, {unit, low.y}, row.unit, colour(Tone::text_dim));
        text_at(list, {verdict, low.y}, row.verdict, text_colour(row.role));
    }
}

void draw_tolerances(const Ui& ui, const AlignmentRows& rows) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 top = ImGui::GetCursorScreenPos();
    const float right = top.x + ImGui::GetContentRegionAvail().x;
    const float unit = right - grid(7);
    const float stated = unit - grid(16);
    text_at(list, top, "What alone reaches the limit", colour(Tone::text), TextFace::bold);
    text_ending_at(list, {stated, top.y}, "has", colour(Tone::text_dim));
    text_ending_at(list, {unit - grid(1), top.y}, "may be", colour(Tone::text_dim));
    ImGui::Dummy({1, ImGui::GetTextLineHeight() + grid(1)});
    for (std::size_t i = 0; i < rows.tolerances.size(); ++i) {
        const ToleranceRow& row = rows.tolerances[i];
        const ImVec2 low =
            line_area(ui, "alignment/tolerance/" + std::to_string(i), row.label, row.help);
        const bool hot = ImGui::IsItemHovered();
        if (hot) ui.hover_part(row.part);
        if (ImGui::IsItemActivated()) ui.selected_part = row.part;
        const ImU32 ink = row.used > 1 ? text_colour(ColourRole::shortfall) : colour(Tone::text);
        text_at(list, low, shortened(row.label, stated - low.x - grid(12)),
                colour(hot ? Tone::text : Tone::text_dim));
        text_ending_at(list, {stated, low.y}, typeset(row.stated), ink);
        text_ending_at(list, {unit - grid(1), low.y}, typeset(row.allowed), colour(Tone::text),
                       TextFace::bold);
        text_at(list, {unit, low.y}, row.unit, colour(Tone::text_dim));
    }
}

}  // namespace

void draw_alignment_panel(const Ui& ui) {
    const AlignmentRows rows = alignment_rows(ui.setup(), *ui.report);
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text(rows.sentence, colour(Tone::text));
    ImGui::PopFont();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    ImGui::Dummy({1, grid(1)});
    {
        SideBySide pieces("alignment/pieces", 3, grid(78));
        pieces.next();
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const ImVec2 size{std::min(width, grid(110)), std::min(width * 0.36F, grid(38))};
        draw_picture(ui, rows, low, size);
        pieces.next();
        draw_values(ui, rows);
        pieces.next();
        draw_tolerances(ui, rows);
    }
    ImGui::Dummy({1, grid(1)});
    wrapped_text(
        "Seeing double or pain at the eyepieces: stop. If it stays, ask an eye specialist; this is "
        "no medical advice.",
        colour(Tone::text_dim));
    ImGui::PopStyleVar();
}

}  // namespace beamfork
