#include "app/window/window.hpp"

#include <algorithm>
#include <deque>
#include <iostream>
#include <memory>

#include "app/comparison/comparison_desk.hpp"
#include "app/desk/recovery.hpp"
#include "app/desk/session_store.hpp"
#include "app/export/export_desk.hpp"
#include "app/finders/cure_finder.hpp"
#include "app/sight_view/sight_stage.hpp"
#include "app/sight_view/told_sight.hpp"
#include "app/stage/full_screen.hpp"
#include "app/stage/gui.hpp"
#include "app/stage/notes_window.hpp"
#include "app/stage/stage_pair.hpp"
#include "app/tune/tune_finder.hpp"
#include "app/window/demo_pictures.hpp"
#include "app/window/end_signals.hpp"
#include "app/window/frame_clock.hpp"
#include "base/shown.hpp"
#include "desk/setup_row.hpp"
#include "render/load_gl.hpp"
#include "render/night_pass.hpp"
#include "ui/talk/talk_overlay.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

namespace beamfork {

namespace {

struct CloseWindow {
    void operator()(GLFWwindow* window) const { glfwDestroyWindow(window); }
};
using WindowHandle = std::unique_ptr<GLFWwindow, CloseWindow>;

// Starts the window library and ends it behind everything that uses it.
class WindowLibrary {
public:
    static Result<WindowLibrary> start() {
        if (glfwInit() == GLFW_TRUE) return WindowLibrary();
        const char* reason = nullptr;
        glfwGetError(&reason);
        return fail(ErrorCode::no_graphics,
                    fmt::format("no window can be opened here ({}); 'beamfork picture' and "
                                "'beamfork check' need no "
                                "display",
                                reason ? reason : "no display"));
    }
    WindowLibrary(const WindowLibrary&) = delete;
    WindowLibrary& operator=(const WindowLibrary&) = delete;
    WindowLibrary(WindowLibrary&& other) noexcept
        : started_(std::exchange(other.started_, false)) {}
    WindowLibrary& operator=(WindowLibrary&&) = delete;
    ~WindowLibrary() {
        if (started_) glfwTerminate();
    }

private:
    WindowLibrary() = default;
    bool started_ = true;
};

Result<WindowHandle> open_window() {
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
    int width = 1600;
    int height = 900;
    if (GLFWmonitor* monitor = glfwGetPrimaryMonitor()) {
        int x = 0;
        int y = 0;
        int free_width = width;
        int free_height = height;
        glfwGetMonitorWorkarea(monitor, &x, &y, &free_width, &free_height);
        width = std::min(width, free_width);
        height = std::min(height, free_height);
    }
    WindowHandle window(glfwCreateWindow(width, height, "Beamfork", nullptr, nullptr));
    if (!window)
        return fail(ErrorCode::no_graphics,
                    "this machine offers no OpenGL 3.3, which the window needs");
    glfwSetWindowSizeLimits(window.get(), 480, 320, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(window.get());
    glfwSwapInterval(1);
    if (!load_gl(reinterpret_cast<GlAddress (*)(const char*)>(glfwGetProcAddress))) {
        return fail(ErrorCode::no_graphics,
                    "the OpenGL functions of this machine's driver cannot be loaded");
    }
    return window;
}

float content_scale(GLFWwindow* window) {
    float x = 1;
    float y = 1;
    glfwGetWindowContentScale(window, &x, &y);
    return std::clamp(x, 0.5F, 4.0F);
}

std::string window_title(const Workbench& bench) {
    const std::string name =
        bench.path().empty() ? bench.document().setup.title : bench.path().filename().string();
    return fmt::format("{}{} - Beamfork", bench.is_modified() ? "* " : "", shown_in_line(name));
}

std::optional<double> sooner(std::optional<double> a, std::optional<double> b) {
    if (!a || !b) return a ? a : b;
    return std::min(*a, *b);
}

void wait_for(const FramePause& pause) {
    if (!pause.sleeps) {
        glfwPollEvents();
    } else if (pause.at_most_s) {
        glfwWaitEventsTimeout(*pause.at_most_s);
    } else {
        glfwWaitEvents();
    }
}

// What draws into the window.
struct Drawing {
    Gui gui;
    StagePair stage;
    NightScreen screen;
};

class MainWindow {
public:
    MainWindow(
        GLFWwindow* window, Drawing drawing, SetupRow row, Session session, bool starts_empty)
        : window_(window),
          gui_(std::move(drawing.gui)),
          stage_(std::move(drawing.stage)),
          screen_(std::move(drawing.screen)),
          row_(std::move(row)),
          session_(std::move(session)),
          starts_empty_(starts_empty) {
        glfwSetWindowUserPointer(window_, this);
        glfwSetDropCallback(window_, [](GLFWwindow* at, int count, const char** files) {
            auto* here = static_cast<MainWindow*>(glfwGetWindowUserPointer(at));
            here->dropped_files_.insert(here->dropped_files_.end(), files, files + count);
        });
    }
    ~MainWindow() { glfwSetDropCallback(window_, nullptr); }
    MainWindow(const MainWindow&) = delete;
    MainWindow& operator=(const MainWindow&) = delete;
    MainWindow(MainWindow&&) = delete;
    MainWindow& operator=(MainWindow&&) = delete;

    Result<void> run() {
        while (!row_.wants_to_quit()) {
            wait_for(clock_.before_next_frame(
                ImGui::GetIO().WantTextInput,
                sooner(recovery_.seconds_left(glfwGetTime()), wake_in_s_)));
            // The system ends the program: what is unsaved stays behind as after a crash, unasked.
            if (signals_.was_asked()) return {};
            if (auto drawn = frame(); !drawn) return drawn;
        }
        recovery_.close();
        return {};
    }

    [[nodiscard]] const Session& session() const { return session_; }
    [[nodiscard]] const SetupRow& row() const { return row_; }

private:
    // In a talk letters follow the screen's height, whatever the user reads with.
    [[nodiscard]] float letter_scale(float density) const {
        int width = 0;
        int height = 0;
        glfwGetWindowSize(window_, &width, &height);
        if (!transient_.is_giving_talk() || height < 1) return density * session_.layout.text_scale;
        return talk_scale(static_cast<float>(height));
    }

    [[nodiscard]] View view_of_now() const {
        const Workbench& bench = row_.shown();
        DeskView desk = row_.view();
        ComparisonView comparison = comparison_.view(desk);
        return {.document = bench.document(),
                .report = bench.report(),
                .report_error = bench.report_error(),
                .picture = {bench.frame(), bench.other_frame(), as_imgui_texture(stage_.texture()),
                            as_imgui_texture(stage_.other_texture()), told_sight_.texture()},
                .desk = std::move(desk),
                .files = {demo_pictures_.entries(), recovery_.lost_work()},
                .exporting = exports_.state(),
                .comparison = std::move(comparison),
                .sight = sights_.view(),
                .tune = {tune_.study()},
                .talk = {has_second_screen()}};
    }

    // Each is told once.
    WindowEvents take_events() {
        WindowEvents events{.starts_empty =
                                std::exchange(starts_empty_, false) || row_.take_emptied(),
                            .close_asked = glfwWindowShouldClose(window_) == GLFW_TRUE,
                            .notes_closed = notes_.take_closed()};
        glfwSetWindowShouldClose(window_, GLFW_FALSE);
        if (!dropped_files_.empty()) {  // one a frame
            events.dropped_file = std::move(dropped_files_.front());
            dropped_files_.pop_front();
        }
        return events;
    }

    // What the frame asked for is done, and what others have worked out is taken. Whether there is something new to show.
    bool carry_out(const Requests& requests) {
        row_.carry_out(requests.desk, session_.pose);
        recovery_.answer(requests.files.recovery, row_, session_.pose);
        recovery_.keep(row_, glfwGetTime());
        Workbench& bench = row_.shown();
        bool has_news = comparison_.refresh(bench, requests.comparison, &row_);
        bench.pull_apart(session_.view.apart);
        bench.tell_step(requests.picture.told_step);
        has_news |= bench.refresh();
        has_news |= told_sight_.show(bench.told_sight());
        has_news |= demo_pictures_.refresh(requests.files.wants_demo_pictures);
        has_news |= sights_.refresh(bench, requests.sight);
        has_news |= cures_.refresh(bench);
        has_news |= tune_.refresh(bench, requests.tune);
        has_news |= exports_.refresh(bench, requests.exporting);
        return has_news || !requests.desk.edits.empty() || requests.desk.gesture_ended
               || !requests.desk.commands.empty() || requests.files.recovery
               || requests.comparison.keeps;
    }

    Result<bool> draw_picture(const Requests& requests, float pixel_scale) {
        const bool is_moving = requests.pace.animating || ImGui::IsAnyMouseDown();
        const PictureRequests& picture = requests.picture;
        const Stage::Look look{
            session_.pose.camera, session_.view, picture.scene, picture.highlighted_part,
            pixel_scale,          is_moving,     false,         picture.emphasis};
        const Workbench& bench = row_.shown();
        return stage_.show(bench.frame(), picture.shows_other_half ? bench.other_frame() : nullptr,
                           look);
    }

    void entitle() {
        const std::string title = window_title(row_.shown());
        if (title == title_) return;
        title_ = title;
        glfwSetWindowTitle(window_, title_.c_str());
    }

    Result<void> frame() {
        const float density = content_scale(window_);
        const float letters = letter_scale(density);
        gui_.begin(letters);
        if (view_is_old_ || view_->talk.has_second_screen != has_second_screen())
            view_.emplace(view_of_now());
        Requests requests;
        draw_interface(*view_, take_events(), session_, transient_, requests);

        int width = 0;
        int height = 0;
        glfwGetFramebufferSize(window_, &width, &height);
        if (auto ready = screen_.begin(width, height, session_.view.night); !ready) return ready;
        gui_.end();
        screen_.end(session_.view.night_brightness);
        glfwSwapBuffers(window_);
        notes_.show(requests.speaker);
        full_screen_.set(window_, transient_.is_giving_talk());
        wake_in_s_ = requests.pace.wake_in_s;

        const bool has_news = carry_out(requests);
        entitle();
        const auto drew = draw_picture(requests, transient_.is_giving_talk() ? letters : density);
        if (!drew) return tl::make_unexpected(drew.error());
        view_is_old_ = has_news || *drew;
        const bool is_busy = view_is_old_ || requests.pace.animating || requests.pace.light_runs
                             || !dropped_files_.empty();
        if (is_busy || Gui::has_waiting_input()) clock_.keep_going();
        return {};
    }

    GLFWwindow* window_;
    Gui gui_;
    StagePair stage_;
    NightScreen screen_;
    SetupRow row_;
    Session session_;
    SightStage sights_{[] { glfwPostEmptyEvent(); }};
    ToldSight told_sight_;
    CureFinder cures_{[] { glfwPostEmptyEvent(); }};
    TuneFinder tune_{[] { glfwPostEmptyEvent(); }};
    RecoveryDesk recovery_{recovery_folder()};
    EndSignals signals_{[] { glfwPostEmptyEvent(); }};
    ExportDesk exports_{this_program(), [] { glfwPostEmptyEvent(); }};
    ComparisonDesk comparison_;
    DemoPictures demo_pictures_;
    Transient transient_;
    FrameClock clock_;
    FullScreen full_screen_;
    NotesWindow notes_{window_};
    std::optional<double> wake_in_s_;
    std::optional<View> view_;
    bool view_is_old_ = true;  ///< something has changed since it was made
    std::string title_;
    std::deque<std::string> dropped_files_;
    bool starts_empty_;
};

}  // namespace

Result<void> run_window(const WindowStart& start) {
    const auto library = WindowLibrary::start();
    if (!library) return tl::make_unexpected(library.error());
    const auto window = open_window();
    if (!window) return tl::make_unexpected(window.error());
    auto gui = Gui::create(window->get());
    if (!gui) return tl::make_unexpected(gui.error());
    auto stage = StagePair::create();
    if (!stage) return tl::make_unexpected(stage.error());
    auto screen = NightScreen::create();
    if (!screen) return tl::make_unexpected(screen.error());

    const auto stored_at = session_path();
    StoredSession stored = load_session(stored_at);
    SetupRow row(start.opened);
    row.set_recent_files(stored.recent_files);
    if (!start.file_path.empty()) row.shown().adopt_path(start.file_path);
    const bool is_reopened =
        start.is_empty && row.reopen(stored.open_files, stored.shown_file, stored.session.pose);
    MainWindow main_window(window->get(), {*std::move(gui), *std::move(stage), *std::move(screen)},
                           std::move(row), stored.session, start.is_empty && !is_reopened);
    if (auto ended = main_window.run(); !ended) return ended;
    const SetupRow& left = main_window.row();
    if (auto kept = store_session(stored_at, {main_window.session(), left.recent_files(),
                                              left.open_files(), left.shown_file()});
        !kept) {
        std::cerr << "beamfork: the window's arrangement was not kept: " << to_text(kept.error())
                  << '\n';
    }
    return {};
}

}  // namespace beamfork
