#include "ui/files/file_dialog.hpp"

#include <algorithm>
#include <system_error>

#include "desk/desk_requests.hpp"
#include "ui/files/files_ui.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view setup_ending = ".train.toml";
constexpr const char* file_popup = "File";

bool shows(const FileDialog& dialog, const FolderEntry& entry) {
    return entry.is_folder || dialog.all_files || entry.name.ends_with(setup_ending);
}

void accept(const FilesUi& ui, FileDialog& dialog) {
    if (dialog.name.empty()) {
        dialog.error = "Give the file a name.";
        return;
    }
    std::error_code trouble;
    const fs::path named = dialog.folder / dialog.name;  // an absolute name replaces the folder
    if (fs::is_directory(named, trouble)) {
        enter_folder(dialog, named);
        return;
    }
    const bool opens = dialog.purpose == FilePurpose::open;
    const fs::path path = opens ? named : dialog.folder / with_setup_ending(dialog.name);
    const bool exists = fs::exists(path, trouble);
    if (opens && !exists) {
        dialog.error = "There is no file “" + path.filename().string() + "” in this folder.";
        return;
    }
    if (!opens && exists && !dialog.asks_to_overwrite && path != fs::path(ui.desk.file_path)) {
        dialog.asks_to_overwrite = true;
        return;
    }
    ui.session.folder = path.parent_path().string();
    if (opens) {
        ask_for_command(ui, OpenFile{path});
    } else {
        ui.desk_requests.commands.emplace_back(SaveFile{path});
        ui.state.save_was_requested = true;
    }
    ui.state.file_dialog.reset();
}

void draw_folder_line(const FilesUi& ui, FileDialog& dialog) {
    if (text_button(ui, "dialog/up", "Up", "The folder that holds this one.",
                    dialog.folder.has_relative_path())) {
        enter_folder(dialog, fs::path(dialog.folder).parent_path());
    }
    ImGui::SameLine();
    ImGui::SetNextItemWidth(-1);
    if (ImGui::InputText("##dialog/folder", &dialog.folder_text,
                         ImGuiInputTextFlags_EnterReturnsTrue)) {
        enter_folder(dialog, dialog.folder_text);
    }
    constexpr const char* help = "The folder whose files are listed; type another and press Enter.";
    ui.describe("dialog/folder", "Folder", help);
}

// Returns true when an entry was double-clicked.
bool draw_entries(const FilesUi& ui, FileDialog& dialog) {
    bool is_accepted = false;
    std::optional<fs::path> enter;
    ImGui::PushStyleColor(ImGuiCol_ChildBg, colour(Tone::ground));
    ImGui::BeginChild("dialog/list", {0, ImGui::GetTextLineHeightWithSpacing() * 12},
                      ImGuiChildFlags_AlwaysUseWindowPadding, ImGuiWindowFlags_NavFlattened);
    for (const FolderEntry& entry : dialog.entries) {
        if (!shows(dialog, entry)) continue;
        const std::string label = entry.is_folder ? entry.name + "/" : entry.name;
        if (ImGui::Selectable(label.c_str(), !entry.is_folder && entry.name == dialog.name,
                              ImGuiSelectableFlags_AllowDoubleClick
                                  | ImGuiSelectableFlags_DontClosePopups)) {
            if (entry.is_folder) {
                enter = dialog.folder / entry.name;
            } else {
                dialog.name = entry.name;
                dialog.asks_to_overwrite = false;
                is_accepted = ImGui::IsMouseDoubleClicked(0);
            }
        }
        const std::string help = (dialog.folder / entry.name).string();
        ui.describe("dialog/entry/" + entry.name, entry.name, help);
    }
    ImGui::EndChild();
    ImGui::PopStyleColor();
    if (enter) enter_folder(dialog, *enter);
    return is_accepted;
}

void draw_answers(const FilesUi& ui, FileDialog& dialog, bool is_accepted) {
    const bool opens = dialog.purpose == FilePurpose::open;
    if (!dialog.error.empty()) wrapped_text(dialog.error, colour(Tone::danger));
    if (dialog.asks_to_overwrite) {
        wrapped_text("“" + with_setup_ending(dialog.name) + "” exists already. Overwrite it?",
                     colour(Tone::danger));
        ui.note("dialog/question", "Overwrite it?");
    }
    ImGui::Checkbox("All files", &dialog.all_files);
    constexpr const char* all_help = "Lists files of every ending, not only setups.";
    ui.describe("dialog/all", "All files", all_help);
    const char* word = opens ? "Open" : dialog.asks_to_overwrite ? "Overwrite" : "Save";
    const float width = text_width(word) + text_width("Cancel") + grid(10);
    ImGui::SameLine(ImGui::GetContentRegionMax().x - width);
    const bool is_called_off = text_button(ui, "dialog/cancel", "Cancel", "Esc");
    ImGui::SameLine();
    const bool is_pressed = text_button(ui, "dialog/accept", word, "Enter");
    if (is_called_off || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        ui.state.file_dialog.reset();
    } else if (is_pressed || is_accepted) {
        dialog.error.clear();
        accept(ui, dialog);
    }
}

}  // namespace

void enter_folder(FileDialog& dialog, const fs::path& folder) {
    std::error_code trouble;
    const fs::path place = fs::weakly_canonical(folder, trouble);
    std::vector<FolderEntry> entries;
    fs::directory_iterator at(place, fs::directory_options::skip_permission_denied, trouble);
    if (trouble) {
        dialog.error = "The folder cannot be opened: " + trouble.message() + ".";
        dialog.folder_text = dialog.folder.string();
        return;
    }
    for (; at != fs::directory_iterator(); at.increment(trouble)) {
        if (trouble) break;
        std::error_code unknown;
        const std::string name = at->path().filename().string();
        if (!name.starts_with('.')) entries.push_back({name, at->is_directory(unknown)});
    }
    std::sort(entries.begin(), entries.end(), [](const FolderEntry& a, const FolderEntry& b) {
        return a.is_folder != b.is_folder ? a.is_folder : a.name < b.name;
    });
    dialog.folder = place;
    dialog.folder_text = place.string();
    dialog.entries = std::move(entries);
    dialog.error.clear();
    dialog.asks_to_overwrite = false;
}

std::string with_setup_ending(const std::string& name) {
    if (name.ends_with(setup_ending)) return name;
    if (name.ends_with(".toml")) return name.substr(0, name.size() - 5) + std::string(setup_ending);
    return name + std::string(setup_ending);
}

void start_file_dialog(const FilesUi& ui, FilePurpose purpose) {
    FileDialog dialog;
    dialog.purpose = purpose;
    std::error_code trouble;
    const fs::path file(ui.desk.file_path);
    if (purpose == FilePurpose::save && !file.empty()) dialog.name = file.filename().string();
    const fs::path folder = !file.empty()               ? file.parent_path()
                            : ui.session.folder.empty() ? fs::current_path(trouble)
                                                        : fs::path(ui.session.folder);
    enter_folder(dialog, folder.empty() ? fs::current_path(trouble) : folder);
    if (dialog.folder.empty()) enter_folder(dialog, fs::current_path(trouble));
    ui.state.file_dialog = std::move(dialog);
}

void draw_file_dialog(const FilesUi& ui) {
    if (!ui.state.file_dialog) return;
    FileDialog& dialog = *ui.state.file_dialog;
    if (!dialog.opened) ImGui::OpenPopup(file_popup);
    if (!begin_question(file_popup, grid(150))) return;
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(dialog.purpose == FilePurpose::open ? "Open a setup"
                                                               : "Save the setup as");
    ImGui::PopFont();
    draw_folder_line(ui, dialog);
    bool is_accepted = draw_entries(ui, dialog);
    if (!dialog.opened) ImGui::SetKeyboardFocusHere();
    dialog.opened = true;
    ImGui::SetNextItemWidth(-1);
    is_accepted |= ImGui::InputTextWithHint("##dialog/name", "File name", &dialog.name,
                                            ImGuiInputTextFlags_EnterReturnsTrue);
    if (ImGui::IsItemEdited()) dialog.asks_to_overwrite = false;
    constexpr const char* name_help = "The file's name in this folder, or a whole path.";
    ui.describe("dialog/name", "File name", name_help);
    draw_answers(ui, dialog, is_accepted);
    if (!ui.state.file_dialog) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
