#include "ui/tour/tours_panel.hpp"

#include <algorithm>

#include "document/document.hpp"
#include "scene/picture/frame.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_motion.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/tour/tour_texts.hpp"

#include <imgui_stdlib.h>

#include <fmt/format.h>

namespace beamfork {

namespace {

TourStep step_from_here(const TourUi& ui) {
    TourStep step;
    step.camera = camera_for_tour(ui.picture.pose.camera);
    step.caption = "Write here what the room reads.";
    return step;
}

// What is typed elsewhere is kept.
void go_to(TourEditState& state, std::size_t tour, std::size_t step) {
    state.tour = tour;
    state.step = step;
}

void add_tour(const TourUi& ui, Tour tour) {
    TourEditState& state = ui.state;
    go_to(state, ui.document.tours.size(), 0);
    change_tours(ui, "Add a tour", [&](std::vector<Tour>& tours) {
        tour.name = free_tour_name(tours, "my-" + tour.name);
        tours.push_back(std::move(tour));
    });
}

void draw_new_tour(const TourUi& ui, float width) {
    constexpr const char* help =
        "A tour of your own: from what you see now, or from a copy of one that is built in.";
    const bool is_open = begin_chooser("##tours/new", "New tour …", width);
    ui.describe("tours/new", "New tour …", help);
    if (!is_open) return;
    if (ImGui::Selectable("From the present view"))
        add_tour(ui, {"tour", "My tour", {step_from_here(ui)}});
    constexpr const char* view_help = "One step, seen as the picture is now.";
    ui.describe("tours/new/view", "From the present view", view_help);
    for (Tour& tour : built_in_tours(ui.setup(), *ui.report)) {
        // Steps that tell of another setup cannot be saved.
        std::erase_if(tour.steps, [](const TourStep& step) { return step.instead.has_value(); });
        if (tour.steps.empty()) continue;
        if (ImGui::Selectable(("Copy of “" + tour.title + "”").c_str())) add_tour(ui, tour);
        const std::string copy_help =
            fmt::format("{} steps of the built-in tour, yours to change.", tour.steps.size());
        ui.describe("tours/new/" + tour.name, tour.title, copy_help);
    }
    ImGui::EndCombo();
}

void draw_tour_choice(const TourUi& ui, const std::vector<Tour>& tours, float width) {
    TourEditState& state = ui.state;
    const bool is_open = begin_chooser("##tours/which", tours[state.tour].title, width);
    constexpr const char* help = "Which of the setup's own tours is written.";
    ui.describe("tours/which", "Tour", help);
    if (!is_open) return;
    for (std::size_t i = 0; i < tours.size(); ++i) {
        if (chooser_entry(fmt::format("{}##{}", tours[i].title, i), i == state.tour))
            go_to(state, i, 0);
        ui.describe(fmt::format("tours/which/{}", i), tours[i].title, tours[i].title);
    }
    ImGui::EndCombo();
}

void draw_tour_bar(const TourUi& ui, const std::vector<Tour>& tours) {
    const bool is_wide = ImGui::GetContentRegionAvail().x > grid(120);
    draw_new_tour(ui, grid(32));
    if (tours.empty()) return;
    TourEditState& state = ui.state;
    if (is_wide) ImGui::SameLine();
    const float buttons = text_width("Tell it") + grid(20);
    draw_tour_choice(ui, tours,
                     std::clamp(ImGui::GetContentRegionAvail().x - buttons, grid(12), grid(60)));
    ImGui::SameLine();
    if (text_button(ui, "tours/tell", "Tell it", "Gives this talk now."))
        state.tell_wanted = tours[state.tour].name;
    ImGui::SameLine();
    if (icon_button(ui, "tours/remove", Icon::remove, "Takes this tour out of the setup.")) {
        change_tours(ui, "Remove a tour", [&](std::vector<Tour>& all) {
            all.erase(all.begin() + static_cast<std::ptrdiff_t>(state.tour));
        });
        go_to(state, 0, 0);
    }
}

void draw_title_entry(const TourUi& ui, const Tour& tour) {
    std::string title = tour.title;
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##tours/title", "Title", &title);
    const bool is_done = ImGui::IsItemDeactivatedAfterEdit();
    constexpr const char* help = "What the room reads above the picture.";
    ui.describe("tours/title", "Title", help);
    if (!is_done || title == tour.title) return;
    change_tours(ui, "Change a tour's title",
                 [&](std::vector<Tour>& all) { all[ui.state.tour].title = title; });
}

void draw_step_buttons(const TourUi& ui, const Tour& tour) {
    TourEditState& state = ui.state;
    const std::size_t step = state.step;
    const auto change_steps = [&](const char* label, std::size_t then, auto change) {
        change_tours(ui, label, [&](std::vector<Tour>& all) { change(all[state.tour].steps); });
        state.step = then;
    };
    const auto swap_with = [&](std::size_t other) {
        state.move_drafts(tour.name, [&](std::size_t at) {
            return std::optional(at == step ? other : at == other ? step : at);
        });
        change_steps("Move a step of a tour", other,
                     [&](std::vector<TourStep>& steps) { std::swap(steps[step], steps[other]); });
    };
    if (icon_button(ui, "tours/step/add", Icon::add,
                    "A new step behind this one, seen as the picture is now.")) {
        state.move_drafts(tour.name,
                          [&](std::size_t at) { return std::optional(at > step ? at + 1 : at); });
        change_steps("Add a step to a tour", step + 1, [&](std::vector<TourStep>& steps) {
            steps.insert(steps.begin() + static_cast<std::ptrdiff_t>(step) + 1, step_from_here(ui));
        });
    }
    ImGui::SameLine(0, 0);
    if (icon_button(ui, "tours/step/up", Icon::up, "Earlier.", step > 0)) swap_with(step - 1);
    ImGui::SameLine(0, 0);
    if (icon_button(ui, "tours/step/down", Icon::down, "Later.", step + 1 < tour.steps.size()))
        swap_with(step + 1);
    ImGui::SameLine(0, 0);
    if (icon_button(ui, "tours/step/remove", Icon::remove,
                    "Takes this step out; the last one stays.", tour.steps.size() > 1)) {
        state.move_drafts(tour.name, [&](std::size_t at) {
            return at == step ? std::nullopt : std::optional(at > step ? at - 1 : at);
        });
        change_steps("Remove a step of a tour", step > 0 ? step - 1 : 0,
                     [&](std::vector<TourStep>& steps) {
                         steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(step));
                     });
    }
    ImGui::SameLine();
    if (text_button(ui, "tours/step/view", "Take this view",
                    "The step is seen as the picture is now.")) {
        change_steps("Change a step's view", step, [&](std::vector<TourStep>& steps) {
            steps[step].camera = camera_for_tour(ui.picture.pose.camera);
        });
    }
}

void draw_step_rows(const TourUi& ui, const Tour& tour) {
    TourEditState& state = ui.state;
    for (std::size_t i = 0; i < tour.steps.size(); ++i) {
        const TourStep& step = tour.steps[i];
        const auto wrong = draft_objection(ui, tour, i);
        const std::string words = fmt::format("{}. {}{}", i + 1, wrong ? "(to be mended) " : "",
                                              step.asks ? step.asks->question : step.caption);
        const std::string row =
            shortened(words.substr(0, words.find('\n')), ImGui::GetContentRegionAvail().x);
        ImGui::PushStyleColor(ImGuiCol_Text, colour(wrong ? Tone::danger : Tone::text));
        const bool is_pressed =
            ImGui::Selectable(fmt::format("{}##step{}", row, i).c_str(), i == state.step);
        ImGui::PopStyleColor();
        if (is_pressed) {
            state.step = i;
            const float aspect = static_cast<float>(ui.picture.asks.scene.width)
                                 / static_cast<float>(std::max(1, ui.picture.asks.scene.height));
            TourStep seen = step;  // as its view was taken, without room for the answers
            seen.asks.reset();
            move_camera(ui.picture, tour_camera(seen, ui.picture.view.frame, aspect));
        }
        const std::string told = wrong.value_or(words);
        ui.describe(fmt::format("tours/step/{}", i), words, told);
    }
}

}  // namespace

void draw_tours_panel(const TourUi& ui) {
    const std::vector<Tour>& tours = ui.document.tours;
    TourEditState& state = ui.state;
    if (state.tour >= tours.size()) go_to(state, tours.empty() ? 0 : tours.size() - 1, 0);
    if (!tours.empty() && state.step >= tours[state.tour].steps.size()) state.step = 0;
    draw_tour_bar(ui, tours);
    if (tours.empty() || state.tour >= tours.size()) {
        wrapped_text("This setup has no tour of its own yet. The built-in ones are told with F5.",
                     colour(Tone::text_dim));
        return;
    }
    const Tour tour = tours[state.tour];
    settle_drafts(ui);
    // What is lit is seen in the picture while one is at it.
    if (ImGui::IsWindowHovered(ImGuiHoveredFlags_RootAndChildWindows))
        ui.picture.asks.emphasis = emphasis_on(tour.steps.at(state.step).lit, ui.setup());
    SideBySide sides("tours/sides", 3, grid(60));
    sides.next();
    draw_title_entry(ui, tour);
    draw_step_buttons(ui, tour);
    draw_step_rows(ui, tour);
    sides.next();
    const TourStep& step = tour.steps[std::min(state.step, tour.steps.size() - 1)];
    ImGui::PushID(static_cast<int>(state.tour));
    ImGui::PushID(static_cast<int>(state.step));
    draw_tour_texts(ui, step);
    sides.next();
    draw_tour_question(ui, step);
    draw_tour_lights(ui, step);
    ImGui::PopID();
    ImGui::PopID();
}

}  // namespace beamfork
