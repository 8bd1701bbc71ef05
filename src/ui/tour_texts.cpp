#include "ui/tour_texts.hpp"

#include "document/words.hpp"
#include "scene/tour_quotes.hpp"
#include "ui/widgets.hpp"

#include <imgui_stdlib.h>

#include <fmt/format.h>

namespace beamfork {

namespace {

void draw_quotes(const Ui& ui, std::string& caption) {
    if (!begin_chooser("##tours/quote", "Quote a value …", ImGui::GetContentRegionAvail().x)) {
        constexpr const char* help = "Adds a value of this setup to the caption; it stays true.";
        tooltip(help);
        ui.note("tours/quote", "Quote a value …", help);
        return;
    }
    for (const TourQuote& quote : tour_quotes(ui.setup(), *ui.view.report)) {
        const std::string row = fmt::format("{}: {}", quote.name, quote.text);
        if (ImGui::Selectable(row.c_str())) caption += " {" + quote.name + "}";
        tooltip(quote.meaning);
        ui.note("tours/quote/" + quote.name, row, quote.meaning);
    }
    ImGui::EndCombo();
}

// Shows why the words cannot be taken, or takes them once nobody types them any more.
template <class Take>
void take_draft(std::optional<std::string>& draft,
                bool is_typing,
                const std::optional<std::string>& objection,
                Take take) {
    if (!draft || is_typing) return;
    if (objection) {
        wrapped_text(*objection, colour(Tone::danger));
        return;
    }
    take(*draft);
    draft.reset();
}

void draw_caption(const Ui& ui, const TourStep& step) {
    TourEditState& state = ui.state.tour_edit;
    std::string caption = state.caption.value_or(step.caption);
    const ImVec2 size{-1, ImGui::GetTextLineHeight() * 4};
    if (ImGui::InputTextMultiline("##tours/caption", &caption, size)) state.caption = caption;
    const bool is_typing = ImGui::IsItemActive();
    constexpr const char* help = "What the room reads; {names} in braces are filled with values.";
    tooltip(help);
    ui.note("tours/caption", "Caption", help);
    std::string quoted = caption;
    draw_quotes(ui, quoted);
    if (quoted != caption) state.caption = quoted;
    const auto objection = caption_objection(state.caption.value_or(step.caption));
    if (state.caption && objection && !is_typing) ui.note("tours/refused", *state.caption);
    take_draft(state.caption, is_typing, objection, [&](const std::string& words) {
        change_tours(ui, "Change a caption", [&](std::vector<Tour>& all) {
            all[state.tour].steps[state.step].caption = words;
        });
    });
    if (state.caption) return;
    const auto filled = filled_caption(step.caption, tour_quotes(ui.setup(), *ui.view.report));
    wrapped_text("The room reads: " + filled.value_or(step.caption), colour(Tone::text_dim));
}

void draw_notes(const Ui& ui, const TourStep& step) {
    TourEditState& state = ui.state.tour_edit;
    std::string notes = state.notes.value_or(step.notes);
    dim_text("Notes for the speaker");
    const ImVec2 size{-1, ImGui::GetTextLineHeight() * 3};
    if (ImGui::InputTextMultiline("##tours/notes", &notes, size)) state.notes = notes;
    const bool is_typing = ImGui::IsItemActive();
    constexpr const char* help = "What you alone read.";
    tooltip(help);
    ui.note("tours/notes", "Notes", help);
    take_draft(state.notes, is_typing, story_objection(notes), [&](const std::string& words) {
        change_tours(ui, "Change notes", [&](std::vector<Tour>& all) {
            all[state.tour].steps[state.step].notes = words;
        });
    });
}

}  // namespace

void draw_tour_texts(const Ui& ui, const TourStep& step) {
    ImGui::PushID(static_cast<int>(ui.state.tour_edit.step));
    draw_caption(ui, step);
    draw_notes(ui, step);
    ImGui::PopID();
}

}  // namespace beamfork
