// What every panel is given: the document and its report, what is selected and pointed at, and the ways to ask for a change.
// What belongs to one feature alone comes beside it: `struct TuneUi : Ui` adds what the panel "tune" reads, keeps and asks.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ui/kit/chord.hpp"

#include <imgui.h>

namespace beamfork {

struct DeskRequests;
struct Document;
struct Edit;
struct Report;
struct Setup;

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

/// When the next frame is wanted though nothing happens.
struct FramePace {
    bool animating = false;           ///< something moves: draw again soon
    bool light_runs = false;          ///< as above, slowly: no reason to draw less well
    std::optional<double> wake_in_s;  ///< draw again then
    void wake_within(double seconds) {
        if (!wake_in_s || *wake_in_s > seconds) wake_in_s = seconds;
    }
};

/// What all panels keep together from frame to frame.
struct UiState {
    int hovered_part = -1;         ///< of this frame
    int hovered_part_before = -1;  ///< of the frame before: what is highlighted
    std::string pointed_label;     ///< of the widget under the pointer, or that has the keyboard
    bool gesture_open = false;     ///< an undo step has begun and not ended
    HeldKeys held_before;          ///< in the frame before
};

/// A line of the page of keys.
struct KeyRow {
    std::string group;
    std::string label;
    std::string keys;
};

/// The actions of the whole window by their names, for buttons and hints: whoever shows one need not know who carries it out.
/// A name that no action has breaks the contract.
class NamedActions {
public:
    NamedActions() = default;
    virtual ~NamedActions() = default;
    NamedActions(const NamedActions&) = delete;
    NamedActions& operator=(const NamedActions&) = delete;
    NamedActions(NamedActions&&) = delete;
    NamedActions& operator=(NamedActions&&) = delete;
    [[nodiscard]] virtual std::string keys_text(std::string_view name) const = 0;
    [[nodiscard]] virtual bool can(std::string_view name) const = 0;
    virtual void run(std::string_view name) const = 0;
    [[nodiscard]] virtual std::vector<KeyRow> key_rows() const = 0;
};

struct Ui {
    const Document& document;
    const Report* report = nullptr;  ///< null while the setup makes no train
    std::optional<std::size_t>& selected_part;
    UiState& kept;
    DeskRequests& desk_requests;
    FramePace& pace;
    const NamedActions& actions;
    WidgetLog* log = nullptr;  ///< null in the program

    [[nodiscard]] const Setup& setup() const;
    /// This much of a wider context, to begin a narrower one with.
    [[nodiscard]] const Ui& shared() const { return *this; }
    /// Says what the last widget is: its name for tests, its words, its help, which is shown as a tooltip too.
    void describe(std::string_view name, std::string_view label, std::string_view help) const;
    /// The same of what shows no tooltip: words, or a part of the picture.
    void note(std::string_view name, std::string_view label = {}, std::string_view help = {}) const;
    void hover_part(std::optional<std::size_t> part) const;
    void edit(Edit edit) const;
    /// Begins and ends an undo step with the press and release of the last widget.
    void one_gesture() const;
    /// "Ctrl+S", of the action of that name.
    [[nodiscard]] std::string keys_text(std::string_view action) const;
    /// "Takes it out. Delete"
    [[nodiscard]] std::string with_keys(std::string_view sentence, std::string_view action) const;
};

}  // namespace beamfork
