// The window over all of the screen that it stands on, and back to where it stood. GLFW alone.
#pragma once

struct GLFWwindow;

namespace beamfork {

class FullScreen {
public:
    /// Does nothing when the window is so already, or when no screen is known.
    void set(GLFWwindow* window, bool wanted);

private:
    bool is_on_ = false;
    int left_ = 0;
    int top_ = 0;
    int width_ = 0;
    int height_ = 0;
};

bool has_second_screen();

/// A rectangle of the desktop, in the system's units.
struct DesktopArea {
    int left = 0;
    int top = 0;
    int width = 0;
    int height = 0;
};

/// Where the speaker's notes go: all of a screen that the window is not on, else a corner of its own.
DesktopArea place_for_notes(GLFWwindow* window);

}  // namespace beamfork
