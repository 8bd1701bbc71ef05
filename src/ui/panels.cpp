#include "ui/panels.hpp"

#include <array>

#include "ui/widgets.hpp"

namespace beamfork {

std::span<const PanelEntry> panels() {
    static constexpr std::array table{
        PanelEntry{"train", "The train", "All parts in the order in which light meets them.",
                   &Layout::train, draw_train_panel, false},
        PanelEntry{"part", "Selected part",
                   "What is known of the part that is selected; change any of it.", &Layout::part,
                   draw_part_panel, false},
        PanelEntry{"focus_budget", "Focus budget",
                   "The light path that the telescope offers behind its drawtube, what each part "
                   "takes from it, "
                   "and what is left for focusing.",
                   &Layout::focus_budget, draw_focus_budget_panel, true},
        PanelEntry{"light_at_stops", "Light at the field stops",
                   "How much of the telescope's light arrives over the field of each eyepiece, and "
                   "what stops the "
                   "rest.",
                   &Layout::light_at_stops, draw_light_at_stops_panel, true},
        PanelEntry{"magnification", "What you get",
                   "Power, field and exit pupil that follow from this train.",
                   &Layout::magnification, draw_magnification_panel, true},
    };
    return table;
}

std::string window_name(const PanelEntry& entry) {
    return std::string(entry.title) + "###panel/" + std::string(entry.stem);
}

namespace {

// Returns whether the panel is unfolded.
bool draw_heading(const Ui& ui, const PanelEntry& entry) {
    const std::string stem(entry.stem);
    const bool is_folded = ui.session.folded.contains(stem);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 size{ImGui::GetContentRegionAvail().x, ImGui::GetTextLineHeight() + grid(1)};
    const std::string id = "panel/" + stem + "/fold";
    const bool pressed = ImGui::InvisibleButton(id.c_str(), size);
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    tooltip(entry.help);
    ui.note(id, entry.title, entry.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float middle = low.y + ImGui::GetTextLineHeight() / 2;
    draw_icon(list, is_folded ? Icon::unfold : Icon::fold, {low.x + grid(1.5F), middle}, grid(2.5F),
              colour(hot ? Tone::text : Tone::text_dim));
    text_at(list, {low.x + grid(4.5F), low.y}, shortened(entry.title, size.x - grid(5)),
            colour(Tone::text), TextFace::bold);
    if (pressed) {
        if (is_folded) {
            ui.session.folded.erase(stem);
        } else {
            ui.session.folded.insert(stem);
        }
    }
    return !is_folded;
}

void draw_panel(const Ui& ui, const PanelEntry& entry, const Area& area) {
    const std::string window = window_name(entry);
    begin_area(window.c_str(), area, Tone::panel,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    if (draw_heading(ui, entry)) {
        const std::string body = "body/" + std::string(entry.stem);
        ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, grid(1)});
        ImGui::BeginChild(body.c_str(), {0, 0}, ImGuiChildFlags_AlwaysUseWindowPadding);
        ImGui::PopStyleVar();
        if (entry.needs_report && ui.view.report == nullptr) {
            wrapped_text("Waits for a setup that makes a train.", colour(Tone::text_dim));
        } else {
            entry.draw(ui);
        }
        ImGui::EndChild();
    }
    ImGui::End();
}

}  // namespace

void draw_panels(const Ui& ui, const Layout& layout) {
    for (const PanelEntry& entry : panels())
        draw_panel(ui, entry, layout.*entry.area);
}

}  // namespace beamfork
