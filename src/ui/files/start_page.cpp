#include "ui/files/start_page.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <utility>

#include "ui/files/describe_dialog.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

constexpr const char* start_popup = "Start page";
constexpr std::size_t large_cards = 3;
constexpr std::size_t most_recent_shown = 6;

void draw_bold(const char* words) {
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(words);
    ImGui::PopFont();
}

// The first lines of a text in a place of that width, with "…" where more follows.
std::string first_lines(std::string_view text, float width, std::size_t count) {
    const std::string lines = folded(text, width);
    std::size_t end = 0;
    for (std::size_t i = 0; i < count && end != std::string::npos; ++i)
        end = lines.find('\n', end == 0 ? 0 : end + 1);
    return end == std::string::npos || end + 1 >= lines.size()
               ? lines
               : lines.substr(0, lines.find_last_not_of(" .,;:", end - 1) + 1) + "…";
}

// "Harrier Hill 1: short of focus": the heading above the cards has said where.
std::string card_title(const std::string& title) {
    const std::size_t colon = title.find(": ");
    if (colon == std::string::npos) return title;
    std::string rest = title.substr(colon + 2);
    if (!rest.empty()) rest[0] = static_cast<char>(std::toupper(rest[0]));
    return rest;
}

struct CardSize {
    float width;
    float picture_height;
    float height;
    std::size_t story_lines;
};

CardSize card_size(float width, std::size_t story_lines) {
    const float picture = std::round(width * 9 / 16);
    const float lines = static_cast<float>(story_lines) + 1;
    return {width, picture, picture + lines * ImGui::GetTextLineHeight() + grid(5), story_lines};
}

// The demo's picture over its title and the first lines of its story; one button. Returns whether it was pressed.
bool draw_card(const FilesUi& ui, const DemoEntry& demo, const CardSize& size) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 high{low.x + size.width, low.y + size.height};
    const std::string id = "start/demo/" + demo.asset;
    const bool is_pressed = ImGui::InvisibleButton(id.c_str(), {size.width, size.height});
    const bool is_hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    ui.describe(id, demo.title, demo.story);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, high, colour(is_hot ? Tone::raised_hot : Tone::raised), grid(1.5F));
    const ImVec2 picture_high{high.x, low.y + size.picture_height};
    if (demo.picture != ImTextureID{})
        list.AddImageRounded(demo.picture, low, picture_high, {0, 0}, {1, 1}, IM_COL32_WHITE,
                             grid(1.5F), ImDrawFlags_RoundCornersTop);
    if (is_hot)
        list.AddRect(low, high, colour(Tone::accent), grid(1.5F), 0, std::max(1.0F, grid(0.5F)));
    const float room = size.width - grid(5);
    const float line = ImGui::GetTextLineHeight();
    text_at(list, {low.x + grid(2.5F), picture_high.y + grid(2)},
            shortened(card_title(demo.title), room), colour(Tone::text), TextFace::bold);
    if (size.story_lines > 0)
        text_at(list, {low.x + grid(2.5F), picture_high.y + grid(2.5F) + line},
                first_lines(demo.story, room, size.story_lines), colour(Tone::text_dim));
    return is_pressed;
}

// In rows of as many as the width has room for; returns the demo that was chosen.
const DemoEntry* draw_cards(
    const FilesUi& ui, std::size_t from, std::size_t to, std::size_t in_a_row, bool is_large) {
    const float gap = grid(3);
    const float all = ImGui::GetContentRegionAvail().x - grid(2);
    const float width =
        std::floor((all - gap * static_cast<float>(in_a_row - 1)) / static_cast<float>(in_a_row));
    const CardSize size = card_size(width, is_large ? 3 : 0);
    const DemoEntry* chosen = nullptr;
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {gap, gap});
    for (std::size_t i = from; i < to; ++i) {
        if ((i - from) % in_a_row != 0) ImGui::SameLine();
        if (draw_card(ui, ui.view.demos[i], size)) chosen = &ui.view.demos[i];
        if (i == 0) ImGui::SetItemDefaultFocus();
    }
    ImGui::PopStyleVar();
    return chosen;
}

void draw_demos(const FilesUi& ui) {
    const std::size_t count = ui.view.demos.size();
    const std::size_t large = std::min(count, large_cards);
    if (large == 0) return;
    draw_bold("See it on a telescope of the club at Harrier Hill");
    const DemoEntry* chosen = draw_cards(ui, 0, large, large_cards, true);
    if (count > large) {
        ImGui::Dummy({1, grid(1)});
        const std::size_t in_a_row = ImGui::GetContentRegionAvail().x > grid(170) ? 4 : 3;
        if (const DemoEntry* other = draw_cards(ui, large, count, in_a_row, false)) chosen = other;
    }
    if (chosen == nullptr) return;
    ImGui::CloseCurrentPopup();
    ask_for_command(ui, OpenDemo{chosen->asset});
}

void draw_recent_files(const FilesUi& ui) {
    if (ui.desk.recent_files.empty()) return;
    ImGui::Dummy({1, grid(2)});
    draw_bold("Opened lately");
    std::size_t shown = 0;
    for (const std::string& file : ui.desk.recent_files) {
        if (shown++ == most_recent_shown) break;
        const std::filesystem::path path(file);
        const float width = ImGui::GetContentRegionAvail().x;
        const std::string name = shortened(path.filename().string(), width - grid(4));
        if (text_button(ui, "start/recent/" + path.filename().string(), name, file)) {
            ImGui::CloseCurrentPopup();
            ask_for_command(ui, OpenFile{file});
        }
    }
}

void draw_own_setup(const FilesUi& ui) {
    draw_bold("Your own setup");
    wrapped_text("A few questions, any of which may stay open, and it stands in the picture.",
                 colour(Tone::text_dim));
    if (text_button(ui, "start/describe", "Describe my setup …",
                    ui.with_keys("A few questions; what you do not know gets a usual value.",
                                 "setup/questions"))) {
        ImGui::CloseCurrentPopup();
        start_describe_dialog(ui);
    }
    ImGui::Dummy({1, grid(1)});
    if (text_button(
            ui, "start/open", "Open …",
            ui.with_keys("A setup file, or a page that was printed from one.", "setup/open"))) {
        ImGui::CloseCurrentPopup();
        ask_to_open(ui);
    }
    draw_recent_files(ui);
    ImGui::Dummy({1, grid(2)});
    draw_bold("Find your way");
    wrapped_text(ui.keys_text("window/find") + " finds every action, " + ui.keys_text("window/keys")
                     + " shows all keys, " + ui.keys_text("window/glossary")
                     + " explains the words of the trade.",
                 colour(Tone::text_dim));
}

// What it is all about, and at its right the way out.
void draw_head(const FilesUi& ui) {
    const std::string_view out = "Go on with the setup that is open";
    const ImVec2 at = ImGui::GetCursorPos();
    const float right = at.x + ImGui::GetContentRegionAvail().x - text_width(out) - grid(4);
    ImGui::SetCursorPosX(right);
    if (text_button(ui, "start/close", out, "Closes this page; it comes again by its name. Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape, false))
        ImGui::CloseCurrentPopup();
    ImGui::SetCursorPos(at);
    draw_bold("Does your telescope work with both eyes?");
    dim_text(folded("See it before you buy or unscrew anything: whether it reaches focus, what is "
                    "clipped, what you will see, and what would mend it.",
                    right - at.x - grid(4)));
}

}  // namespace

void ask_for_start_page(const FilesUi& ui) { ui.state.start_page_wanted = true; }

void draw_start_page(const FilesUi& ui) {
    if (std::exchange(ui.state.start_page_wanted, false)) {
        ImGui::OpenPopup(start_popup);
        show_keyboard();  // Enter opens what is seen to be chosen
    }
    const ImVec2 window = ImGui::GetIO().DisplaySize;
    if (!begin_question(start_popup, std::min(grid(290), window.x * 0.94F))) return;
    ui.asks.wants_demo_pictures = true;
    draw_head(ui);
    ImGui::Dummy({1, grid(2)});
    const float room = window.y * 0.96F - ImGui::GetCursorPosY() - grid(4);
    const float left = std::min(grid(60), ImGui::GetContentRegionAvail().x * 0.27F);
    const float height = std::min(room, grid(160));
    ImGui::BeginChild("start/own", {left, height}, ImGuiChildFlags_None,
                      ImGuiWindowFlags_NavFlattened);
    draw_own_setup(ui);
    ImGui::EndChild();
    ImGui::SameLine(0, grid(6));
    ImGui::BeginChild("start/demos", {0, height}, ImGuiChildFlags_None,
                      ImGuiWindowFlags_NavFlattened);
    draw_demos(ui);
    ImGui::EndChild();
    ImGui::EndPopup();
}

}  // namespace beamfork
