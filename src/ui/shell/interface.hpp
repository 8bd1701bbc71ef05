// The window's contents for one frame: it reads what is true, draws it, and asks for what the user wants.
// It changes nothing but the session and its own transient state; all else are requests that the app
// carries out between two frames.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "desk/desk_requests.hpp"
#include "desk/desk_view.hpp"
#include "desk/setup_pose.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/view_options.hpp"
#include "scene/sight_view/sight_view_picture.hpp"
#include "study/findings/report.hpp"
#include "study/tune/tune_study.hpp"
#include "ui/comparison/comparison_view.hpp"
#include "ui/export/export_order.hpp"
#include "ui/talk/speaker_page.hpp"

#include <imgui.h>

namespace beamfork {

/// A setup that the program carries within itself.
struct DemoEntry {
    std::string title;
    std::string story;
    std::string asset;      ///< "assets/demos/short_of_focus.train.toml"
    ImTextureID picture{};  ///< 16 : 9, row 0 at the top; null: none yet
};

/// Work that a window left unsaved when it broke down.
struct LostWorkEntry {
    std::string title;
    std::string file;  ///< empty: never saved
};
/// To the first of View::lost_work.
enum class RecoveryAnswer { restore, discard };

/// What is true now. References must live until draw_interface returns.
struct View {
    const Document& document;
    const Report* report = nullptr;      ///< null while the setup makes no train ...
    std::string report_error{};          ///< ... and why
    const Frame& frame;                  ///< the picture's data: of the last report there was
    const Frame* other_frame = nullptr;  ///< of the picture's right half; null: it is not split
    ImTextureID scene_texture{};         ///< the picture, row 0 at its bottom; null: none yet
    ImTextureID other_texture{};         ///< of the right half
    const Sights* sights = nullptr;      ///< what each eye sees; null: not traced yet
    ImTextureID sight_texture{};         ///< pictures of it, row 0 at the top; null: none yet ...
    SightRequest sight_shown{};          ///< ... and what was asked for
    const TuneStudy* tune = nullptr;  ///< the study "tune" as it was worked out last; null: not yet
    DeskView desk{};
    std::vector<DemoEntry> demos{};
    std::vector<LostWorkEntry> lost_work{};  ///< newest first
    std::string dropped_file{};              ///< onto the window, for one frame; empty: none
    ExportState exporting{};
    ComparisonView comparison{};
    bool has_second_screen = false;  ///< besides the one that the window is on
    bool notes_closed =
        false;  ///< the user has closed the window with the speaker's notes; for one frame
    bool starts_empty = false;  ///< the window was opened on nothing in particular; for one frame
    bool close_asked = false;   ///< the system asks to close the window; true for one frame
};

/// How the user has arranged things: saved between runs, not undone. Lengths in units of the text size, so that
/// they follow it.
struct Session {
    SetupPose pose;  ///< of the setup that is shown; not saved
    ViewOptions view;
    float text_scale = 1;                 ///< 0.75 .. 3
    float column_width = 24;              ///< of the column at the right
    float findings_width = 18;            ///< of the column at the left
    float strip_height = 17;              ///< of the strip at the bottom
    float train_share = 0.5F;             ///< of the column's height
    float budget_share = 0.36F;           ///< of the strip's width
    float light_share = 0.38F;            ///< likewise
    std::string study = "magnification";  ///< which study the strip's last place shows, by stem
    bool study_is_wide = false;           ///< that study has all of the strip
    bool parts_at_left =
        false;  ///< list of parts and their values at the left, findings at the right
    std::string narrow_shows =
        "focus_budget";            ///< in a narrow window the strip shows one panel: its stem
    bool narrow_findings = false;  ///< in a narrow window findings are folded, unless this is set
    std::set<std::string> folded;  ///< panels that show their heading only, by stem: "focus_budget"
    bool all_findings = false;     ///< false: only what fails or is poor, or else the first
    bool welcome_dismissed = false;
    std::string tune_varied;              ///< "Adapter.length_mm"; another setup may not have it
    std::string tune_watched = "margin";  ///< key of a watched result
    std::map<std::string, std::string> tune_wanted{{"margin", "5"}};  ///< as typed, by that key
    bool tune_whole_range = false;
    std::string compare_with;  ///< key of a choice; empty: nothing yet
    CompanionPlace compare_place = CompanionPlace::none;
    std::string folder;  ///< where the file dialog was last
};

/// Where the 3D picture goes. Pixels of the framebuffer; the picture is rendered at this size.
struct SceneArea {
    int width = 0;
    int height = 0;
    bool operator==(const SceneArea&) const = default;
};

/// What the user wants after this frame: of the open setups, and what else is to be shown or done.
struct Requests : DeskRequests {
    SceneArea scene;
    Emphasis emphasis{};                ///< of the picture
    std::optional<SightRequest> sight;  ///< pictures of what each eye sees; none: not shown
    std::optional<TuneQuestion> tune;   ///< the study "tune"; none: not shown
    std::optional<ComparisonRequest> comparison;  ///< none: with nothing
    bool shows_other_half = false;      ///< the picture is split: View::other_frame is drawn too
    bool keeps_for_comparison = false;  ///< the setup as it is now is kept aside
    std::optional<RecoveryAnswer> recovery;
    std::optional<ExportOrder> export_order;  ///< write this
    bool gives_up_export = false;             ///< end what is being written
    int highlighted_part = -1;                ///< under the pointer, in the picture or in a list
    bool wants_demo_pictures = false;         ///< those that View::demos lacks
    bool animating = false;                   ///< something moves: draw again soon
    bool light_runs = false;                  ///< as above, slowly: no reason to draw less well
    std::optional<double> wake_in_s;          ///< draw again then, though nothing happens
    std::optional<SpeakerPage> speaker;       ///< for a window of its own; none: no such window
    void wake_within(double seconds) {
        if (!wake_in_s || *wake_in_s > seconds) wake_in_s = seconds;
    }
};

struct WidgetLog;
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

/// Between ImGui::NewFrame and ImGui::Render. Fonts and style are theme.hpp's.
void draw_interface(const View& view, Session& session, Transient& transient, Requests& requests);

}  // namespace beamfork
