#include "ui/part/part_panel.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "document/edit.hpp"
#include "scene/focus/light_path_rows.hpp"
#include "scene/image/coma_correction_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/part/field_editor.hpp"
#include "ui/part/field_in_train.hpp"
#include "ui/part/tolerance_editor.hpp"

#include <imgui_stdlib.h>

#include <fmt/format.h>

namespace beamfork {

namespace {

void draw_name(const PartUi& ui, std::size_t index, const Part& part) {
    std::string name = part.name;
    if (ui.state.focus_name) {
        ImGui::SetWindowFocus();  // else the entry is sought in the window that had the keyboard
        ImGui::SetKeyboardFocusHere();
    }
    ui.state.focus_name = false;
    ImGui::SetNextItemWidth(-1);
    ImGui::PushFont(font(TextFace::bold));
    ImGui::InputText("##part/name", &name, ImGuiInputTextFlags_AutoSelectAll);
    ImGui::PopFont();
    const bool is_done = ImGui::IsItemDeactivatedAfterEdit();
    ui.describe("part/name", "Name", "The part's name, as you call it. F2");
    if (is_done && name != part.name) ui.edit(RenamePart{index, name});
}

void draw_fields(const PartUi& ui, std::size_t index, const Part& part) {
    const PartKind& kind = kind_of(part.body);
    for (const FieldInfo& field : kind.fields) {
        const auto value = field_value(part.body, field.key);
        const auto fresh = field_value(kind.fresh, field.key);
        if (!value || !fresh) continue;
        if (!is_relevant(part.body, field)) continue;
        const FieldInfo shown = within_room(ui, index, field);
        const auto taken = taken_value(part.body, field.key);
        draw_field(ui, {index, shown, *value, *fresh, first_value(ui, index, field),
                        taken ? words_of(*taken, field.unit) : "", note_below(ui, index, field)});
    }
}

void draw_light_path(const PartUi& ui, std::size_t index) {
    if (ui.report == nullptr) return;
    for (const LightPathRow& row : light_path_rows(ui.setup(), *ui.report)) {
        if (row.part != index) continue;
        ImGui::Dummy({1, grid(1)});
        const auto line = [&](const char* label, const std::string& value, ImU32 ink) {
            const ImVec2 at = ImGui::GetCursorScreenPos();
            const float width = ImGui::GetContentRegionAvail().x;
            ImDrawList& list = *ImGui::GetWindowDrawList();
            text_at(list, at, label, colour(Tone::text_dim));
            text_ending_at(list, {at.x + width - grid(7), at.y}, typeset(value), ink);
            text_at(list, {at.x + width - grid(6), at.y}, "mm", colour(Tone::text_dim));
            ImGui::Dummy({width, ImGui::GetTextLineHeight()});
        };
        line("Light path from its faces, glass and air", row.derived, colour(Tone::text));
        if (row.stated != "–") line("Light path as stated", row.stated, colour(Tone::text));
        if (row.differs) {
            line("Difference", row.difference,
                 text_colour(row.fits ? ColourRole::dimension : ColourRole::shortfall));
        }
        if (!row.now.empty())
            line("Light path at this pupil distance", row.now, colour(Tone::text));
        if (row.glass != "–") line("Glass in it", row.glass, colour(Tone::text));
        if (!row.note.empty()) wrapped_text(row.note, colour(Tone::text_dim));
    }
}

void draw_coma_correction(const PartUi& ui, std::size_t index) {
    if (ui.report == nullptr) return;
    std::size_t number = 0;
    for (const ValueRow& row : coma_correction_rows(*ui.report, index)) {
        const std::string id = "part/coma/" + std::to_string(number++);
        const ImVec2 at = line_area(ui, id, row.label, row.help);
        const float width = ImGui::GetContentRegionAvail().x;
        ImDrawList& list = *ImGui::GetWindowDrawList();
        text_at(list, at, row.label, colour(Tone::text_dim));
        text_ending_at(list, {at.x + width - grid(7), at.y}, typeset(row.value),
                       colour(Tone::text));
        text_at(list, {at.x + width - grid(6), at.y}, row.unit, colour(Tone::text_dim));
    }
}

void draw_setup_words(const PartUi& ui) {
    dim_text("The setup");
    std::string title = ui.setup().title;
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##setup/title", "Title", &title);
    const bool title_done = ImGui::IsItemDeactivatedAfterEdit();
    constexpr const char* title_help = "What you call this setup; it heads its pages and films.";
    ui.describe("setup/title", "Title", title_help);
    if (title_done && title != ui.setup().title) ui.edit(SetTitle{title});

    auto& draft = ui.state.story_draft;
    if (!draft) {
        wrapped_text(ui.setup().story, colour(Tone::text));
        if (text_button(ui, "setup/edit_story", "Edit the story", "What this setup is about."))
            draft = ui.setup().story;
    } else {
        ImGui::InputTextMultiline("##setup/story", &*draft, {-1, ImGui::GetTextLineHeight() * 9});
        const bool is_left = ImGui::IsItemDeactivatedAfterEdit();
        constexpr const char* story_help =
            "What this setup is about: why it was built, what it is used for. Esc leaves it.";
        ui.describe("setup/story", "Story", story_help);
        const bool is_done =
            text_button(ui, "setup/edit_story", "Done", "Keeps the story as it stands.");
        if ((is_left || is_done) && *draft != ui.setup().story) ui.edit(SetStory{*draft});
        if (is_done) draft.reset();
    }
    ImGui::Dummy({1, grid(1)});
    wrapped_text("Select a part in the list or in the picture to change it.",
                 colour(Tone::text_dim));
}

}  // namespace

void draw_part_panel(const PartUi& ui) {
    const auto selected = ui.selected_part;
    if (!selected) {
        draw_setup_words(ui);
        return;
    }
    const Part& part = ui.setup().parts.at(*selected);
    const PartKind& kind = kind_of(part.body);
    ImGui::PushID(static_cast<int>(*selected));
    draw_name(ui, *selected, part);
    wrapped_text(kind.label + ". " + kind.help, colour(Tone::text_dim));
    ImGui::Dummy({1, grid(1)});
    draw_fields(ui, *selected, part);
    draw_light_path(ui, *selected);
    draw_coma_correction(ui, *selected);
    draw_tolerances(ui, *selected, part);
    ImGui::PopID();
}

}  // namespace beamfork
