#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/talk/talk.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* talk_popup = "Give a talk";

// Two lines: the title, and what its first step says. Enter takes the marked one.
bool draw_tour_row(const TalkUi& ui,
                   const Tour& tour,
                   const std::string& first_words,
                   bool is_marked) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 size{ImGui::GetContentRegionAvail().x, 2 * line + grid(3)};
    const bool is_pressed = ImGui::Selectable(("##" + tour.name).c_str(), is_marked, 0, size);
    ui.describe("talk/tour/" + tour.name, tour.title, first_words);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string steps = fmt::format("{} steps", tour.steps.size());
    const float right = low.x + size.x - grid(2);
    text_at(list, {low.x + grid(2), low.y + grid(1)},
            shortened(tour.title, size.x - text_width(steps) - grid(8)), colour(Tone::text),
            TextFace::bold);
    text_ending_at(list, {right, low.y + grid(1)}, steps, colour(Tone::text_dim));
    text_at(list, {low.x + grid(2), low.y + grid(1.5F) + line},
            shortened(first_words, size.x - grid(4)), colour(Tone::text_dim));
    return is_pressed;
}

}  // namespace

void ask_for_talk(const TalkUi& ui) { ui.state.is_wanted = ui.report != nullptr; }

void draw_talk_chooser(const TalkUi& ui) {
    const bool opens = std::exchange(ui.state.is_wanted, false);
    if (opens) ImGui::OpenPopup(talk_popup);
    if (!begin_question(talk_popup, grid(140))) return;
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted("Which tour do you want to tell?");
    ImGui::PopFont();
    wrapped_text("It takes the whole screen. Space, the arrows or a clicker go on and back, 1 to "
                 "3 are the room's answers, B turns the screen black, S shows your notes in a "
                 "window of their own, Esc leaves.",
                 colour(Tone::text_dim));
    ImGui::Dummy({1, grid(1)});
    std::string chosen;
    bool is_marked = !ImGui::GetIO().NavVisible;  // the first, until the arrows mark another
    const bool takes_marked = is_marked && !opens && ImGui::IsKeyPressed(ImGuiKey_Enter, false);
    if (ui.report != nullptr) {
        const auto quotes = tour_quotes(ui.setup(), *ui.report);
        for (const Tour& tour : all_tours(ui.document, *ui.report)) {
            if (tour.steps.empty()) continue;
            const std::string& first = tour.steps.front().caption;
            if (draw_tour_row(ui, tour, filled_caption(first, quotes).value_or(first), is_marked))
                chosen = tour.name;
            if (is_marked) ImGui::SetItemDefaultFocus();
            if (is_marked && takes_marked) chosen = tour.name;
            is_marked = false;
        }
    }
    ImGui::Dummy({1, grid(1)});
    const bool closes = text_button(ui, "talk/cancel", "Cancel", "Esc")
                        || ImGui::IsKeyPressed(ImGuiKey_Escape, false);
    if (!chosen.empty()) start_talk(ui, chosen);
    if (closes || !chosen.empty()) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
