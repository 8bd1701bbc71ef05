// A window without a window: the interface on a document with its history, driven by mouse and keys as a user
// would, with no graphics. Widgets are found by the names under which they log themselves.
#pragma once

#include <functional>
#include <stdexcept>

#include "desk/workbench.hpp"
#include "scene/sample_setups.hpp"
#include "study/cures/cure_search.hpp"
#include "ui/interface.hpp"
#include "ui/kit/theme.hpp"
#include "ui/window_ui.hpp"

#include <doctest/doctest.h>
#include <imgui.h>
#include <imgui_internal.h>

namespace beamfork {

class Desk {
public:
    explicit Desk(Setup setup = short_setup(), ImVec2 size = {1600, 1300})
        : bench({Document{std::move(setup), {}, {}, {}}, {}}, 0, least_effort()) {
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
            bench.refresh();
            draw_interface(view(), std::exchange(events, {}), session, transient, requests);
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
        bench.adopt_cures(bench.report_revision(), find_cures(setup(), report()));
        frame(2);
    }
    [[nodiscard]] const Report& report() const {
        if (bench.report() == nullptr) throw std::runtime_error(bench.report_error());
        return *bench.report();
    }
    [[nodiscard]] const Frame& picture() const { return bench.frame(); }
    [[nodiscard]] const History& history() const { return bench.history(); }
    void undo() { bench.carry_out(Undo{}); }
    /// In place of what is open, as one change.
    void put(const Setup& setup) {
        DeskRequests change;
        change.edits.emplace_back(ReplaceSetup{setup, "Change"});
        bench.carry_out(change);
    }

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

    [[nodiscard]] const Setup& setup() const { return bench.document().setup; }
    template <class Kind>
    const Kind& the() const {
        const auto* found = find_part<Kind>(setup());
        REQUIRE(found != nullptr);
        return *found;
    }
    template <class Kind>
    std::size_t index() const {
        for (std::size_t i = 0; i < setup().parts.size(); ++i) {
            if (setup().parts[i].body.is<Kind>()) return i;
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

    Workbench bench;
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
    std::vector<Notice> notices;
    std::vector<DemoEntry> demos;
    WindowEvents events;                       ///< of the next frame
    std::vector<OpenSetupEntry> other_setups;  ///< behind the one that is worked on, number 1
    std::vector<LostWorkEntry> lost_work;
    std::vector<RecoveryAnswer> recovery_answers;  ///< all that were given
    std::optional<TuneStudy> tune;  ///< as the window's background work would hand it over

private:
    static WorkEffort least_effort() {
        return {ClippingEffort{16}, ClippingEffort{16}, PictureEffort{4, 4, 0, 4, 8, 12}};
    }

    [[nodiscard]] View view() const {
        DeskView desk = bench.view();
        desk.setups.front().number = desk.shown_setup = 1;
        desk.setups.insert(desk.setups.end(), other_setups.begin(), other_setups.end());
        desk.notices = notices;
        return {.document = bench.document(),
                .report = bench.report(),
                .report_error = bench.report_error(),
                .picture = {bench.frame(), other_frame},
                .desk = std::move(desk),
                .files = {demos, lost_work},
                .exporting = exporting,
                .comparison = comparison,
                .tune = {tune ? std::make_shared<const TuneStudy>(*tune) : nullptr}};
    }

    // What opens, closes and quits is only written down.
    void carry_out(const Requests& requests) {
        DeskRequests asked = requests.desk;
        std::erase_if(asked.commands, [](const Command& command) {
            return changes_document(command) || std::holds_alternative<Quit>(command);
        });
        bench.carry_out(asked);
        edits.insert(edits.end(), requests.desk.edits.begin(), requests.desk.edits.end());
        commands.insert(commands.end(), requests.desk.commands.begin(),
                        requests.desk.commands.end());
        gestures_began += requests.desk.gesture_began ? 1 : 0;
        gestures_ended += requests.desk.gesture_ended ? 1 : 0;
        if (requests.files.recovery) {
            recovery_answers.push_back(*requests.files.recovery);
            lost_work.erase(lost_work.begin());
        }
        bench.refresh();
        if (requests.exporting.order) exports.push_back(*requests.exporting.order);
        gave_up = gave_up || requests.exporting.gives_up;
    }

    void wait_past_double_click() {
        ImGui::GetIO().DeltaTime = 1;
        frame();
        ImGui::GetIO().DeltaTime = 1 / 60.0F;
    }

    ImGuiContext* context_ = nullptr;
};

}  // namespace beamfork
