#include "ui/top_bar.hpp"

#include <algorithm>
#include <filesystem>

#include "ui/action.hpp"
#include "ui/action_search.hpp"
#include "ui/describe_dialog.hpp"
#include "ui/export_dialog.hpp"
#include "ui/file_dialog.hpp"
#include "ui/setup_row.hpp"
#include "ui/start_page.hpp"
#include "ui/step_list.hpp"
#include "ui/talk.hpp"
#include "ui/unsaved_guard.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

void draw_examples(const Ui& ui) {
    if (!ImGui::BeginMenu("Examples", !ui.view.demos.empty())) return;
    for (const DemoEntry& demo : ui.view.demos) {
        if (ImGui::MenuItem(demo.title.c_str())) ask_for_command(ui, OpenDemo{demo.asset});
        tooltip(demo.story);
        ui.note("file/example/" + demo.asset, demo.title, demo.story);
    }
    ImGui::EndMenu();
}

void draw_recent(const Ui& ui) {
    if (!ImGui::BeginMenu("Opened lately", !ui.view.recent_files.empty())) return;
    for (const std::string& file : ui.view.recent_files) {
        const std::string name = std::filesystem::path(file).filename().string();
        ImGui::PushID(file.c_str());
        if (ImGui::MenuItem(name.c_str())) ask_for_command(ui, OpenFile{file});
        ImGui::PopID();
        tooltip(file);
        ui.note("file/recent/" + name, name, file);
    }
    ImGui::EndMenu();
}

void draw_setup_menu(const Ui& ui) {
    if (text_button(ui, "file/menu", "Setup …", "New, open, save, examples."))
        ImGui::OpenPopup("file/menu/list");
    place_popup_below();
    if (!ImGui::BeginPopup("file/menu/list")) return;
    const auto item = [&](const char* name, const char* label, const char* action) {
        const std::string keys = action != nullptr ? keys_text(action) : "";
        const bool pressed = ImGui::MenuItem(label, keys.c_str());
        ui.note(name, label);
        return pressed;
    };
    if (item("file/new", "New", "setup/new")) ask_for_command(ui, NewSetup{});
    if (item("file/questions", "Describe my setup …", "setup/questions")) start_describe_dialog(ui);
    if (item("file/open_menu", "Open …", "setup/open")) ask_to_open(ui);
    draw_recent(ui);
    draw_examples(ui);
    ImGui::Separator();
    if (item("file/save_menu", "Save", "setup/save")) ask_to_save(ui);
    if (item("file/save_as", "Save as …", "setup/save_as")) ask_to_save_as(ui);
    if (item("file/duplicate", "Duplicate", "setup/duplicate"))
        ask_for_command(ui, DuplicateSetup{});
    if (item("file/close", "Close", "setup/close")) ask_to_close_setup(ui);
    ImGui::Separator();
    if (item("file/export", "Take it with you …", "setup/take")) start_export_dialog(ui);
    if (item("file/talk", "Give a talk …", "window/talk")) ask_for_talk(ui);
    ImGui::Separator();
    if (item("file/start_page", "Start page", "window/start_page")) ask_for_start_page(ui);
    if (item("file/describe", "Title and story", nullptr)) ui.session.selected_part.reset();
    if (item("file/sides", ui.session.parts_at_left ? "Parts at the right" : "Parts at the left",
             "window/sides"))
        ui.session.parts_at_left = !ui.session.parts_at_left;
    if (item("file/find", "Find an action …", "window/find")) ui.state.search.emplace();
    if (item("file/glossary", "Glossary", "window/glossary")) ask_for_glossary(ui, "");
    if (item("file/quit", "Quit", "setup/quit")) ask_for_command(ui, Quit{});
    ImGui::EndPopup();
}

void draw_undo(const Ui& ui) {
    const auto help = [](const char* word, const std::string& label, const char* action) {
        return std::string(word) + (label.empty() ? "" : ": " + label) + "  (" + keys_text(action)
               + ")";
    };
    if (icon_button(ui, "edit/undo", Icon::undo, help("Undo", ui.view.undo_label, "setup/undo"),
                    ui.view.can_undo)) {
        ui.requests.commands.emplace_back(Undo{});
    }
    ImGui::SameLine(0, 0);
    if (icon_button(ui, "edit/redo", Icon::redo, help("Redo", ui.view.redo_label, "setup/redo"),
                    ui.view.can_redo)) {
        ui.requests.commands.emplace_back(Redo{});
    }
    ImGui::SameLine(0, 0);
    draw_step_list(ui);
}

void draw_name(const Ui& ui, float width) {
    if (width < grid(12)) return;
    const std::string file = ui.view.file_path.empty()
                                 ? "not saved yet"
                                 : std::filesystem::path(ui.view.file_path).filename().string();
    const std::string& title = ui.setup().title.empty() ? file : ui.setup().title;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float height = ImGui::GetFrameHeight();
    ImGui::InvisibleButton("file/name", {width, height});
    tooltip(ui.setup().title + "\n" + (ui.view.file_path.empty() ? file : ui.view.file_path)
            + (ui.view.modified ? "\nChanged since it was saved" : ""));
    ui.note("file/name", title, ui.view.modified ? "modified" : "");
    ImDrawList& list = *ImGui::GetWindowDrawList();
    float left = low.x;
    if (ui.view.modified) {
        list.AddCircleFilled({left + grid(1), low.y + height / 2}, grid(0.9F),
                             colour(Tone::accent));
        left += grid(3.5F);
    }
    text_at(list, {left, low.y + (height - ImGui::GetTextLineHeight()) / 2},
            shortened(title, low.x + width - left), colour(Tone::text), TextFace::bold);
}

void draw_text_size(const Ui& ui) {
    const auto scale = ui.session.text_scale;
    if (text_button(ui, "text/smaller", "A−", "Smaller text. Ctrl+minus", scale > 0.76F))
        ui.session.text_scale /= 1.1F;
    ImGui::SameLine(0, grid(0.5F));
    if (text_button(ui, "text/larger", "A+", "Larger text. Ctrl+plus", scale < 2.99F))
        ui.session.text_scale *= 1.1F;
}

}  // namespace

void draw_top_bar(const Ui& ui, const Area& area) {
    const float pad = (area.height - ImGui::GetFrameHeight()) / 2;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2), pad});
    begin_area("top_bar", area, Tone::panel,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar();
    const float left = ImGui::GetCursorPosX();
    const float text_size_width = text_width("A−") + text_width("A+") + grid(9);
    draw_setup_menu(ui);
    if (area.width > grid(240)) {
        ImGui::SameLine();
        if (text_button(ui, "file/open", "Open …", "Opens a setup. Ctrl+O")) ask_to_open(ui);
        ImGui::SameLine();
        if (text_button(ui, "file/save", "Save", "Saves the setup. Ctrl+S",
                        ui.view.modified || ui.view.file_path.empty())) {
            ask_to_save(ui);
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
