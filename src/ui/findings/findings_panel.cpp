#include "ui/findings/findings_panel.hpp"

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

#include "desk/desk_requests.hpp"
#include "scene/findings/finding_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"

namespace beamfork {

namespace {

constexpr std::size_t cures_at_first = 2;

float wrapped_height(const std::string& text, float width) {
    return text.empty() ? 0 : ImGui::CalcTextSize(folded(text, width).c_str()).y;
}

void text_in(ImDrawList& list, ImVec2 at, const std::string& text, float width, ImU32 ink) {
    list.AddText(at, ink, folded(text, width).c_str());
}

// One line of what a cure changes: the sign, the quantity at the left, the change at the right; on two lines where one is
// too short. Returns its height; draws nothing without a list.
float effect_line(ImDrawList* list, ImVec2 at, const EffectLine& line, float width) {
    const float height = ImGui::GetTextLineHeight();
    const float sign = height * 0.8F;
    const float quantity = text_width(line.quantity);
    const float change = text_width(line.change);
    const bool is_one = sign + quantity + grid(2) + change <= width;
    if (list != nullptr) {
        const ImU32 ink = text_colour(line.is_gain ? ColourRole::good : ColourRole::shortfall);
        text_at(*list, at, line.is_gain ? "+" : "−", ink, TextFace::bold);
        text_at(*list, {at.x + sign, at.y}, line.quantity, colour(Tone::text_dim));
        text_at(*list, {at.x + width - change, is_one ? at.y : at.y + height}, line.change,
                colour(Tone::text));
    }
    return is_one ? height : 2 * height;
}

float effect_lines(ImDrawList* list, ImVec2 at, const CureRow& row, float width) {
    float height = 0;
    for (const EffectLine& line : row.effect)
        height += effect_line(list, {at.x, at.y + height}, line, width);
    return height;
}

// One cure is one button: what to do, and below it what that brings. Hovered, it shows in the picture.
void draw_cure(const FindingsUi& ui, const CureRow& row, CurePick pick) {
    const std::string id =
        "findings/" + std::to_string(pick.finding) + "/cure/" + std::to_string(pick.cure);
    const float edge = grid(1.5F);
    const float width = ImGui::GetContentRegionAvail().x;
    const float inner = width - 2 * edge;
    const float first = wrapped_height(row.what, inner);
    const float second = wrapped_height(row.verdict, inner) + grid(0.5F);
    const ImVec2 size{width, first + second + effect_lines(nullptr, {}, row, inner) + 2 * grid(1)};
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool pressed = ImGui::InvisibleButton(id.c_str(), size);
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, {low.x + size.x, low.y + size.y},
                       colour(hot ? Tone::raised_hot : Tone::raised), grid(1));
    const ImVec2 top{low.x + edge, low.y + grid(1)};
    text_in(list, top, row.what, inner, colour(Tone::text));
    text_in(list, {top.x, top.y + first}, row.verdict, inner, colour(Tone::text_dim));
    effect_lines(&list, {top.x, top.y + first + second}, row, inner);
    const std::string help =
        row.cost + (row.cost.empty() ? "" : " ")
        + "The picture shows it while the pointer is here; a click does it, Ctrl+Z takes it back.";
    tooltip_beside(help);
    ui.note(id, row.what, help);
    if (hot) ui.desk_requests.preview = pick;
    if (!pressed) return;
    ui.desk_requests.preview.reset();
    ui.edit(ReplaceSetup{cured_setup(*ui.report, pick.finding, pick.cure), "Cure: " + row.what});
}

void draw_cures(const FindingsUi& ui, const FindingRow& row, std::size_t number) {
    const std::size_t count =
        ui.session.shows_all ? row.cures.size() : std::min(cures_at_first, row.cures.size());
    for (std::size_t i = 0; i < count; ++i)
        draw_cure(ui, row.cures[i], {number, i});
    if (row.no_cure.empty()) return;
    wrapped_text(row.no_cure, colour(Tone::text_dim));
    ui.note("findings/" + std::to_string(number) + "/no_cure", row.no_cure);
}

// Over the words that were drawn last: what is clicked, and what the keyboard comes to.
void select_by_card(const FindingsUi& ui, const std::string& id, const FindingRow& row) {
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 size = ImGui::GetItemRectSize();
    const ImVec2 below = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos(low);
    const bool pressed = ImGui::InvisibleButton(id.c_str(), {std::max(1.0F, size.x), size.y});
    const std::string help =
        "A click selects “" + ui.setup().parts.at(*row.part).name + "”, which it is about.";
    ui.describe(id, row.sentence, help);
    if (ImGui::IsItemHovered()) ui.hover_part(row.part);
    if (pressed) ui.selected_part = row.part;
    ImGui::SetCursorScreenPos(below);
}

// The card's words; a click anywhere on them selects the part.
void draw_card(const FindingsUi& ui, const FindingRow& row, std::size_t number) {
    const std::string id = "findings/" + std::to_string(number);
    const float line = ImGui::GetTextLineHeight();
    const float indent = line + grid(1.5F);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_sign(list, row.sign, {low.x + line / 2, low.y + line / 2}, line * 0.8F,
              text_colour(row.role));
    ImGui::Indent(indent);
    ImGui::BeginGroup();
    ImGui::PushFont(font(row.severity <= Severity::poor ? TextFace::bold : TextFace::regular));
    const Headline headline = headline_of(row);
    wrapped_text(headline.first, colour(Tone::text));
    ImGui::PopFont();
    if (!headline.rest.empty()) wrapped_text(headline.rest, colour(Tone::text));
    if (!row.advice.empty()) wrapped_text(row.advice, colour(Tone::text_dim));
    ImGui::EndGroup();
    ui.note(id, row.sentence, row.advice);
    if (row.part) select_by_card(ui, id, row);
    draw_cures(ui, row, number);
    ImGui::Unindent(indent);
    ImGui::Dummy({0, grid(1)});
}

// That focus is reached, if it is: what everybody asks first. Then what fails or is poor, at most three; when nothing is, what
// is good.
std::vector<std::size_t> always_shown(const std::vector<FindingRow>& rows) {
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].is_that_focus_is_reached) shown.push_back(i);
    }
    const std::size_t most = shown.size() + 3;
    for (std::size_t i = 0;
         i < rows.size() && shown.size() < most && rows[i].severity <= Severity::poor; ++i) {
        shown.push_back(i);
    }
    if (!shown.empty() || rows.empty()) return shown;
    const auto good = std::find_if(rows.begin(), rows.end(), [](const FindingRow& row) {
        return row.severity == Severity::good;
    });
    return {good == rows.end() ? 0 : static_cast<std::size_t>(good - rows.begin())};
}

void draw_all_cards(const FindingsUi& ui) {
    const auto rows = finding_rows(*ui.report);
    std::vector<std::size_t> shown = always_shown(rows);
    const std::size_t more = rows.size() - shown.size();
    if (ui.session.shows_all) {
        shown.resize(rows.size());
        std::iota(shown.begin(), shown.end(), std::size_t{0});
    }
    for (const std::size_t i : shown)
        draw_card(ui, rows[i], i);
    if (more == 0) return;
    const std::string label = ui.session.shows_all ? "Fewer" : std::to_string(more) + " more";
    if (text_button(ui, "findings/all", label, finding_summary(*ui.report))) {
        ui.session.shows_all = !ui.session.shows_all;
    }
}

}  // namespace

void draw_findings_panel(const FindingsUi& ui) {
    if (ui.report != nullptr) {
        draw_all_cards(ui);
        return;
    }
    FindingRow broken;
    broken.severity = Severity::fails;
    broken.word = "Not a train yet";
    broken.sign = FindingSign::cross;
    broken.role = ColourRole::clipped;
    broken.sentence = ui.report_error;
    draw_card(ui, broken, 0);
}

}  // namespace beamfork
