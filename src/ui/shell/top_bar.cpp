#include "ui/shell/top_bar.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include "base/contract.hpp"
#include "desk/desk_requests.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/shell/step_list.hpp"

namespace beamfork {

namespace {

// A menu that is folded; an open one shows what is in it instead.
void note_menu(const Ui& ui, const char* name, const char* label, const char* help) {
    ui.describe(name, label, help);
}

void draw_examples(const FilesUi& ui) {
    const bool is_open = ImGui::BeginMenu("Examples", !ui.view.demos.empty());
    if (!is_open) note_menu(ui, "file/examples", "Examples", "Setups that show what to look for.");
    if (!is_open) return;
    for (const DemoEntry& demo : ui.view.demos) {
        if (ImGui::MenuItem(demo.title.c_str())) ask_for_command(ui, OpenDemo{demo.asset});
        ui.describe("file/example/" + demo.asset, demo.title, demo.story);
    }
    ImGui::EndMenu();
}

void draw_recent(const FilesUi& ui) {
    const bool is_open = ImGui::BeginMenu("Opened lately", !ui.desk.recent_files.empty());
    if (!is_open) note_menu(ui, "file/recent", "Opened lately", "Files of your last sessions.");
    if (!is_open) return;
    for (const std::string& file : ui.desk.recent_files) {
        const std::string name = std::filesystem::path(file).filename().string();
        ImGui::PushID(file.c_str());
        if (ImGui::MenuItem(name.c_str())) ask_for_command(ui, OpenFile{file});
        ImGui::PopID();
        ui.describe("file/recent/" + name, name, file);
    }
    ImGui::EndMenu();
}

struct MenuLine {
    const char* name;  ///< of the widget
    const char* label;
    const char* action;  ///< that it runs, by its name
    const char* help;
};

constexpr std::array menu_lines{
    MenuLine{"file/new", "New", "setup/new", "A small setup to begin with."},
    MenuLine{"file/questions", "Describe my setup …", "setup/questions",
             "A few questions, any of which may stay open, make your first setup."},
    MenuLine{"file/open_menu", "Open …", "setup/open", "A setup from a file."},
    MenuLine{"file/save_menu", "Save", "setup/save", "Into the file it came from."},
    MenuLine{"file/save_as", "Save as …", "setup/save_as", "Into another file."},
    MenuLine{"file/duplicate", "Duplicate", "setup/duplicate",
             "Goes on with a copy that is not saved yet; the file stays as it is."},
    MenuLine{"file/close", "Close", "setup/close", "Asks first if it is not saved."},
    MenuLine{"file/export", "Take it with you …", "setup/take",
             "A page to print, a picture, a model or a film."},
    MenuLine{"file/talk", "Give a talk …", "window/talk",
             "Tells a tour of the setup, step by step, over the whole screen."},
    MenuLine{"file/start_page", "Start page", "window/start_page",
             "Demos, files opened lately, and ways to begin."},
    MenuLine{"file/describe", "Title and story", "setup/describe",
             "What the setup is called and what it is about, at the right."},
    MenuLine{"file/find", "Find an action …", "window/find",
             "Everything that can be done, by a few letters of its name."},
    MenuLine{"file/sides", "Swap the sides", "window/sides",
             "Parts and findings change places, for the other hand."},
    MenuLine{"file/glossary", "Glossary", "window/glossary",
             "Every word of the trade that stands here, in a sentence or two."},
    MenuLine{"file/quit", "Quit", "setup/quit", "Asks first about what is not saved."}};

void draw_menu_line(const Ui& ui, std::string_view name) {
    const auto line = std::find_if(menu_lines.begin(), menu_lines.end(),
                                   [&](const MenuLine& one) { return one.name == name; });
    BEAMFORK_EXPECTS(line != menu_lines.end());
    const bool pressed = ImGui::MenuItem(line->label, ui.keys_text(line->action).c_str(), false,
                                         ui.actions.can(line->action));
    ui.describe(line->name, line->label, line->help);
    if (pressed) ui.actions.run(line->action);
}

void draw_setup_menu(const FilesUi& ui) {
    if (text_button(ui, "file/menu", "Setup …", "New, open, save, examples."))
        ImGui::OpenPopup("file/menu/list");
    place_popup_below();
    if (!ImGui::BeginPopup("file/menu/list")) return;
    for (const char* name : {"file/new", "file/questions", "file/open_menu"})
        draw_menu_line(ui, name);
    draw_recent(ui);
    draw_examples(ui);
    ImGui::Separator();
    for (const char* name : {"file/save_menu", "file/save_as", "file/duplicate", "file/close"})
        draw_menu_line(ui, name);
    ImGui::Separator();
    for (const char* name : {"file/export", "file/talk"})
        draw_menu_line(ui, name);
    ImGui::Separator();
    for (const char* name : {"file/start_page", "file/describe", "file/sides", "file/find",
                             "file/glossary", "file/quit"})
        draw_menu_line(ui, name);
    ImGui::EndPopup();
}

void draw_undo(const ShellUi& ui) {
    const auto help = [&ui](const char* word, const std::string& label, const char* action) {
        return std::string(word) + (label.empty() ? "" : ": " + label) + "  ("
               + ui.keys_text(action) + ")";
    };
    if (icon_button(ui, "edit/undo", Icon::undo, help("Undo", ui.desk.undo_label, "setup/undo"),
                    ui.desk.can_undo)) {
        ui.desk_requests.commands.emplace_back(Undo{});
    }
    ImGui::SameLine(0, 0);
    if (icon_button(ui, "edit/redo", Icon::redo, help("Redo", ui.desk.redo_label, "setup/redo"),
                    ui.desk.can_redo)) {
        ui.desk_requests.commands.emplace_back(Redo{});
    }
    ImGui::SameLine(0, 0);
    draw_step_list(ui);
}

void draw_name(const ShellUi& ui, float width) {
    if (width < grid(12)) return;
    const std::string file = ui.desk.file_path.empty()
                                 ? "not saved yet"
                                 : std::filesystem::path(ui.desk.file_path).filename().string();
    const std::string& title = ui.setup().title.empty() ? file : ui.setup().title;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float height = ImGui::GetFrameHeight();
    ImGui::InvisibleButton("file/name", {width, height});
    const std::string help = ui.setup().title + "\n"
                             + (ui.desk.file_path.empty() ? file : ui.desk.file_path)
                             + (ui.desk.modified ? "\nChanged since it was saved" : "");
    ui.describe("file/name", title, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    float left = low.x;
    if (ui.desk.modified) {
        list.AddCircleFilled({left + grid(1), low.y + height / 2}, grid(0.9F),
                             colour(Tone::accent));
        left += grid(3.5F);
    }
    text_at(list, {left, low.y + (height - ImGui::GetTextLineHeight()) / 2},
            shortened(title, low.x + width - left), colour(Tone::text), TextFace::bold);
}

void draw_text_size(const ShellUi& ui) {
    const auto scale = ui.layout.text_scale;
    if (text_button(ui, "text/smaller", "A−", "Smaller text. Ctrl+minus", scale > 0.76F))
        ui.layout.text_scale /= 1.1F;
    ImGui::SameLine(0, grid(0.5F));
    if (text_button(ui, "text/larger", "A+", "Larger text. Ctrl+plus", scale < 2.99F))
        ui.layout.text_scale *= 1.1F;
}

}  // namespace

void draw_top_bar(const ShellUi& ui, const FilesUi& files, const Area& area) {
    const float pad = (area.height - ImGui::GetFrameHeight()) / 2;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2), pad});
    begin_area("top_bar", area, Tone::panel,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar();
    const float left = ImGui::GetCursorPosX();
    const float text_size_width = text_width("A−") + text_width("A+") + grid(9);
    draw_setup_menu(files);
    if (area.width > grid(240)) {
        ImGui::SameLine();
        if (text_button(ui, "file/open", "Open …", "Opens a setup. Ctrl+O")) ask_to_open(files);
        ImGui::SameLine();
        if (text_button(ui, "file/save", "Save", "Saves the setup. Ctrl+S",
                        ui.desk.modified || ui.desk.file_path.empty())) {
            ask_to_save(files);
        }
    }
    ImGui::SameLine(0, grid(3));
    draw_undo(ui);
    ImGui::SameLine(0, grid(3));
    const float here = ImGui::GetCursorPosX();
    const float end = area.width - left;
    const float choosers = choosers_width(end - here - text_size_width - grid(3));
    const float choosers_left = end - text_size_width - grid(3) - choosers;
    draw_name(ui, choosers_left - here - grid(4));
    ImGui::SameLine(choosers_left);
    draw_choosers(ui, choosers);
    ImGui::SameLine(end - text_size_width);
    draw_text_size(ui);
    ImGui::End();
}

}  // namespace beamfork
