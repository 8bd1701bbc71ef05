#include "ui/export/export_dialog.hpp"

#include <array>
#include <system_error>

#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace fs = std::filesystem;

namespace {

constexpr const char* export_popup = "Take it with you";

// "evening" of "evening.train.toml".
std::string stem_of_setup(const fs::path& file) {
    const std::string name = file.filename().string();
    const std::string stem = name.substr(0, name.find(".train.toml"));
    return stem.empty() ? "setup" : stem;
}

fs::path path_of(const ExportDialog& dialog) {
    std::string name = dialog.name;
    const std::string ending = ending_of(dialog.order);
    if (!ending.empty() && !name.ends_with(ending)) name += ending;
    return fs::path(dialog.folder) / name;
}

void write_it(const ExportUi& ui, ExportDialog& dialog) {
    std::error_code trouble;
    dialog.error.clear();
    if (dialog.name.empty()) dialog.error = "Give it a name.";
    if (!fs::is_directory(dialog.folder, trouble))
        dialog.error = "There is no folder “" + dialog.folder + "”.";
    if (!dialog.error.empty()) return;
    const fs::path path = path_of(dialog);
    if (fs::is_directory(path, trouble) && !ending_of(dialog.order).empty()) {
        dialog.error = "“" + path.filename().string() + "” is a folder.";
        return;
    }
    if (fs::exists(path, trouble) && !dialog.asks_to_overwrite) {
        dialog.asks_to_overwrite = true;
        return;
    }
    dialog.order.output = fs::absolute(path, trouble);
    dialog.order.camera = ui.camera;
    dialog.order.light_front_mm = ui.options.light_front_mm;
    ui.folder = dialog.folder;
    ui.asks.order = dialog.order;
    ui.pace.animating = true;
    dialog.asks_to_overwrite = false;
    dialog.has_begun = true;
}

// True when something about it has changed, so that what was asked about overwriting is asked anew.
bool draw_what(const ExportUi& ui, ExportDialog& dialog) {
    constexpr std::array<std::string_view, 4> words{"Sheet", "Picture", "Model", "Film"};
    constexpr std::array<std::string_view, 4> helps{
        "A page to print: steps, drawings, numbers, cautions.", "The 3D view as a picture.",
        "The train for other 3D programs.", "The train filmed from all round."};
    const ExportOrder before = dialog.order;
    dialog.order.kind = static_cast<ExportKind>(
        segments(ui, "export/kind", words, helps, static_cast<std::size_t>(before.kind)));
    ImGui::Dummy({1, grid(1)});
    draw_export_choices(ui, dialog.order);
    return !(dialog.order == before);
}

bool draw_where(const ExportUi& ui, ExportDialog& dialog) {
    bool changed = false;
    const auto line = [&](const char* label, const char* id, std::string& text, const char* help) {
        dim_text(label);
        ImGui::SetNextItemWidth(-1);
        changed |= ImGui::InputText(id, &text);
        ui.describe(id + 2, label, help);
    };
    ImGui::Dummy({1, grid(1)});
    line("Folder", "##export/folder", dialog.folder,
         "Where it is written; it must be there already.");
    line("Name", "##export/name", dialog.name, "What it is called; the ending is added.");
    return changed;
}

void draw_progress(const ExportUi& ui) {
    const ExportState& state = ui.view;
    ImGui::Dummy({1, grid(1)});
    // While nothing is known of how far it is, the bar stays empty and the words tell.
    const float share = state.share < 0 ? 0 : static_cast<float>(state.share);
    ImGui::ProgressBar(share, {-1, 0}, shortened(state.words, grid(120)).c_str());
    ui.note("export/progress", state.words);
}

void draw_export_answers(const ExportUi& ui, ExportDialog& dialog) {
    const bool runs = ui.view.is_running;
    bool closes = ImGui::IsKeyPressed(ImGuiKey_Escape, false);
    if (!dialog.error.empty()) {
        wrapped_text(dialog.error, colour(Tone::danger));
        ui.note("export/error", dialog.error);
    }
    if (dialog.asks_to_overwrite)
        wrapped_text("“" + path_of(dialog).filename().string() + "” exists already. Overwrite it?",
                     colour(Tone::danger));
    const bool has_ended = dialog.has_begun && !runs && !ui.desk.message.text.empty();
    if (has_ended) {
        wrapped_text(ui.desk.message.text,
                     colour(ui.desk.message.is_error ? Tone::danger : Tone::text));
        ui.note("export/outcome", ui.desk.message.text);
    }
    ImGui::Dummy({1, grid(1)});
    closes |= text_button(ui, "export/close", runs ? "Go on with something else" : "Close",
                          runs ? "The export goes on; the foot of the window tells how far it is."
                               : "Esc");
    ImGui::SameLine();
    if (runs
        && text_button(ui, "export/give_up", "Give it up", "Ends it and leaves nothing of it."))
        ui.asks.gives_up = true;
    if (!runs
        && text_button(ui, "export/write", dialog.asks_to_overwrite ? "Overwrite" : "Write it",
                       "Writes it while you may go on with something else."))
        write_it(ui, dialog);
    if (closes) ui.dialog.reset();
}

}  // namespace

std::string ending_of(const ExportOrder& order) {
    switch (order.kind) {
    case ExportKind::sheet: return ".html";
    case ExportKind::picture: return ".png";
    case ExportKind::model: return ".glb";
    case ExportKind::film: return order.single_pictures ? "" : ".mp4";
    }
    return "";
}

void start_export_dialog(const ExportUi& ui) {
    if (ui.dialog) return;
    ExportDialog dialog;
    const fs::path file(ui.desk.file_path);
    dialog.name = stem_of_setup(file);
    std::error_code trouble;
    const fs::path folder = !file.empty()       ? fs::absolute(file, trouble).parent_path()
                            : ui.folder.empty() ? fs::current_path(trouble)
                                                : fs::path(ui.folder);
    dialog.folder = folder.string();
    dialog.order.white_ground = ui.options.light_ground;
    dialog.order.painted = ui.options.paint_pupil;
    dialog.order.light_moves = ui.options.light_moves;
    dialog.order.apart = ui.options.apart;
    ui.dialog = std::move(dialog);
}

void draw_export_dialog(const ExportUi& ui) {
    if (!ui.dialog) return;
    ExportDialog& dialog = *ui.dialog;
    if (!dialog.opened) ImGui::OpenPopup(export_popup);
    dialog.opened = true;
    if (!begin_question(export_popup, grid(140))) return;
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(export_popup);
    ImGui::PopFont();
    ImGui::BeginDisabled(ui.view.is_running);
    const bool is_other_kind = draw_what(ui, dialog);
    if (draw_where(ui, dialog) || is_other_kind) {
        dialog.asks_to_overwrite = false;
        dialog.has_begun = false;
    }
    ImGui::EndDisabled();
    if (ui.view.is_running) draw_progress(ui);
    draw_export_answers(ui, dialog);
    if (!ui.dialog) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
