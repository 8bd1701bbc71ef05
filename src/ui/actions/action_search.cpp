#include "ui/actions/action_search.hpp"

#include <algorithm>
#include <optional>

#include "base/word_match.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

constexpr const char* search_popup = "Find an action";
constexpr std::size_t most_rows_seen = 12;

struct RankedAction {
    int rank;
    Action action;
};

void step_by_keys(ActionSearch& search, std::size_t count) {
    search.row = std::min(search.row, count == 0 ? 0 : count - 1);
    if (count == 0) return;
    if (ImGui::IsKeyPressed(ImGuiKey_DownArrow)) search.row = (search.row + 1) % count;
    if (ImGui::IsKeyPressed(ImGuiKey_UpArrow)) search.row = (search.row + count - 1) % count;
    if (ImGui::IsKeyPressed(ImGuiKey_PageDown))
        search.row = std::min(search.row + most_rows_seen, count - 1);
    if (ImGui::IsKeyPressed(ImGuiKey_PageUp)) search.row -= std::min(search.row, most_rows_seen);
}

// Returns whether the row was clicked.
bool draw_action_row(const Ui& ui, const Action& action, bool is_marked) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 size{ImGui::GetContentRegionAvail().x, ImGui::GetTextLineHeight() + grid(2)};
    const bool is_pressed = ImGui::InvisibleButton(action.name.c_str(), size);
    const bool is_hot = ImGui::IsItemHovered();
    ui.describe("search/" + action.name, action.label, action.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 high{low.x + size.x, low.y + size.y};
    if (is_marked || is_hot)
        list.AddRectFilled(low, high, colour(is_marked ? Tone::raised_hot : Tone::raised), grid(1));
    if (is_marked)
        list.AddRectFilled(low, {low.x + grid(0.75F), high.y}, colour(Tone::accent), grid(0.25F));
    const std::string side = action.keys.empty() ? action.group : action.keys;
    const float top = low.y + grid(1);
    const float right = high.x - grid(2);
    text_ending_at(list, {right, top}, side, colour(Tone::text_dim));
    const float room = right - text_width(side) - low.x - grid(6);
    const std::string words =
        action.enabled || action.help.empty() ? action.label : action.label + " – " + action.help;
    text_at(list, {low.x + grid(3), top}, shortened(words, room),
            colour(action.enabled ? Tone::text : Tone::text_dim));
    return is_pressed;
}

// Which of the rows was clicked.
std::optional<std::size_t>
draw_action_rows(const Ui& ui, ActionSearch& search, const std::vector<Action>& actions) {
    std::optional<std::size_t> clicked;
    const std::size_t before = search.row;
    step_by_keys(search, actions.size());
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    const float row = ImGui::GetTextLineHeight() + grid(2);
    const float room = ImGui::GetIO().DisplaySize.y * 0.6F - row * 3;
    ImGui::BeginChild("search/list", {0, std::clamp(room, row * 3, row * most_rows_seen)},
                      ImGuiChildFlags_None, ImGuiWindowFlags_NoNavInputs);
    for (std::size_t i = 0; i < actions.size(); ++i) {
        if (draw_action_row(ui, actions[i], i == search.row)) clicked = i;
        if (i == search.row && before != search.row) ImGui::SetScrollHereY(0.5F);
    }
    if (actions.empty()) dim_text("Nothing is called so.");
    ImGui::EndChild();
    ImGui::PopStyleVar();
    return clicked;
}

}  // namespace

std::vector<Action> matching_actions(std::vector<Action> all, const std::string& typed) {
    // What is idle now stands behind what can be done, but before what was only found by a slip.
    constexpr int cannot_now = 2;
    constexpr int by_topic = 100;  // behind all that is found by its name
    std::vector<RankedAction> found;
    for (Action& action : all) {
        auto rank = word_match(typed, action.label);
        if (!rank) {
            rank = word_match(typed, action.label + " " + action.group + " " + action.help);
            if (rank) *rank += by_topic;
        }
        if (!rank) continue;
        if (!action.enabled) *rank += cannot_now;
        found.push_back({*rank, std::move(action)});
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const RankedAction& a, const RankedAction& b) { return a.rank < b.rank; });
    std::vector<Action> actions;
    for (RankedAction& one : found)
        actions.push_back(std::move(one.action));
    return actions;
}

void draw_action_search(const Ui& ui,
                        std::optional<ActionSearch>& box,
                        const std::function<std::vector<Action>()>& all) {
    if (!box) return;
    ActionSearch& search = *box;
    if (!search.opened) ImGui::OpenPopup(search_popup);
    if (!begin_question(search_popup, grid(130))) {
        box.reset();
        return;
    }
    if (!search.opened) ImGui::SetKeyboardFocusHere();
    search.opened = true;
    ImGui::SetNextItemWidth(-1);
    const bool is_entered =
        ImGui::InputTextWithHint("##search/typed", "What to do, or which part: a few letters",
                                 &search.typed, ImGuiInputTextFlags_EnterReturnsTrue);
    if (ImGui::IsItemEdited()) search.row = 0;
    keep_up_and_down();  // they go through the list
    ui.note("search/typed", "Find an action",
            "Type a few letters; Up and Down choose, Enter runs, Esc closes.");
    const std::vector<Action> actions = matching_actions(all(), search.typed);
    std::optional<std::size_t> chosen = draw_action_rows(ui, search, actions);
    if (is_entered && !actions.empty()) chosen = search.row;
    dim_text("Up, Down: choose   Enter: run   Esc: close");
    const bool runs = chosen && *chosen < actions.size() && actions[*chosen].enabled;
    if (is_entered && !runs) ImGui::SetKeyboardFocusHere(-1);
    if (runs || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        ImGui::CloseCurrentPopup();
        box.reset();
    }
    ImGui::EndPopup();
    if (runs) actions[*chosen].run();
}

}  // namespace beamfork
