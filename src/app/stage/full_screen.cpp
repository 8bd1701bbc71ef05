#include "app/stage/full_screen.hpp"

#include <algorithm>
#include <span>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace beamfork {

namespace {

std::span<GLFWmonitor*> known_screens() {
    int count = 0;
    GLFWmonitor** monitors = glfwGetMonitors(&count);
    return {monitors, static_cast<std::size_t>(std::max(0, count))};
}

DesktopArea area_of(GLFWwindow* window) {
    DesktopArea area;
    glfwGetWindowPos(window, &area.left, &area.top);
    glfwGetWindowSize(window, &area.width, &area.height);
    return area;
}

DesktopArea area_of(GLFWmonitor* monitor) {
    DesktopArea area;
    glfwGetMonitorPos(monitor, &area.left, &area.top);
    if (const GLFWvidmode* mode = glfwGetVideoMode(monitor)) {
        area.width = mode->width;
        area.height = mode->height;
    }
    return area;
}

long long shared_area(const DesktopArea& a, const DesktopArea& b) {
    const int wide = std::min(a.left + a.width, b.left + b.width) - std::max(a.left, b.left);
    const int high = std::min(a.top + a.height, b.top + b.height) - std::max(a.top, b.top);
    return wide > 0 && high > 0 ? static_cast<long long>(wide) * high : 0;
}

// The screen that shows most of the window; null: none is known.
GLFWmonitor* screen_of(GLFWwindow* window) {
    GLFWmonitor* best = glfwGetPrimaryMonitor();
    long long most = 0;
    for (GLFWmonitor* monitor : known_screens()) {
        const long long shared = shared_area(area_of(window), area_of(monitor));
        if (shared > most) best = monitor;
        most = std::max(most, shared);
    }
    return best;
}

}  // namespace

void FullScreen::set(GLFWwindow* window, bool wanted) {
    if (wanted == is_on_) return;
    if (!wanted) {
        glfwSetWindowMonitor(window, nullptr, left_, top_, width_, height_, GLFW_DONT_CARE);
        is_on_ = false;
        return;
    }
    GLFWmonitor* screen = screen_of(window);
    const GLFWvidmode* mode = screen != nullptr ? glfwGetVideoMode(screen) : nullptr;
    if (mode == nullptr) return;
    glfwGetWindowPos(window, &left_, &top_);
    glfwGetWindowSize(window, &width_, &height_);
    // The window with the notes takes the keyboard without sending this one away.
    glfwSetWindowAttrib(window, GLFW_AUTO_ICONIFY, GLFW_FALSE);
    glfwSetWindowMonitor(window, screen, 0, 0, mode->width, mode->height, mode->refreshRate);
    is_on_ = true;
}

bool has_second_screen() { return known_screens().size() > 1; }

DesktopArea place_for_notes(GLFWwindow* window) {
    GLFWmonitor* const own = screen_of(window);
    for (GLFWmonitor* monitor : known_screens()) {
        if (monitor != own) return area_of(monitor);
    }
    const DesktopArea all = own != nullptr ? area_of(own) : area_of(window);
    const int width = all.width * 2 / 5;
    const int height = all.height / 2;
    return {all.left + all.width - width, all.top, width, height};
}

}  // namespace beamfork
