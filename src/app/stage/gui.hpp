// Dear ImGui on the current OpenGL context: one frame of the interface from begin to end, with a window
// behind it or without.
#pragma once

#include "base/error.hpp"
#include "render/renderer.hpp"

#include <imgui.h>

struct GLFWwindow;

namespace beamfork {

/// For ImDrawList::AddImage.
inline ImTextureID as_imgui_texture(PictureTexture texture) {
    return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture));
}

class Gui {
public:
    /// `window` receives input; null: there is none and the size is told to begin().
    static Result<Gui> create(GLFWwindow* window);

    Gui(const Gui&) = delete;
    Gui& operator=(const Gui&) = delete;
    Gui(Gui&& other) noexcept;
    Gui& operator=(Gui&&) = delete;
    ~Gui();

    /// `scale` is the display's density times the text size; sizes in pixels matter without a window only.
    void begin(float scale, int width = 0, int height = 0);
    /// Draws into the framebuffer that is bound.
    void end();
    /// Dear ImGui takes in fast input over several frames: true while some of it still waits.
    [[nodiscard]] static bool has_waiting_input();

private:
    explicit Gui(GLFWwindow* window) : window_(window), is_alive_(true) {}
    GLFWwindow* window_ = nullptr;
    bool is_alive_ = false;
};

}  // namespace beamfork
