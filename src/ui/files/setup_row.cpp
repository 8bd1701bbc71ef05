#include "ui/files/setup_row.hpp"

#include <algorithm>
#include <filesystem>
#include <string>

#include "desk/desk_requests.hpp"
#include "ui/files/start_page.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

constexpr float widest_entry = 56;  // in steps of the grid
constexpr float narrowest_entry = 24;

std::string id_of_entry(const OpenSetupEntry& setup) {
    return "setups/" + std::to_string(setup.number);
}

std::string title_of_entry(const OpenSetupEntry& setup) {
    if (!setup.title.empty()) return setup.title;
    return setup.file.empty() ? "Not saved yet"
                              : std::filesystem::path(setup.file).filename().string();
}

std::string help_of_entry(const OpenSetupEntry& setup) {
    return title_of_entry(setup) + "\n" + (setup.file.empty() ? "Not saved yet" : setup.file)
           + (setup.modified ? "\nChanged since it was saved" : "");
}

void draw_entry_face(const OpenSetupEntry& setup, const Area& area, bool is_shown, bool is_hot) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low = area.corner();
    const ImVec2 high{area.right(), area.bottom()};
    if (is_shown || is_hot)
        list.AddRectFilled(low, high, colour(is_hot ? Tone::raised_hot : Tone::raised), grid(1));
    if (is_shown)
        list.AddRectFilled({low.x + grid(1), high.y - grid(0.75F)}, {high.x - grid(1), high.y},
                           colour(Tone::accent), grid(0.25F));
    float left = low.x + grid(2.5F);
    const float middle = (low.y + high.y) / 2;
    if (setup.modified) {
        list.AddCircleFilled({left + grid(0.75F), middle}, grid(0.8F), colour(Tone::accent));
        left += grid(3);
    }
    const float room = area.right() - left - area.height;
    text_at(list, {left, middle - ImGui::GetTextLineHeight() / 2},
            shortened(title_of_entry(setup), room), colour(is_shown ? Tone::text : Tone::text_dim));
}

// A title that shows its setup, and a cross that closes it; the middle button closes too.
void draw_entry(const FilesUi& ui, const OpenSetupEntry& setup, float width) {
    const bool is_shown = setup.number == ui.desk.shown_setup;
    const std::string id = id_of_entry(setup);
    const float height = ImGui::GetFrameHeight();
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool is_pressed = ImGui::InvisibleButton(id.c_str(), {width - height, height});
    const bool is_hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    const bool is_unwanted = ImGui::IsItemClicked(ImGuiMouseButton_Middle);
    ui.describe(id, title_of_entry(setup), help_of_entry(setup));
    draw_entry_face(setup, {low.x, low.y, width, height}, is_shown, is_hot);
    if (is_pressed && !is_shown) ui.desk_requests.commands.emplace_back(ShowSetup{setup.number});
    ImGui::SameLine(0, 0);
    const bool is_closed =
        icon_button(ui, id + "/close", Icon::close, "Closes " + title_of_entry(setup) + ".", true);
    if (is_closed || is_unwanted) ask_for_command(ui, CloseSetup{setup.number});
}

}  // namespace

float setup_row_height(const FilesUi& ui) {
    if (ui.desk.setups.size() < 2) return 0;
    return font(TextFace::regular)->FontSize + grid(4);
}

void draw_setup_row(const FilesUi& ui, const Area& area) {
    if (area.height <= 0) return;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2), grid(0.5F)});
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {grid(1), grid(1)});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {grid(1), 0});
    begin_area("setup_row", area, Tone::panel,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    const float side = ImGui::GetFrameHeight();
    const auto count = static_cast<float>(ui.desk.setups.size());
    const float room = ImGui::GetContentRegionAvail().x - side - grid(2);
    const float width =
        std::clamp(room / count - grid(1), grid(narrowest_entry), grid(widest_entry));
    const float needed = std::min(room, count * (width + grid(1)));
    ImGui::BeginChild("setup_row/list", {needed, side}, ImGuiChildFlags_None,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_HorizontalScrollbar
                          | ImGuiWindowFlags_NavFlattened);
    for (const OpenSetupEntry& setup : ui.desk.setups) {
        draw_entry(ui, setup, width);
        if (setup.number == ui.desk.shown_setup && ui.state.setup_seen != setup.number) {
            ImGui::SetScrollHereX(0.5F);
            ui.state.setup_seen = setup.number;
        }
        ImGui::SameLine();
    }
    ImGui::EndChild();
    ImGui::SameLine();
    if (icon_button(ui, "setups/add", Icon::add,
                    ui.with_keys("Opens another setup beside these: a demo, a file, your own.",
                                 "window/start_page"),
                    true))
        ask_for_start_page(ui);
    ImGui::End();
    ImGui::PopStyleVar(3);
}

void go_to_setup(const FilesUi& ui, int step) {
    const auto& setups = ui.desk.setups;
    const auto shown = std::find_if(setups.begin(), setups.end(), [&](const OpenSetupEntry& one) {
        return one.number == ui.desk.shown_setup;
    });
    if (shown == setups.end() || setups.size() < 2) return;
    const auto here = static_cast<std::size_t>(shown - setups.begin());
    const std::size_t forward = step > 0 ? 1 : setups.size() - 1;
    ui.desk_requests.commands.emplace_back(
        ShowSetup{setups[(here + forward) % setups.size()].number});
}

void ask_to_close_setup(const FilesUi& ui) { ask_for_command(ui, CloseSetup{ui.desk.shown_setup}); }

}  // namespace beamfork
