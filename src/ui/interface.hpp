// The window's contents for one frame: it reads what is true, draws it, and asks for what the user wants.
// It changes nothing but the session and its own transient state; all else are requests that the app
// carries out between two frames.
//
// Each feature's part of these is a struct of its own, in its own room.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "desk/desk_requests.hpp"
#include "desk/desk_view.hpp"
#include "study/tune/tune_study.hpp"
#include "ui/comparison/comparison_panel.hpp"
#include "ui/export/export_order.hpp"
#include "ui/files/files_ui.hpp"
#include "ui/findings/findings_panel.hpp"
#include "ui/picture/picture_ui.hpp"
#include "ui/shell/layout.hpp"
#include "ui/sight_view/sight_view_panel.hpp"
#include "ui/talk/talk.hpp"
#include "ui/tune/tune_panel.hpp"

namespace beamfork {

/// What is true now. References must live until draw_interface returns.
struct View {
    const Document& document;
    const Report* report = nullptr;  ///< null while the setup makes no train ...
    std::string report_error{};      ///< ... and why
    PictureView picture;
    DeskView desk{};
    FilesView files{};
    ExportState exporting{};
    ComparisonView comparison{};
    SightView sight{};
    TuneView tune{};
    TalkView talk{};
};

/// What has happened to the window since the last frame.
struct WindowEvents {
    std::string dropped_file{};  ///< onto the window; empty: none
    bool starts_empty = false;   ///< the window was opened on nothing in particular
    bool close_asked = false;    ///< the system asks to close the window
    bool notes_closed = false;   ///< the user has closed the window with the speaker's notes
};

/// How the user has arranged things: not undone, and saved between runs but for the pose (app/desk/session_store).
struct Session {
    SetupPose pose;  ///< of the setup that is shown
    ViewOptions view;
    LayoutSession layout;
    bool welcome_dismissed = false;
    FilesSession files;
    FindingsSession findings;
    ComparisonSession comparison;
    TuneSession tune;
};

/// What the user wants after this frame: of the open setups, and what else is to be shown or done.
struct Requests {
    DeskRequests desk;
    FramePace pace;
    PictureRequests picture;
    FilesRequests files;
    ExportRequests exporting;
    ComparisonRequests comparison;
    std::optional<SightRequest> sight;   ///< pictures of what each eye sees; none: not shown
    std::optional<TuneQuestion> tune;    ///< the study "tune"; none: not shown
    std::optional<SpeakerPage> speaker;  ///< for a window of its own; none: no such window
};

struct TransientState;

/// Hover, drags, open dialogs, half-typed numbers: kept by the app from frame to frame, never saved.
class Transient {
public:
    Transient();
    ~Transient();
    Transient(const Transient&) = delete;
    Transient& operator=(const Transient&) = delete;
    Transient(Transient&&) = delete;
    Transient& operator=(Transient&&) = delete;

    [[nodiscard]] TransientState& state() { return *state_; }
    /// The whole screen is the room's, and letters are as large as talk_scale() says.
    [[nodiscard]] bool is_giving_talk() const;
    /// Tests find widgets by it; null in the program.
    WidgetLog* widget_log = nullptr;

private:
    std::unique_ptr<TransientState> state_;
};

/// Between ImGui::NewFrame and ImGui::Render. Fonts and style are kit/theme's.
void draw_interface(const View& view,
                    const WindowEvents& events,
                    Session& session,
                    Transient& transient,
                    Requests& requests);

}  // namespace beamfork
