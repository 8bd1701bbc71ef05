// The window with the speaker's notes, beside the one that the room sees. It draws with the main window's letters, in
// a graphics context that shares its textures.
#pragma once

#include <memory>
#include <optional>

#include "ui/talk/speaker_page.hpp"

struct GLFWwindow;

namespace beamfork {

/// Draws the page over the framebuffer that is bound, so large. Between ImGui::Render and the next ImGui::NewFrame.
void paint_speaker_page(const SpeakerPage& page, int width, int height);

class NotesWindow {
public:
    /// Keys that are pressed in the notes are heard by `main`, whose context is current before and after each call.
    explicit NotesWindow(GLFWwindow* main) : main_(main) {}

    /// Opens the window when there is a page, draws it, closes it when there is none. Between ImGui::Render and the
    /// next ImGui::NewFrame. Where the system gives no second window there is none.
    void show(const std::optional<SpeakerPage>& page);
    /// The user has closed it since the last call.
    [[nodiscard]] bool take_closed();

private:
    struct Close {
        void operator()(GLFWwindow* window) const;
    };
    void open();
    void draw(const SpeakerPage& page);

    GLFWwindow* main_;
    std::unique_ptr<GLFWwindow, Close> window_;
    bool was_refused_ = false;
    bool was_closed_ = false;
};

}  // namespace beamfork
