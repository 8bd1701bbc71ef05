// A window without a window: the interface on a document with its history, driven by mouse and keys as a user
// would, with no graphics. Widgets are found by the names under which they log themselves.
#pragma once

#include <functional>
#include <stdexcept>

#include "document/history.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "study/cures/cure_search.hpp"
#include "ui/shell/interface.hpp"
#include "ui/shell/ui.hpp"

#include <doctest/doctest.h>
#include <imgui.h>
#include <imgui_internal.h>

namespace beamfork {

class Desk {
public:
    explicit Desk(Setup setup = short_setup(), ImVec2 size = {1600, 1300})
        : history(Document{std::move(setup), {}, {}, {}}) {
        static ImFontAtlas fonts;  // loading them takes most of a second
        context_ = ImGui::CreateContext(&fonts);
        ImGui::SetCurrentContext(context_);
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = size;
        io.DeltaTime = 1 / 60.0F;
        set_theme(1);
        unsigned char* pixels = nullptr;
        io.Fonts->GetTexDataAsAlpha8(&pixels, nullptr, nullptr);
        transient.widget_log = &log;
        session.welcome_dismissed = true;
        refresh();
        frame(3);
    }
    ~Desk() { ImGui::DestroyContext(context_); }
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;
    Desk(Desk&&) = delete;
    Desk& operator=(Desk&&) = delete;

    void frame(int count = 1) {
        for (; count > 0; --count) {
            ImGui::NewFrame();
            Requests requests;
            draw_interface(view(), session, transient, requests);
            ImGui::Render();
            last = requests;
            carry_out(requests);
        }
    }

    [[nodiscard]] bool has(const std::string& name) const { return log.widgets.contains(name); }
    [[nodiscard]] const LoggedWidget& widget(const std::string& name) const {
        if (!has(name)) throw std::runtime_error("no widget " + name);
        return log.widgets.at(name);
    }
    /// A place inside the widget, as shares of its width and height.
    [[nodiscard]] ImVec2
    place(const std::string& name, float across = 0.5F, float down = 0.5F) const {
        const LoggedWidget& at = widget(name);
        return {at.low.x + (at.high.x - at.low.x) * across,
                at.low.y + (at.high.y - at.low.y) * down};
    }

    /// As the window does in the background.
    void seek_cures() {
        add_cures(setup(), report_.value());
        frame(2);
    }
    [[nodiscard]] const Report& report() const { return report_.value(); }
    [[nodiscard]] const Frame& picture() const { return picture_; }

    void move(ImVec2 to) {
        ImGui::GetIO().AddMousePosEvent(to.x, to.y);
        frame(2);
    }
    void press(int button = 0) {
        ImGui::GetIO().AddMouseButtonEvent(button, true);
        frame();
    }
    void release(int button = 0) {
        ImGui::GetIO().AddMouseButtonEvent(button, false);
        frame(2);
    }
    void click(const std::string& name, int button = 0) {
        move(place(name));
        press(button);
        release(button);
        wait_past_double_click();
    }
    void double_click(const std::string& name) {
        move(place(name));
        for (int i = 0; i < 2; ++i) {
            press();
            release();
        }
        wait_past_double_click();
    }
    void drag(ImVec2 from, ImVec2 to, int button = 0, int steps = 6) {
        move(from);
        press(button);
        for (int i = 1; i <= steps; ++i) {
            const float t = static_cast<float>(i) / static_cast<float>(steps);
            move({from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t});
        }
        release(button);
        wait_past_double_click();
    }
    void wheel(ImVec2 at, float notches) {
        move(at);
        ImGui::GetIO().AddMouseWheelEvent(0, notches);
        frame(2);
    }
    void key(ImGuiKey one, std::initializer_list<ImGuiKey> held = {}) {
        ImGuiIO& io = ImGui::GetIO();
        for (const ImGuiKey modifier : held)
            io.AddKeyEvent(modifier, true);
        io.AddKeyEvent(one, true);
        frame(2);
        io.AddKeyEvent(one, false);
        for (const ImGuiKey modifier : held)
            io.AddKeyEvent(modifier, false);
        frame(2);
    }
    void type(const std::string& text) {
        ImGui::GetIO().AddInputCharactersUTF8(text.c_str());
        frame(2);
    }
    /// Clicks into an entry and puts the text in place of what it holds.
    void retype(const std::string& name, const std::string& text, ImGuiKey end = ImGuiKey_Enter) {
        click(name);
        key(ImGuiKey_A, {ImGuiMod_Ctrl});
        type(text);
        key(end);
    }

    [[nodiscard]] const Setup& setup() const { return history.document()->setup; }
    template <class Kind>
    const Kind& the() const {
        const auto* found = find_part<Kind>(setup());
        REQUIRE(found != nullptr);
        return *found;
    }
    template <class Kind>
    std::size_t index() const {
        for (std::size_t i = 0; i < setup().parts.size(); ++i) {
            if (std::holds_alternative<Kind>(setup().parts[i].body)) return i;
        }
        throw std::runtime_error("no such part");
    }
    void select(std::size_t part) {
        session.pose.selected_part = part;
        frame(3);
    }
    /// The commands of one kind that were asked for so far.
    template <class Kind>
    [[nodiscard]] std::vector<Kind> asked() const {
        std::vector<Kind> found;
        for (const Command& command : commands) {
            if (const auto* one = std::get_if<Kind>(&command)) found.push_back(*one);
        }
        return found;
    }

    History history;
    Session session;
    Transient transient;
    WidgetLog log;
    Requests last;
    std::vector<Edit> edits;           ///< all that were asked for
    std::vector<Command> commands;     ///< likewise
    std::vector<ExportOrder> exports;  ///< likewise
    bool gave_up = false;              ///< an export
    ExportState exporting;
    ComparisonView comparison{};
    const Frame* other_frame = nullptr;  ///< of the picture's right half
    int gestures_began = 0;
    int gestures_ended = 0;
    std::string file_path;
    std::vector<Notice> notices;
    std::vector<DemoEntry> demos;
    std::vector<std::string> recent_files;
    bool starts_empty = false;
    std::vector<OpenSetupEntry> other_setups;  ///< behind the one that is worked on, number 1
    Message message;
    std::vector<LostWorkEntry> lost_work;
    std::vector<RecoveryAnswer> recovery_answers;  ///< all that were given
    std::string dropped_file;
    bool close_asked = false;
    bool saving_fails = false;
    std::string refused;
    std::optional<TuneStudy> tune;  ///< as the window's background work would hand it over

private:
    View view() {
        View now{.document = *history.document(), .frame = picture_};
        now.report = report_ ? &*report_ : nullptr;
        now.report_error = report_error_;
        now.tune = tune ? &*tune : nullptr;
        now.file_path = file_path;
        now.modified = history.is_modified();
        now.can_undo = history.can_undo();
        now.can_redo = history.can_redo();
        now.undo_label = history.undo_label();
        now.redo_label = history.redo_label();
        now.steps = history.labels();
        now.step_position = history.position();
        now.notices = notices;
        now.demos = demos;
        now.setups = {{1, setup().title, file_path, history.is_modified()}};
        now.setups.insert(now.setups.end(), other_setups.begin(), other_setups.end());
        now.shown_setup = 1;
        now.recent_files = recent_files;
        now.starts_empty = std::exchange(starts_empty, false);
        now.lost_work = lost_work;
        now.message = message;
        now.dropped_file = std::exchange(dropped_file, {});
        now.exporting = exporting;
        now.comparison = comparison;
        now.other_frame = other_frame;
        now.close_asked = std::exchange(close_asked, false);
        return now;
    }

    void carry_out(const Requests& requests) {
        const auto before = history.document();
        if (requests.gesture_began) {
            ++gestures_began;
            history.begin_gesture();
        }
        for (const Edit& edit : requests.edits) {
            edits.push_back(edit);
            const Document& now = *history.document();
            if (auto changed = apply(now, edit)) {
                history.commit(*changed, describe(edit, *history.settled()));
            } else {
                refused = changed.error().what;
            }
        }
        if (requests.gesture_ended) {
            ++gestures_ended;
            history.end_gesture();
        }
        if (requests.recovery) {
            recovery_answers.push_back(*requests.recovery);
            lost_work.erase(lost_work.begin());
        }
        if (requests.export_order) exports.push_back(*requests.export_order);
        gave_up = gave_up || requests.gives_up_export;
        for (const Command& command : requests.commands) {
            commands.push_back(command);
            if (std::holds_alternative<Undo>(command)) history.undo();
            if (std::holds_alternative<Redo>(command)) history.redo();
            if (const auto* step = std::get_if<GoToStep>(&command)) history.go_to(step->position);
            if (std::holds_alternative<SaveFile>(command) && !saving_fails) {
                file_path = std::get<SaveFile>(command).path.string();
                history.mark_saved();
            }
        }
        if (history.document() != before) refresh();
    }

    void refresh() {
        auto report = make_report(setup(), setup().chosen, ClippingEffort{16});
        if (report) {
            report_ = std::move(*report);
            picture_ = build_frame(setup(), *report_, PictureEffort{4, 4, 0, 4, 8, 12});
        } else {
            report_.reset();
            report_error_ = report.error().what;
        }
    }

    void wait_past_double_click() {
        ImGui::GetIO().DeltaTime = 1;
        frame();
        ImGui::GetIO().DeltaTime = 1 / 60.0F;
    }

    ImGuiContext* context_ = nullptr;
    std::optional<Report> report_;
    std::string report_error_;
    Frame picture_;
};

}  // namespace beamfork
