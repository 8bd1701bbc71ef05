#include "ui/tour/tour_texts.hpp"

#include "document/document.hpp"
#include "document/words.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

#include <fmt/format.h>

namespace beamfork {

void TourEditState::move_drafts(
    const std::string& of_tour,
    const std::function<std::optional<std::size_t>(std::size_t)>& where_now) {
    std::map<TourTextPlace, std::string> moved;
    for (auto& [place, words] : drafts) {
        if (place.tour != of_tour) {
            moved.emplace(place, std::move(words));
        } else if (const auto now = where_now(place.step)) {
            moved.emplace(TourTextPlace{place.tour, *now, place.entry}, std::move(words));
        }
    }
    drafts = std::move(moved);
}

namespace {

// Of "answer 2": 1.
std::optional<std::size_t> answer_of(const std::string& entry) {
    constexpr std::string_view stem = "answer ";
    if (!entry.starts_with(stem) || entry.size() != stem.size() + 1) return std::nullopt;
    return static_cast<std::size_t>(entry.back() - '1');
}

// The text of that entry in the step; null where the step has none.
std::string* text_in(TourStep& step, const std::string& entry) {
    if (entry == "caption") return &step.caption;
    if (entry == "notes") return &step.notes;
    if (!step.asks) return nullptr;
    if (entry == "question") return &step.asks->question;
    const auto answer = answer_of(entry);
    return answer && *answer < step.asks->answers.size() ? &step.asks->answers[*answer] : nullptr;
}

// What is wrong with the step once the text is put in; nothing where the entry is gone.
std::optional<std::string>
objection_to(TourStep step, const std::string& entry, const std::string& words) {
    std::string* text = text_in(step, entry);
    if (text == nullptr) return std::nullopt;
    *text = words;
    if (entry == "caption") return caption_objection(words);
    if (entry == "notes") return story_objection(words);
    const auto fault = question_fault(*step.asks);
    return fault ? std::optional(fault->sentence) : std::nullopt;
}

std::string undo_name(const std::string& entry) {
    if (entry == "caption") return "Change a caption";
    return entry == "notes" ? "Change notes" : "Change a question to the room";
}

void take_draft(const TourUi& ui, std::size_t tour, const TourTextPlace& place, std::string words) {
    change_tours(ui, undo_name(place.entry).c_str(), [&](std::vector<Tour>& all) {
        if (std::string* text = text_in(all.at(tour).steps.at(place.step), place.entry))
            *text = std::move(words);
    });
}

void draw_quotes(const TourUi& ui, std::string& caption) {
    if (!begin_chooser("##tours/quote", "Quote a value …", ImGui::GetContentRegionAvail().x)) {
        constexpr const char* help = "Adds a value of this setup to the caption; it stays true.";
        ui.describe("tours/quote", "Quote a value …", help);
        return;
    }
    for (const TourQuote& quote : tour_quotes(ui.setup(), *ui.report)) {
        const std::string row = fmt::format("{}: {}", quote.name, quote.text);
        if (ImGui::Selectable(row.c_str())) caption += " {" + quote.name + "}";
        ui.describe("tours/quote/" + quote.name, row, quote.meaning);
    }
    ImGui::EndCombo();
}

TourTextPlace place_of(const TourUi& ui, const char* entry) {
    const TourEditState& state = ui.state;
    return {ui.document.tours.at(state.tour).name, state.step, entry};
}

}  // namespace

void draw_step_text(const TourUi& ui, const StepText& text, const TourStep& step) {
    TourEditState& state = ui.state;
    const TourTextPlace place = place_of(ui, text.entry);
    TourStep shown = step;
    std::string* now = text_in(shown, text.entry);
    if (now == nullptr) return;
    const auto typed = state.drafts.find(place);
    std::string words = typed != state.drafts.end() ? typed->second : *now;
    const std::string id = std::string("##") + text.name;
    const ImVec2 size{-1, ImGui::GetTextLineHeight() * text.lines + ImGui::GetFrameHeight() / 3};
    ImGui::SetNextItemWidth(-1);
    const bool is_changed = text.lines > 1
                                ? ImGui::InputTextMultiline(id.c_str(), &words, size)
                                : ImGui::InputTextWithHint(id.c_str(), text.label, &words);
    const bool is_typing = ImGui::IsItemActive();
    ui.describe(text.name, text.label, text.help);
    if (is_changed) state.drafts[place] = words;
    if (is_typing || !state.drafts.contains(place)) return;
    if (const auto wrong = objection_to(step, text.entry, words)) {
        wrapped_text(*wrong, colour(Tone::danger));
        ui.note(place.entry == "caption" ? "tours/refused" : std::string(text.name) + "/refused",
                words, *wrong);
        return;
    }
    take_draft(ui, state.tour, place, words);
    state.drafts.erase(place);
}

void draw_tour_texts(const TourUi& ui, const TourStep& step) {
    TourEditState& state = ui.state;
    const TourTextPlace caption = place_of(ui, "caption");
    draw_step_text(ui,
                   {"caption", "tours/caption", "Caption",
                    "What the room reads; {names} in braces are filled with values.", 3},
                   step);
    const auto typed = state.drafts.find(caption);
    const std::string before = typed != state.drafts.end() ? typed->second : step.caption;
    std::string quoted = before;
    draw_quotes(ui, quoted);
    if (quoted != before) state.drafts[caption] = quoted;
    if (!state.drafts.contains(caption)) {
        const auto filled = filled_caption(step.caption, tour_quotes(ui.setup(), *ui.report));
        const char* when = step.asks ? "Then it reads: " : "The room reads: ";
        wrapped_text(when + filled.value_or(step.caption), colour(Tone::text_dim));
    }
    dim_text("Notes for the speaker");
    draw_step_text(ui, {"notes", "tours/notes", "Notes", "What you alone read.", 2}, step);
}

void settle_drafts(const TourUi& ui) {
    TourEditState& state = ui.state;
    const std::vector<Tour>& tours = ui.document.tours;
    for (const auto& [place, words] : state.drafts) {
        std::size_t tour = 0;
        while (tour < tours.size() && tours[tour].name != place.tour)
            ++tour;
        if (tour == state.tour && place.step == state.step) continue;
        bool is_there = tour < tours.size() && place.step < tours[tour].steps.size();
        if (is_there) {
            TourStep step = tours[tour].steps[place.step];
            is_there = text_in(step, place.entry) != nullptr;
        }
        if (is_there && objection_to(tours[tour].steps[place.step], place.entry, words)) continue;
        if (is_there) take_draft(ui, tour, place, words);
        state.drafts.erase(TourTextPlace(place));
        return;  // one a frame: the next is put into what this one makes
    }
}

std::optional<std::string> draft_objection(const TourUi& ui, const Tour& tour, std::size_t step) {
    for (const auto& [place, words] : ui.state.drafts) {
        if (place.tour != tour.name || place.step != step) continue;
        if (auto wrong = objection_to(tour.steps.at(step), place.entry, words)) return wrong;
    }
    return std::nullopt;
}

}  // namespace beamfork
