#include "scene/tour/tour_question.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/tour/tour_texts.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* question_undo = "Change a question to the room";

template <class Change>
void change_question(const TourUi& ui, Change change) {
    change_step(ui, question_undo, [&](TourStep& step) { change(*step.asks); });
}

void draw_asks_box(const TourUi& ui, const TourStep& step) {
    bool asks = step.asks.has_value();
    const bool is_pressed = ImGui::Checkbox("Ask the room first##tours/asks", &asks);
    constexpr const char* help =
        "A question with two or three answers; the caption and the light come with the answer.";
    ui.describe("tours/asks", "Ask the room first", help);
    if (!is_pressed) return;
    change_step(ui, asks ? "Ask the room" : "Ask the room no more", [&](TourStep& here) {
        here.asks =
            asks ? std::optional(TourQuestion{"Will it come to focus?",
                                              {"Yes", "No, it falls short", "No, it falls too far"},
                                              0,
                                              "{focus.verdict}"})
                 : std::nullopt;
    });
}

// By its place, or by a value of the studies.
void draw_right_choice(const TourUi& ui, const TourQuestion& asks, float width) {
    const auto quotes = tour_quotes(ui.setup(), *ui.report);
    const std::string now =
        asks.right_value.empty() ? fmt::format("answer {}", asks.right + 1) : asks.right_value;
    const bool is_open = begin_chooser("##tours/right", "Right: " + now, width);
    constexpr const char* help =
        "Which answer is right: one of them, or whichever a value of this setup says.";
    ui.describe("tours/right", now, help);
    if (!is_open) return;
    for (std::size_t i = 0; i < asks.answers.size(); ++i) {
        const std::string row = fmt::format("Answer {}, whatever the setup", i + 1);
        if (ImGui::Selectable(row.c_str())) {
            change_question(ui, [&](TourQuestion& here) {
                here.right = i;
                here.right_value.clear();
            });
        }
        ui.note(fmt::format("tours/right/{}", i + 1), row, row);
    }
    for (const TourQuote& quote : quotes) {
        const std::string row = fmt::format("{}: {}", quote.name, quote.text);
        if (ImGui::Selectable(row.c_str()))
            change_question(ui,
                            [&](TourQuestion& here) { here.right_value = "{" + quote.name + "}"; });
        ui.describe("tours/right/" + quote.name, row, quote.meaning);
    }
    ImGui::EndCombo();
}

void draw_answer_count(const TourUi& ui, const TourQuestion& asks) {
    if (asks.answers.size() < most_answers) {
        if (icon_button(ui, "tours/answer/add", Icon::add, "A third answer."))
            change_question(ui, [](TourQuestion& here) { here.answers.emplace_back("Neither"); });
    } else if (icon_button(ui, "tours/answer/remove", Icon::remove, "Without the third answer.")) {
        change_question(ui, [](TourQuestion& here) {
            here.answers.pop_back();
            here.right = std::min(here.right, here.answers.size() - 1);
        });
    }
}

// What holds for this setup as it is.
void draw_verdict(const TourUi& ui, const TourQuestion& asks) {
    const auto asked = asked_question(asks, tour_quotes(ui.setup(), *ui.report));
    if (!asked) return;
    const std::string words =
        asked->right ? fmt::format("Right for this setup: “{}”.", asked->answers[*asked->right])
                     : fmt::format("None of them is right for this setup: it is {}.", asked->truth);
    wrapped_text(words, asked->right ? colour(Tone::text_dim) : colour(Tone::danger));
    ui.note("tours/verdict", words);
}

}  // namespace

void draw_tour_question(const TourUi& ui, const TourStep& step) {
    draw_asks_box(ui, step);
    if (!step.asks) return;
    const TourQuestion& asks = *step.asks;
    draw_step_text(ui,
                   {"question", "tours/question", "Question",
                    "What the room is asked, in large type; {names} are filled with values.", 2},
                   step);
    for (std::size_t i = 0; i < asks.answers.size(); ++i) {
        const std::string entry = fmt::format("answer {}", i + 1);
        const std::string name = fmt::format("tours/answer/{}", i + 1);
        const std::string label = fmt::format("Answer {}", i + 1);
        draw_step_text(
            ui, {entry.c_str(), name.c_str(), label.c_str(), "One of the answers to choose from."},
            step);
    }
    draw_answer_count(ui, asks);
    ImGui::SameLine();
    draw_right_choice(ui, asks, ImGui::GetContentRegionAvail().x);
    draw_verdict(ui, asks);
}

}  // namespace beamfork
