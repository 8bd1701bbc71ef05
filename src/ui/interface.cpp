#include "ui/interface.hpp"

#include <algorithm>
#include <utility>

#include "train/setup.hpp"
#include "ui/export/export_dialog.hpp"
#include "ui/files/describe_dialog.hpp"
#include "ui/files/file_dialog.hpp"
#include "ui/files/recovery_question.hpp"
#include "ui/files/setup_row.hpp"
#include "ui/files/start_page.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/theme.hpp"
#include "ui/panels.hpp"
#include "ui/picture/moving_view.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/shell/notice_bar.hpp"
#include "ui/shell/splitters.hpp"
#include "ui/shell/top_bar.hpp"
#include "ui/window_actions.hpp"

namespace beamfork {

Transient::Transient() : state_(std::make_unique<TransientState>()) {}
Transient::~Transient() = default;
bool Transient::is_giving_talk() const { return state_->talk.talk.has_value(); }

namespace {

void take_events(const WindowUi& ui, const WindowEvents& events) {
    if (events.notes_closed && ui.state.talk.talk) ui.state.talk.talk->has_notes = false;
    if (!events.dropped_file.empty()) ask_for_command(ui.files(), OpenFile{events.dropped_file});
    if (events.starts_empty) ask_for_start_page(ui.files());
    if (!events.close_asked) return;
    ask_for_command(ui.files(), Quit{});
    leave_talk(ui.talk());  // it may ask about unsaved work
}

void begin_frame(const WindowUi& ui) {
    ShellState& shell = ui.state.shell;
    // A panel that was folded or not shown has its window only after it was drawn once.
    if (!shell.panel_wanted.empty() && give_keyboard(shell.panel_wanted))
        shell.panel_wanted.clear();
    ui.kept.hovered_part = -1;
    ui.kept.pointed_label.clear();
    if (ui.log != nullptr) ui.log->widgets.clear();
    // Another document may have fewer parts.
    if (ui.selected_part && *ui.selected_part >= ui.setup().parts.size()) ui.selected_part.reset();
    advance_moving_view(ui.picture());
    // Whoever chooses a study wants to see it in a narrow window too.
    LayoutSession& layout = ui.session.layout;
    if (!shell.study_before.empty() && shell.study_before != layout.study)
        layout.narrow_shows = layout.study;
    shell.study_before = layout.study;
}

// What one panel wants of another.
void pass_on(const WindowUi& ui) {
    const std::string curve = std::exchange(ui.state.of_document.part.curve_wanted, {});
    if (!curve.empty()) {
        ui.session.tune.varied = curve;
        ui.session.layout.study = "tune";
        ui.session.layout.folded.erase("study");
    }
    const std::string tour = std::exchange(ui.state.of_document.tour.tell_wanted, {});
    if (!tour.empty()) start_talk(ui.talk(), tour);
}

void forget_document(const WindowUi& ui) {
    let_go_of_widget();
    ui.state.of_document = {};
}

void end_frame(const WindowUi& ui) {
    constexpr double a_moment = 0.01;
    // A tooltip comes when the pointer or the keyboard has rested on its widget for a while: nobody moves then.
    if (const auto left = seconds_to_tooltip()) ui.pace.wake_within(*left + a_moment);
    ui.requests.comparison.shown =
        wanted_comparison(ui.session.comparison, ui.session.layout.study == "comparison",
                          ui.state.talk.talk.has_value());
    draw_keyboard_frame();
    if (!ui.state.shell.page_wanted.empty() || !ui.state.shell.panel_wanted.empty())
        ui.pace.animating = true;
    const auto& commands = ui.desk_requests.commands;
    if (std::any_of(commands.begin(), commands.end(), changes_document)
        || ui.requests.files.recovery == RecoveryAnswer::restore)
        forget_document(ui);
    UiState& kept = ui.kept;
    // A slider may vanish while it is pressed: by undo, or by a choice that makes it irrelevant.
    if (kept.gesture_open && !ImGui::IsAnyItemActive()) {
        ui.desk_requests.gesture_ended = true;
        kept.gesture_open = false;
    }
    ui.requests.picture.highlighted_part = kept.hovered_part;
    ui.state.picture.size = ui.requests.picture.scene;
    if (kept.hovered_part != kept.hovered_part_before) ui.pace.animating = true;
    kept.hovered_part_before = kept.hovered_part;
}

void draw_bars_and_panels(const WindowUi& ui) {
    const ShellUi shell = ui.shell();
    const FilesUi files = ui.files();
    const float text = font(TextFace::regular)->FontSize;
    const Layout layout = lay_out(ImGui::GetIO().DisplaySize, ui.session.layout, text,
                                  {setup_row_height(files), notice_bar_height(shell)});
    ui.state.shell.is_narrow = layout.is_narrow;
    draw_viewport(ui.picture(), ui.state.of_document.handles, layout.scene);
    draw_top_bar(shell, files, layout.top_bar);
    draw_setup_row(files, layout.setup_row);
    draw_notice_bar(shell, layout.notice_bar);
    draw_panels(ui, layout);
    draw_splitters(shell, layout);
    draw_status_bar(shell, layout.status_bar);
    if (ui.state.shell.is_first_frame) ImGui::SetWindowFocus("picture");  // its keys work at once
    ui.state.shell.is_first_frame = false;
    pass_on(ui);
}

void draw_questions(const WindowUi& ui) {
    const FilesUi files = ui.files();
    draw_action_search(ui, ui.state.search, [&] { return all_actions(ui); });
    draw_talk_chooser(ui.talk());
    draw_start_page(files);
    draw_file_dialog(files);
    draw_export_dialog(ui.exporting());
    draw_describe_dialog(files);
    draw_unsaved_guard(files);
    draw_recovery_question(files);
}

}  // namespace

void draw_interface(const View& view,
                    const WindowEvents& events,
                    Session& session,
                    Transient& transient,
                    Requests& requests) {
    TransientState& state = transient.state();
    WindowActions actions;
    const WindowUi ui{{view.document, view.report, session.pose.selected_part, state.shared,
                       requests.desk, requests.pace, actions, transient.widget_log},
                      view,
                      session,
                      state,
                      requests};
    actions.serve(ui);
    begin_frame(ui);
    take_events(ui, events);
    keep_sizes_sensible(session.layout);
    if (!draw_talk(ui.talk())) {
        draw_bars_and_panels(ui);
        use_shortcuts(ui);
        draw_questions(ui);
    }
    end_frame(ui);
}

}  // namespace beamfork
