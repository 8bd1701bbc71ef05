// What every panel is given, and what is kept from frame to frame without being saved.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "scene/home_measurement/home_measurement_rows.hpp"
#include "ui/export/export_dialog.hpp"
#include "ui/files/describe_dialog.hpp"
#include "ui/files/file_dialog.hpp"
#include "ui/handles/handle_overlay.hpp"
#include "ui/kit/theme.hpp"
#include "ui/shell/interface.hpp"
#include "ui/talk/talk_state.hpp"
#include "ui/tour/tour_edit_state.hpp"
#include "ui/unfolded_path/unfolded_path_state.hpp"

namespace beamfork {

/// A widget as it was drawn in the last frame.
struct LoggedWidget {
    ImVec2 low;
    ImVec2 high;
    std::string label;    ///< the words beside or on it
    std::string tooltip;  ///< one sentence; may be empty
    bool enabled = true;
    ImGuiID id = 0;  ///< Dear ImGui's; 0: words or a drawing that the keyboard passes by
};
/// By a stable name such as "field/length_mm/slider".
struct WidgetLog {
    std::map<std::string, LoggedWidget> widgets;
};

/// A smooth move of the camera; `done` runs from 0 to 1.
struct CameraMove {
    Camera from;
    Camera to;
    float done = 0;
};

/// Parts on their way apart or back; `done` runs from 0 to 1.
struct ApartMove {
    struct Flight {
        Camera from;
        Camera to;
        Camera seen;  ///< as it was left in the frame before
    };
    float from = 0;
    float to = 1;
    float done = 0;
    std::optional<Flight> camera;
};

/// Why the number typed last was refused.
struct Refusal {
    std::size_t part = 0;
    std::string key;
    std::string sentence;
};

/// Which part was under the pointer when these last were as they are.
struct Pick {
    ImVec2 pixel;
    Camera camera;
    std::uint64_t revision = 0;
    int part = -1;
};

/// Modifier keys that are held.
struct HeldKeys {
    bool ctrl = false;
    bool shift = false;
    bool alt = false;
};

/// The box in which actions are found by name.
struct ActionSearch {
    std::string typed;
    std::size_t row = 0;  ///< of what fits: the one that Enter runs
    bool opened = false;  ///< the popup is up
};

struct TransientState {
    HeldKeys held_before;  ///< in the frame before
    bool is_first_frame = true;
    bool is_narrow = false;        ///< of the layout of this frame
    std::string study_before;      ///< Session::study of the frame before
    int hovered_part = -1;         ///< of this frame
    int hovered_part_before = -1;  ///< of the frame before: what is highlighted
    bool gesture_open = false;
    std::optional<Refusal> refusal;
    std::optional<CameraMove> camera_move;
    bool is_split = false;  ///< the picture was, in the last frame
    std::optional<ApartMove> apart_move;
    std::optional<Camera> camera_together;  ///< before the parts were pulled apart
    SceneArea picture_size;                 ///< of the frame before
    std::optional<Pick> pick;
    float drag_length = 0;  ///< pixels since the button went down in the picture
    std::optional<FileDialog> file_dialog;
    std::optional<ExportDialog> export_dialog;
    std::optional<DescribeDialog> describe_dialog;
    std::optional<Command> pending;  ///< waits for the answer about unsaved work
    bool saving_for_pending = false;
    std::set<std::uint64_t> agreed_to_lose;  ///< setups whose changes may go with what waits
    bool save_was_requested = false;
    std::optional<std::size_t> keyboard_row;  ///< of the list of parts, last seen
    bool focus_name = false;
    std::optional<ActionSearch> search;
    bool recovery_put_off = false;   ///< unsaved work that was found is asked about no more
    std::uint64_t setup_seen = 0;    ///< that the row of setups was scrolled to
    bool start_page_wanted = false;  ///< the start page opens
    bool steps_wanted = false;       ///< the list of changes opens
    std::string
        panel_wanted;  ///< the window that gets the keyboard at this frame's end; empty: none
    std::string view_bar_window;  ///< the name of the foot of the picture
    std::string page_wanted;      ///< the page to read that opens; empty: none
    std::string pointed_label;    ///< of the widget under the pointer, or that has the keyboard
    std::string glossary_typed;   ///< what is sought among the words of the trade
    std::optional<std::string> story_draft;  ///< while the story is being written
    MeasurementDraft measurement;            ///< of the home measurements
    SightRequest sight;                      ///< what each eye is to see
    bool sight_fits = true;  ///< as close as suits the subject, until the user goes elsewhere
    UnfoldedPathState unfolded;
    std::optional<HandleDrag> handle_drag;  ///< of a knob in the picture
    int knobs_of = -1;         ///< part whose knobs are shown because it is or was just pointed at
    bool talk_wanted = false;  ///< the list of tours opens
    TourEditState tour_edit;   ///< of the panel of tours
    std::optional<TalkState> talk;  ///< while one is given
    bool notices_dismissed = false;
    std::string dismissed_error;
};

struct Ui {
    const View& view;
    Session& session;
    TransientState& state;
    Requests& requests;
    WidgetLog* log = nullptr;

    [[nodiscard]] const Setup& setup() const { return view.document.setup; }
    /// Says what the last widget is: its name for tests, its words, its help, which is shown as a tooltip too.
    void describe(std::string_view name, std::string_view label, std::string_view help) const;
    /// The same of what shows no tooltip: words, or a part of the picture.
    void note(std::string_view name, std::string_view label = {}, std::string_view help = {}) const;
    void hover_part(std::optional<std::size_t> part) const;
    void edit(Edit edit) const { requests.edits.push_back(std::move(edit)); }
    /// Begins and ends an undo step with the press and release of the last widget.
    void one_gesture() const;
};

}  // namespace beamfork
