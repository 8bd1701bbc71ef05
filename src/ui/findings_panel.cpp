#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

#include "scene/finding_rows.hpp"
#include "ui/viewport.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

void draw_card(const Ui& ui, const FindingRow& row, std::size_t number, float width) {
    const std::string id = "findings/" + std::to_string(number);
    const float indent = ImGui::GetTextLineHeight() + grid(3);
    const ImVec2 all_low = ImGui::GetWindowPos();
    const ImVec2 all_size = ImGui::GetWindowSize();
    const ImU32 ink = text_colour(row.role);
    ImGui::PushStyleColor(ImGuiCol_ChildBg, colour(Tone::panel, 0.86F));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2.5F), grid(1.5F)});
    ImGui::BeginChild(id.c_str(), {width, 0},
                      ImGuiChildFlags_AutoResizeY | ImGuiChildFlags_AlwaysUseWindowPadding);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low = ImGui::GetWindowPos();
    const float line = ImGui::GetTextLineHeight();
    const float bottom = low.y + ImGui::GetWindowHeight();
    list.PushClipRect(all_low, {all_low.x + all_size.x, all_low.y + all_size.y});
    list.AddRectFilled(low, {low.x + grid(0.75F), bottom}, colour(row.role), grid(1),
                       ImDrawFlags_RoundCornersLeft);
    list.PopClipRect();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_sign(list, row.sign, {at.x + grid(1) + line / 2, at.y + line / 2}, line * 0.8F, ink);
    ImGui::Indent(indent);
    ImGui::PushFont(font(row.severity <= Severity::poor ? TextFace::bold : TextFace::regular));
    wrapped_text(row.word + ": " + row.sentence, colour(Tone::text));
    ImGui::PopFont();
    if (!row.advice.empty()) wrapped_text(row.advice, colour(Tone::text_dim));
    ImGui::Unindent(indent);
    const bool hovered = ImGui::IsWindowHovered();
    ImGui::EndChild();
    ui.note(id, row.sentence, row.advice);
    if (!hovered || !row.part) return;
    ui.hover_part(row.part);
    if (ImGui::IsMouseClicked(0)) ui.session.selected_part = row.part;
}

// What fails or is poor, at most three; when nothing is, what is good.
std::vector<std::size_t> always_shown(const std::vector<FindingRow>& rows) {
    std::vector<std::size_t> shown;
    for (std::size_t i = 0;
         i < rows.size() && shown.size() < 3 && rows[i].severity <= Severity::poor; ++i) {
        shown.push_back(i);
    }
    if (!shown.empty() || rows.empty()) return shown;
    const auto good = std::find_if(rows.begin(), rows.end(), [](const FindingRow& row) {
        return row.severity == Severity::good;
    });
    return {good == rows.end() ? 0 : static_cast<std::size_t>(good - rows.begin())};
}

void draw_all_cards(const Ui& ui, float width) {
    const auto rows = finding_rows(*ui.view.report);
    std::vector<std::size_t> shown = always_shown(rows);
    const std::size_t more = rows.size() - shown.size();
    if (ui.session.all_findings) {
        shown.resize(rows.size());
        std::iota(shown.begin(), shown.end(), std::size_t{0});
    }
    for (const std::size_t i : shown)
        draw_card(ui, rows[i], i, width);
    if (more == 0) return;
    const std::string label = ui.session.all_findings ? "Fewer" : std::to_string(more) + " more";
    if (text_button(ui, "findings/all", label, finding_summary(*ui.view.report))) {
        ui.session.all_findings = !ui.session.all_findings;
    }
}

}  // namespace

void draw_findings_panel(const Ui& ui, const Area& area) {
    const float width = std::min(grid(95), area.width * 0.5F);
    ImGui::SetCursorScreenPos({area.left + grid(2), area.top + grid(2)});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {grid(1), grid(1)});
    ImGui::SetNextWindowSizeConstraints({width, 0},
                                        {width, std::max(grid(12), area.height * 0.62F)});
    ImGui::BeginChild("picture/findings", {width, 0}, ImGuiChildFlags_AutoResizeY);
    const float inner = ImGui::GetContentRegionAvail().x;
    if (ui.view.report == nullptr) {
        draw_card(ui,
                  {Severity::fails, "Not a train yet", FindingSign::cross, ColourRole::clipped,
                   ui.view.report_error, "", std::nullopt},
                  0, inner);
    } else {
        draw_all_cards(ui, inner);
    }
    ImGui::EndChild();
    ImGui::PopStyleVar(2);
}

}  // namespace beamfork
