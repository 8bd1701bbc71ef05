// The whole window drawn into memory and driven by mouse and keys: widgets are found by the names under which they
// log themselves. One at a time: it brings Dear ImGui's and the graphics' contexts with it.
#pragma once

#include "app/stage/window_painter.hpp"
#include "desk/open_setup.hpp"
#include "ui/window_ui.hpp"

#include <doctest/doctest.h>
#include <imgui.h>

namespace beamfork {

class PaintedWindow {
public:
    explicit PaintedWindow(const std::string& demo, WindowPainter::Size size = {1280, 720}) {
        const auto read = open_named(demo);
        REQUIRE(read.has_value());
        auto made = WindowPainter::create(read->document, size);
        REQUIRE_MESSAGE(made.has_value(), (made ? "" : to_text(made.error())));
        painter_ = *std::move(made);
        painter_->transient.widget_log = &log;
        session().welcome_dismissed = true;
        frames(3);
    }

    [[nodiscard]] WindowPainter& painter() { return *painter_; }
    [[nodiscard]] Session& session() { return painter_->session; }

    void frames(int count) {
        for (; count > 0; --count)
            REQUIRE(painter_->frame().has_value());
    }
    void key(ImGuiKey key, int held = 0) {
        ImGuiIO& io = ImGui::GetIO();
        const auto set_all = [&](bool down) {
            for (const ImGuiKey modifier : {ImGuiMod_Ctrl, ImGuiMod_Shift, ImGuiMod_Alt})
                if ((held & modifier) != 0) io.AddKeyEvent(modifier, down);
        };
        set_all(true);
        io.AddKeyEvent(key, true);
        frames(2);
        io.AddKeyEvent(key, false);
        set_all(false);
        frames(2);
    }
    void point_at(const std::string& widget) {
        REQUIRE_MESSAGE(log.widgets.contains(widget), widget);
        const LoggedWidget& at = log.widgets.at(widget);
        ImGui::GetIO().AddMousePosEvent((at.low.x + at.high.x) / 2, (at.low.y + at.high.y) / 2);
        frames(2);
    }
    void click(const std::string& widget) {
        point_at(widget);
        ImGui::GetIO().AddMouseButtonEvent(0, true);
        frames(1);
        ImGui::GetIO().AddMouseButtonEvent(0, false);
        frames(2);
    }
    /// The pointer out of the way; flights have ended, popups have found their sizes, tooltips have come.
    void settle(bool keeps_pointer = false) {
        if (!keeps_pointer) ImGui::GetIO().AddMousePosEvent(1, 1);
        frames(28);
    }
    [[nodiscard]] Image image() {
        auto image = painter_->image();
        REQUIRE(image.has_value());
        return *std::move(image);
    }

    WidgetLog log;

private:
    std::unique_ptr<WindowPainter> painter_;
};

}  // namespace beamfork
