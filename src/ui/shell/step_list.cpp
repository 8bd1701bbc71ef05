#include "ui/shell/step_list.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "desk/desk_requests.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

constexpr const char* steps_popup = "edit/steps/list";

// Step 0 is the setup as it was opened; step n the document behind the nth change.
void draw_step(const ShellUi& ui, std::size_t step, float width) {
    const std::size_t now = ui.desk.step_position;
    const std::string words = step == 0 ? "As opened" : ui.desk.steps[step - 1];
    const bool is_now = step == now;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 size{width, ImGui::GetTextLineHeight() + grid(2)};
    const std::string id = "edit/step/" + std::to_string(step);
    const bool is_pressed = ImGui::InvisibleButton(id.c_str(), size);
    const bool is_hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    const std::string help = is_now ? words + "\nThe setup is here now." : words;
    ui.describe(id, words, help);
    if (is_now && ImGui::IsWindowAppearing()) {
        ImGui::SetItemDefaultFocus();
        ImGui::SetScrollHereY(0.5F);
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 high{low.x + size.x, low.y + size.y};
    if (is_hot) list.AddRectFilled(low, high, colour(Tone::raised_hot), grid(1));
    if (is_now)
        list.AddCircleFilled({low.x + grid(2), (low.y + high.y) / 2}, grid(1),
                             colour(Tone::accent));
    text_at(list, {low.x + grid(5), low.y + grid(1)}, shortened(words, width - grid(6)),
            colour(step > now ? Tone::text_dim : Tone::text),
            is_now ? TextFace::bold : TextFace::regular);
    if (is_pressed && !is_now) ui.desk_requests.commands.emplace_back(GoToStep{step});
}

}  // namespace

void draw_step_list(const ShellUi& ui) {
    const bool has_steps = !ui.desk.steps.empty();
    const bool is_pressed = icon_button(
        ui, "edit/steps", Icon::more,
        ui.with_keys("All changes: go back or forth to any.", "setup/steps"), has_steps);
    const bool is_wanted = std::exchange(ui.state.steps_wanted, false) && has_steps;
    if (is_pressed || is_wanted) ImGui::OpenPopup(steps_popup);
    place_popup_below();
    const float line = ImGui::GetTextLineHeight() + grid(2);
    const auto rows = static_cast<float>(std::min<std::size_t>(ui.desk.steps.size() + 1, 16));
    const float width = std::min(grid(110), ImGui::GetIO().DisplaySize.x * 0.6F);
    const float most = std::max(line * 3, ImGui::GetIO().DisplaySize.y * 0.6F);
    ImGui::SetNextWindowSize({width, std::min(rows * line, most) + grid(6)});
    if (!ImGui::BeginPopup(steps_popup)) return;
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    const float room = ImGui::GetContentRegionAvail().x;
    for (std::size_t step = 0; step <= ui.desk.steps.size(); ++step)
        draw_step(ui, step, room);
    ImGui::PopStyleVar();
    ImGui::EndPopup();
}

}  // namespace beamfork
