#include "ui/shell/interface.hpp"

#include <algorithm>

#include "ui/actions/action_search.hpp"
#include "ui/actions/shortcuts.hpp"
#include "ui/export/export_dialog.hpp"
#include "ui/files/file_dialog.hpp"
#include "ui/files/recovery_question.hpp"
#include "ui/files/setup_row.hpp"
#include "ui/files/start_page.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/picture/moving_view.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/shell/notice_bar.hpp"
#include "ui/shell/panels.hpp"
#include "ui/shell/splitters.hpp"
#include "ui/shell/top_bar.hpp"
#include "ui/talk/talk.hpp"

namespace beamfork {

Transient::Transient() : state_(std::make_unique<TransientState>()) {}
Transient::~Transient() = default;
bool Transient::is_giving_talk() const { return state_->talk.has_value(); }

namespace {

void begin_frame(const Ui& ui) {
    TransientState& state = ui.state;
    // A panel that was folded or not shown has its window only after it was drawn once.
    if (!state.panel_wanted.empty() && give_keyboard(state.panel_wanted))
        state.panel_wanted.clear();
    state.hovered_part = -1;
    state.pointed_label.clear();
    if (ui.log != nullptr) ui.log->widgets.clear();
    // Another document may have fewer parts.
    auto& selected = ui.session.pose.selected_part;
    if (selected && *selected >= ui.setup().parts.size()) selected.reset();
    advance_moving_view(ui);
    // Whoever chooses a study wants to see it in a narrow window too.
    if (!state.study_before.empty() && state.study_before != ui.session.study)
        ui.session.narrow_shows = ui.session.study;
    state.study_before = ui.session.study;
    if (!ui.view.dropped_file.empty()) ask_for_command(ui, OpenFile{ui.view.dropped_file});
    if (ui.view.starts_empty) ask_for_start_page(ui);
    if (ui.view.close_asked) ask_for_command(ui, Quit{});
}

// What belongs to the old document goes with it; a half-typed number too.
void forget_document(const Ui& ui) {
    let_go_of_widget();
    ui.state.camera_move.reset();
    ui.state.pick.reset();
    ui.state.handle_drag.reset();
    ui.state.knobs_of = -1;
    ui.state.story_draft.reset();
    ui.state.tour_edit = {};
    ui.state.refusal.reset();
    ui.state.notices_dismissed = false;
}

// While the panel "compare" is shown, or its other setup is in the picture.
void ask_for_comparison(const Ui& ui) {
    const Session& session = ui.session;
    const bool is_shown =
        session.study == "comparison" || session.compare_place != CompanionPlace::none;
    if (session.compare_with.empty() || !is_shown) return;
    const bool has_halves = session.compare_place == CompanionPlace::split;
    // A talk has the whole screen for the setup that it is about.
    const CompanionPlace place =
        has_halves && ui.state.talk ? CompanionPlace::none : session.compare_place;
    ui.requests.comparison = ComparisonRequest{session.compare_with, place};
}

void end_frame(const Ui& ui) {
    TransientState& state = ui.state;
    constexpr double a_moment = 0.01;
    // A tooltip comes when the pointer or the keyboard has rested on its widget for a while: nobody moves then.
    if (const auto left = seconds_to_tooltip()) ui.requests.wake_within(*left + a_moment);
    ask_for_comparison(ui);
    draw_keyboard_frame();
    if (!state.page_wanted.empty() || !state.panel_wanted.empty()) ui.requests.animating = true;
    const auto& commands = ui.requests.commands;
    if (std::any_of(commands.begin(), commands.end(), changes_document)
        || ui.requests.recovery == RecoveryAnswer::restore)
        forget_document(ui);
    // A slider may vanish while it is pressed: by undo, or by a choice that makes it irrelevant.
    if (state.gesture_open && !ImGui::IsAnyItemActive()) {
        ui.requests.gesture_ended = true;
        state.gesture_open = false;
    }
    ui.requests.highlighted_part = state.hovered_part;
    state.picture_size = ui.requests.scene;
    if (state.hovered_part != state.hovered_part_before) ui.requests.animating = true;
    state.hovered_part_before = state.hovered_part;
}

}  // namespace

void draw_interface(const View& view, Session& session, Transient& transient, Requests& requests) {
    const Ui ui{view, session, transient.state(), requests, transient.widget_log};
    begin_frame(ui);
    keep_sizes_sensible(session);
    if (draw_talk(ui)) {
        end_frame(ui);
        return;
    }
    const float text = font(TextFace::regular)->FontSize;
    const Layout layout = lay_out(ImGui::GetIO().DisplaySize, session, text,
                                  {setup_row_height(ui), notice_bar_height(ui)});
    ui.state.is_narrow = layout.is_narrow;
    draw_viewport(ui, layout.scene);
    draw_top_bar(ui, layout.top_bar);
    draw_setup_row(ui, layout.setup_row);
    draw_notice_bar(ui, layout.notice_bar);
    draw_panels(ui, layout);
    draw_splitters(ui, layout);
    draw_status_bar(ui, layout.status_bar);
    if (ui.state.is_first_frame) ImGui::SetWindowFocus("picture");  // its keys work at once
    ui.state.is_first_frame = false;
    use_shortcuts(ui);
    draw_action_search(ui);
    draw_talk_chooser(ui);
    draw_start_page(ui);
    draw_file_dialog(ui);
    draw_export_dialog(ui);
    draw_describe_dialog(ui);
    draw_unsaved_guard(ui);
    draw_recovery_question(ui);
    end_frame(ui);
}

}  // namespace beamfork
