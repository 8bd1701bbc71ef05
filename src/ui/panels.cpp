#include "ui/panels.hpp"

#include <algorithm>
#include <array>
#include <functional>

#include "scene/findings/finding_rows.hpp"
#include "ui/fit/fit_panel.hpp"
#include "ui/focus/focus_budget_panel.hpp"
#include "ui/focus/reach_table_panel.hpp"
#include "ui/focus/uncertainty_panel.hpp"
#include "ui/image/image_quality_panel.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/light/brightness_panel.hpp"
#include "ui/light/light_at_stops_panel.hpp"
#include "ui/light/magnification_panel.hpp"
#include "ui/two_eyes/alignment_panel.hpp"
#include "ui/unfolded_path/unfolded_path_panel.hpp"
#include "ui/ways_to_focus/ways_to_focus_panel.hpp"

namespace beamfork {

namespace {

constexpr std::array panel_table{
    PanelEntry{"findings", "Findings",
               "What the user of this setup should know, most severe first, each with what would "
               "mend it.",
               &Layout::findings,
               [](const WindowUi& ui) {
                   draw_findings_panel({ui.shared(), ui.view.report_error, ui.session.findings});
               },
               false},
    PanelEntry{"train", "The train", "All parts in the order in which light meets them.",
               &Layout::train,
               [](const WindowUi& ui) {
                   draw_train_panel({ui.shared(), ui.state.train});
               },
               false},
    PanelEntry{"part", "Selected part",
               "What is known of the part that is selected; change any of it.", &Layout::part,
               [](const WindowUi& ui) {
                   draw_part_panel({ui.shared(), ui.state.of_document.part});
               },
               false},
    PanelEntry{"focus_budget", "Focus budget",
               "The light path that the telescope offers behind its drawtube, what each part "
               "takes from it, "
               "and what is left for focusing.",
               &Layout::focus_budget, [](const WindowUi& ui) { draw_focus_budget_panel(ui); },
               true},
    PanelEntry{"light_at_stops", "Light at the field stops",
               "How much of the telescope's light arrives over the field of each eyepiece, and "
               "what stops the "
               "rest.",
               &Layout::light_at_stops, [](const WindowUi& ui) { draw_light_at_stops_panel(ui); },
               true},
    PanelEntry{"magnification", "What you get",
               "Power, field and exit pupil that follow from this train.", &Layout::study,
               [](const WindowUi& ui) { draw_magnification_panel(ui); }, true},
    PanelEntry{"unfolded_path", "Unfolded path",
               "The whole train straightened, to scale: the light of both eyes, every opening "
               "and all glass from the drawtube to the field stops.",
               &Layout::study,
               [](const WindowUi& ui) { draw_unfolded_path_panel(ui, ui.state.unfolded_path); },
               true},
    PanelEntry{"ways_to_focus", "Ways to focus",
               "What would bring this setup to focus, best first, with what each way costs.",
               &Layout::study, [](const WindowUi& ui) { draw_ways_to_focus_panel(ui); }, true},
    PanelEntry{"image_quality", "Image quality",
               "How sharp a star is after all that glass: on axis and at the edge of the field, "
               "for each eye.",
               &Layout::study, [](const WindowUi& ui) { draw_image_quality_panel(ui); }, true},
    PanelEntry{
        "reach_table", "Who reaches focus",
        "Every eyepiece pair with every observer and every target: where the drawtube "
        "must stand, and what changing costs.",
        &Layout::study,
        [](const WindowUi& ui) { draw_reach_table_panel(ui, ui.session.layout.study_is_wide); },
        true},
    PanelEntry{"fit", "Fit",
               "Whether eyes, eyepieces and nose have room, what hangs on the focuser, and "
               "whether every joint can be joined.",
               &Layout::study, [](const WindowUi& ui) { draw_fit_panel(ui); }, true},
    PanelEntry{"brightness", "Brightness",
               "What every surface lets through, how much light enters each eye, and what two "
               "eyes see beside one.",
               &Layout::study, [](const WindowUi& ui) { draw_brightness_panel(ui); }, true},
    PanelEntry{"alignment", "Two eyes",
               "How far the two images stand apart, whether eyes merge them, and how much of each "
               "error they bear.",
               &Layout::study, [](const WindowUi& ui) { draw_alignment_panel(ui); }, true},
    PanelEntry{
        "uncertainty", "How sure focus is",
        "The chance that focus is reached when every ± is considered, stated or assumed, and which "
        "value is worth measuring.",
        &Layout::study, [](const WindowUi& ui) { draw_uncertainty_panel(ui); }, true},
    PanelEntry{
        "tune", "Tune",
        "Vary one number and watch one result: its curve, the value that gives what you want, "
        "and what a millimetre more of each part changes.",
        &Layout::study,
        [](const WindowUi& ui) {
            draw_tune_panel({ui.shared(), ui.view.tune, ui.session.tune, ui.requests.tune});
        },
        true},
    PanelEntry{"comparison", "Side by side",
               "The setup beside another one, or beside itself before a change: which is better in "
               "what, and both in one picture.",
               &Layout::study,
               [](const WindowUi& ui) {
                   draw_comparison_panel({ui.shared(), ui.view.comparison, ui.session.comparison,
                                          ui.requests.comparison});
               },
               true},
    PanelEntry{
        "sight_view", "What each eye sees",
        "Pictures computed from the traced rays: left, right, merged, and one eye "
        "against two.",
        &Layout::study,
        [](const WindowUi& ui) {
            draw_sight_view_panel({ui.shared(), ui.view.sight, ui.state.sight, ui.requests.sight});
        },
        true},
    PanelEntry{"home_measurement", "Home measurements",
               "Measure your own parts with a ruler, a lamp or a clock, and fill in what you "
               "found.",
               &Layout::study,
               [](const WindowUi& ui) {
                   draw_home_measurement_panel({ui.shared(), ui.state.measurement});
               },
               false},
    PanelEntry{
        "tours", "Tours for a talk",
        "Write a tour of your own, step by step: what is seen, what the room reads, what you "
        "say. F5 tells it.",
        &Layout::study,
        [](const WindowUi& ui) {
            draw_tours_panel({ui.shared(), ui.picture(), ui.state.of_document.tour});
        },
        true},
};

}  // namespace

std::span<const PanelEntry> panels() { return panel_table; }

const PanelEntry& shown_study(const LayoutSession& session) {
    const auto table = panels();
    const auto found = std::find_if(table.begin(), table.end(), [&](const PanelEntry& entry) {
        return entry.is_study() && entry.stem == session.study;
    });
    if (found != table.end()) return *found;
    return *std::find_if(table.begin(), table.end(), std::mem_fn(&PanelEntry::is_study));
}

const PanelEntry& shown_in_strip(const LayoutSession& session, bool is_narrow) {
    const auto table = panels();
    const auto found = std::find_if(table.begin(), table.end(), [&](const PanelEntry& entry) {
        return entry.is_in_strip() && entry.stem == session.narrow_shows;
    });
    return is_narrow && found != table.end() ? *found : shown_study(session);
}

std::string window_name(const PanelEntry& entry) {
    return std::string(entry.title) + "###panel/" + std::string(entry.stem);
}

namespace {

// Whether it is the one of those that share the strip's last place.
bool shares_place(const WindowUi& ui, const PanelEntry& entry) {
    return entry.is_study() || (ui.state.shell.is_narrow && entry.is_in_strip());
}

// All that share one place fold as one.
std::string fold_stem(const WindowUi& ui, const PanelEntry& entry) {
    return shares_place(ui, entry) ? "study" : std::string(entry.stem);
}

void choose_study(const WindowUi& ui, const PanelEntry& entry) {
    ui.session.layout.narrow_shows = entry.stem;
    if (entry.is_study()) ui.session.layout.study = entry.stem;
}

void draw_study_chooser(const WindowUi& ui, const PanelEntry& shown, float width) {
    constexpr const char* help = "Choose which study is shown here.";
    const bool is_open = begin_chooser("##study", std::string(shown.title), width);
    ui.describe("study", "Study", help);
    if (!is_open) return;
    for (const PanelEntry& entry : panels()) {
        if (!shares_place(ui, entry)) continue;
        if (chooser_entry(std::string(entry.title), entry.stem == shown.stem))
            choose_study(ui, entry);
        ui.describe("study/" + std::string(entry.stem), entry.title, entry.help);
    }
    ImGui::EndCombo();
}

void draw_study_heading(const WindowUi& ui, const PanelEntry& entry) {
    const float button = ImGui::GetFrameHeight();
    ImGui::SameLine(0, grid(1));
    draw_study_chooser(ui, entry,
                       std::min(grid(60), ImGui::GetContentRegionAvail().x - button - grid(2)));
    if (ui.state.shell.is_narrow) return;  // it has all there is
    ImGui::SameLine(0, grid(1));
    const bool is_wide = ui.session.layout.study_is_wide;
    if (icon_button(ui, "study/wide", is_wide ? Icon::narrow : Icon::widen,
                    is_wide ? "Show the other panels again."
                            : "Give this study the whole width of the strip."))
        ui.session.layout.study_is_wide = !is_wide;
}

// What folded findings come to, behind their heading.
void draw_summary(const WindowUi& ui, const PanelEntry& entry, ImVec2 low, float width) {
    if (ui.report == nullptr) return;
    const float left = grid(4.5F) + text_width(entry.title, TextFace::bold) + grid(4);
    const std::string words = shortened(finding_summary(*ui.report), width - left);
    text_at(*ImGui::GetWindowDrawList(), {low.x + left, low.y}, words, colour(Tone::text_dim));
}

// Returns whether the panel is unfolded.
bool draw_heading(const WindowUi& ui, const PanelEntry& entry) {
    const std::string stem = fold_stem(ui, entry);
    const bool is_folded = is_panel_folded(ui.session.layout, stem, ui.state.shell.is_narrow);
    const bool has_chooser = shares_place(ui, entry) && !is_folded;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float height =
        has_chooser ? ImGui::GetFrameHeight() : ImGui::GetTextLineHeight() + grid(1);
    const ImVec2 size{has_chooser ? grid(4) : ImGui::GetContentRegionAvail().x, height};
    const std::string id = "panel/" + std::string(entry.stem) + "/fold";
    const bool pressed = ImGui::InvisibleButton(id.c_str(), size);
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    ui.describe(id, entry.title, entry.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float middle = low.y + (has_chooser ? height : ImGui::GetTextLineHeight()) / 2;
    draw_icon(list, is_folded ? Icon::unfold : Icon::fold, {low.x + grid(1.5F), middle}, grid(2.5F),
              colour(hot ? Tone::text : Tone::text_dim));
    if (has_chooser) {
        draw_study_heading(ui, entry);
    } else {
        text_at(list, {low.x + grid(4.5F), low.y}, shortened(entry.title, size.x - grid(5)),
                colour(Tone::text), TextFace::bold);
        if (is_folded && entry.area == &Layout::findings) draw_summary(ui, entry, low, size.x);
    }
    if (pressed) fold_panel(ui.session.layout, stem, ui.state.shell.is_narrow, !is_folded);
    return !is_folded;
}

void draw_panel(const WindowUi& ui, const PanelEntry& entry, const Area& area) {
    const std::string window = window_name(entry);
    begin_area(window.c_str(), area, Tone::panel,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    if (draw_heading(ui, entry)) {
        const std::string body = "body/" + std::string(entry.stem);
        ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, grid(1)});
        ImGui::BeginChild(body.c_str(), {0, 0}, ImGuiChildFlags_AlwaysUseWindowPadding,
                          ImGuiWindowFlags_NavFlattened);
        ImGui::PopStyleVar();
        if (entry.needs_report && ui.report == nullptr) {
            wrapped_text("Waits for a setup that makes a train.", colour(Tone::text_dim));
        } else {
            entry.draw(ui);
        }
        ImGui::EndChild();
    }
    ImGui::End();
}

}  // namespace

void draw_panels(const WindowUi& ui, const Layout& layout) {
    const PanelEntry& shown = shown_in_strip(ui.session.layout, layout.is_narrow);
    for (const PanelEntry& entry : panels()) {
        if (shares_place(ui, entry)) {
            if (&entry == &shown) draw_panel(ui, entry, layout.study);
        } else if ((layout.*entry.area).width > 0) {
            draw_panel(ui, entry, layout.*entry.area);
        }
    }
}

}  // namespace beamfork
