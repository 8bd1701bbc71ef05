#include "ui/tune/tune_panel.hpp"

#include <algorithm>
#include <array>

#include "document/edit.hpp"
#include "study/tune/tune_study.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/field_numbers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/tune/tune_plot.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

void draw_varied(const TuneUi& ui, const TuneChoice& choice, float width) {
    constexpr const char* help = "Which number of which part is varied.";
    const std::string chosen = tunable_label(ui.setup(), choice.tunables[choice.chosen]);
    ImGui::AlignTextToFramePadding();
    dim_text("Vary");
    ImGui::SameLine(0, grid(1.5F));
    const bool is_open = begin_chooser("##tune/varied", chosen, width);
    ui.describe("tune/varied", chosen, help);
    if (!is_open) return;
    std::size_t part = ui.setup().parts.size();
    for (std::size_t i = 0; i < choice.tunables.size(); ++i) {
        const Tunable& one = choice.tunables[i];
        if (one.varied.part != part)
            ImGui::SeparatorText(ui.setup().parts[one.varied.part].name.c_str());
        part = one.varied.part;
        ImGui::PushID(static_cast<int>(i));
        const std::string name = name_of(ui.setup(), one.varied);
        if (chooser_entry(one.field.label, i == choice.chosen)) ui.session.varied = name;
        ui.describe("tune/varied/" + name, one.field.label, one.field.help);
        ImGui::PopID();
    }
    ImGui::EndCombo();
}

void draw_watched(const TuneUi& ui, const TuneChoice& choice, float width) {
    const WatchedInfo& chosen = info_of(choice.question.watched);
    ImGui::AlignTextToFramePadding();
    dim_text("Watch");
    ImGui::SameLine(0, grid(1.5F));
    const bool is_open = begin_chooser("##tune/watched", std::string(chosen.label), width);
    ui.describe("tune/watched", chosen.label, chosen.help);
    if (!is_open) return;
    for (const WatchedInfo& info : watched_results()) {
        const std::string key(info.key);
        if (chooser_entry(std::string(info.label), &info == &chosen)) ui.session.watched = key;
        ui.describe("tune/watched/" + key, info.label, info.help);
    }
    ImGui::EndCombo();
}

void draw_range(const TuneUi& ui) {
    constexpr std::array<std::string_view, 2> words{"usual", "all"};
    constexpr std::array<std::string_view, 2> helps{"The range that people own.",
                                                    "All values that are accepted."};
    bool& is_whole = ui.session.whole_range;
    is_whole = segments(ui, "tune/range", words, helps, is_whole ? 1 : 0) == 1;
}

void draw_choosers(const TuneUi& ui, const TuneChoice& choice) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float words =
        text_width("Vary") + text_width("Watch") + text_width("usualall") + grid(20);
    const bool is_one_line = width > words + grid(80);
    const float room = is_one_line ? std::min((width - words) / 2, grid(66))
                                   : width - text_width("Watch") - grid(2);
    draw_varied(ui, choice, room);
    if (is_one_line) ImGui::SameLine(0, grid(3));
    draw_watched(ui, choice, is_one_line ? room : room - text_width("usualall") - grid(11));
    ImGui::SameLine(0, grid(2));
    draw_range(ui);
}

void set_number(const TuneUi& ui, const Tunable& tunable, double value) {
    if (tunable.is_stated && value == tunable.now) return;
    ui.edit(SetField{tunable.varied.part, tunable.varied.key, value});
}

void step_by_keys(const TuneUi& ui, const Tunable& tunable) {
    if (!ImGui::IsItemFocused()) return;
    const ImGuiIO& io = ImGui::GetIO();
    const double step = key_step(tunable.field, io.KeyShift, io.KeyCtrl);
    for (const auto& [key, sign] : {std::pair{ImGuiKey_LeftArrow, -1}, {ImGuiKey_RightArrow, 1}}) {
        if (key_of_last_widget(key))
            set_number(ui, tunable, stepped(tunable.field, tunable.now, sign * step));
    }
}

void draw_wanted(const TuneUi& ui, const TuneChoice& choice) {
    const WatchedInfo& watched = info_of(choice.question.watched);
    const std::string key(watched.key);
    const std::string help =
        std::string("The ") + std::string(watched.label)
        + " you want: the values that give it are worked out. Empty: none is sought. "
        + typing_help(watched.unit);
    ImGui::AlignTextToFramePadding();
    dim_text("Wanted");
    ImGui::SameLine(0, grid(1.5F));
    std::string text = ui.session.wanted[key];
    ImGui::SetNextItemWidth(grid(22));
    ImGui::InputTextWithHint("##tune/wanted", "none", &text, ImGuiInputTextFlags_AutoSelectAll);
    if (ImGui::IsItemDeactivatedAfterEdit()) ui.session.wanted[key] = text;
    ui.describe("tune/wanted", watched.label, help);
    ImGui::SameLine(0, grid(1));
    dim_text(symbol(watched.unit));
    if (choice.problem.empty()) return;
    wrapped_text(choice.problem, colour(Tone::danger));
    ui.note("tune/problem", choice.problem);
}

void draw_answers(const TuneUi& ui, const Tunable& tunable, const TuneRows& rows) {
    if (!rows.answer.empty()) {
        wrapped_text(rows.answer, colour(Tone::text));
        ui.note("tune/answer", rows.answer);
    }
    for (std::size_t i = 0; i < rows.answers.size(); ++i) {
        const TuneAnswerRow& row = rows.answers[i];
        const std::string help = row.is_nearest
                                     ? "Sets the nearest that can be had; Ctrl+Z takes it back."
                                     : "Sets it; Ctrl+Z takes it back.";
        if (text_button(ui, "tune/set/" + std::to_string(i), "Set " + row.text, help))
            set_number(ui, tunable, row.value);
        ImGui::SameLine(0, grid(2));
        ImGui::AlignTextToFramePadding();
        wrapped_text(row.note, text_colour(row.role));
    }
    if (!rows.answer_more.empty()) wrapped_text(rows.answer_more, colour(Tone::text_dim));
}

void draw_solution(const TuneUi& ui, const TuneChoice& choice, const TuneRows& rows) {
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text(rows.headline, text_colour(rows.headline_role));
    ImGui::PopFont();
    ui.describe("tune/headline", rows.headline, rows.headline_help);
    dim_text(rows.at_now);
    draw_wanted(ui, choice);
    draw_answers(ui, choice.tunables[choice.chosen], rows);
    if (!rows.note.empty()) wrapped_text(rows.note, colour(Tone::text_dim));
}

void draw_change(const TuneUi& ui, const TuneChangeRow& row, std::size_t number) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float line = ImGui::GetTextLineHeight();
    const std::string id = "tune/change/" + std::to_string(number);
    if (ImGui::InvisibleButton(id.c_str(), {width, line + grid(2)})) {
        ui.selected_part = row.part;
        ui.session.varied = row.varied;
    }
    if (ImGui::IsItemHovered()) ui.hover_part(row.part);
    const std::string help = row.help + " A click varies it.";
    ui.describe(id, row.label, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float value = low.x + width;
    const float per = value - text_width("−000.00 mm") - grid(2);
    text_at(list, low, shortened(row.label, per - text_width(row.per) - low.x - grid(2)),
            colour(Tone::text));
    text_ending_at(list, {per, low.y}, row.per, colour(Tone::text_dim));
    text_ending_at(list, {value, low.y}, row.value, colour(Tone::text));
    // A bar from the middle: to the right for more, to the left for less.
    const float top = low.y + line + grid(0.25F);
    const float middle = low.x + width / 2;
    const float end = middle + width / 2 * static_cast<float>(row.share);
    list.AddRectFilled({low.x, top}, {value, top + grid(0.75F)}, colour(Tone::raised));
    list.AddRectFilled({std::min(middle, end), top}, {std::max(middle, end), top + grid(0.75F)},
                       colour(ColourRole::dimension));
}

void draw_changes(const TuneUi& ui, const TuneRows& rows) {
    dim_text("What a step more of each changes");
    tooltip("Slopes at the present setup, largest first: which length is worth changing, or "
            "measuring.");
    for (std::size_t i = 0; i < rows.changes.size(); ++i)
        draw_change(ui, rows.changes[i], i);
    if (!rows.no_changes.empty()) wrapped_text(rows.no_changes, colour(Tone::text_dim));
}

void draw_plot(const TuneUi& ui, const Tunable& tunable, const TuneRows& rows, float height) {
    const auto pressed = draw_tune_plot(ui, *ui.view.study, rows, height);
    if (pressed)
        set_number(ui, tunable, snapped(tunable.field, ui.view.study->curve.range.at(*pressed)));
    step_by_keys(ui, tunable);
}

}  // namespace

void draw_tune_panel(const TuneUi& ui) {
    const std::string key(info_of(find_watched(ui.session.watched).value_or(Watched::margin)).key);
    TuneChoice choice = tune_choice(ui.setup(), ui.session.varied, key, ui.session.wanted[key]);
    if (choice.tunables.empty()) {
        wrapped_text("Nothing can be varied here.", colour(Tone::text_dim));
        return;
    }
    choice.question.is_whole_range = ui.session.whole_range;
    ui.asks = choice.question;
    draw_choosers(ui, choice);
    if (ui.view.study == nullptr || !is_study_of(*ui.view.study, ui.setup(), choice.question)) {
        dim_text("Working it out …");
        return;
    }
    const TuneRows rows = tune_rows(ui.setup(), *ui.view.study);
    constexpr float least = 68;  // of a third's width, in grid steps
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const int columns = room.x >= 3 * grid(least) ? 3 : 2;  // one, where even two find no room
    const bool is_alone = room.x < 2 * grid(least);
    // In a narrow panel what is asked and answered below the plot is in sight with it, as far as there is room.
    const float height = std::max(7 * line, room.y - (is_alone ? 5 * line : grid(2)));
    SideBySide pieces("##tune", columns, grid(least));
    pieces.next();
    draw_plot(ui, choice.tunables[choice.chosen], rows, height);
    pieces.next();
    draw_solution(ui, choice, rows);
    if (columns == 3) {
        pieces.next();
    } else {
        ImGui::Dummy({1, grid(2)});
    }
    draw_changes(ui, rows);
}

}  // namespace beamfork
