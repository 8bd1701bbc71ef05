#include "app/stage/gui.hpp"

#include <utility>

#include "ui/kit/theme.hpp"

#include <imgui.h>
#include <imgui_internal.h>  // the input queue has no public face

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

namespace beamfork {

Result<Gui> Gui::create(GLFWwindow* window) {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    const bool has_input = window == nullptr || ImGui_ImplGlfw_InitForOpenGL(window, true);
    if (!has_input || !ImGui_ImplOpenGL3_Init("#version 330 core")) {
        ImGui::DestroyContext();
        return fail(ErrorCode::no_graphics,
                    "the window's panels cannot be drawn on this graphics driver");
    }
    return Gui(window);
}

Gui::Gui(Gui&& other) noexcept
    : window_(other.window_), is_alive_(std::exchange(other.is_alive_, false)) {}

Gui::~Gui() {
    if (!is_alive_) return;
    ImGui_ImplOpenGL3_Shutdown();
    if (window_) ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
}

void Gui::begin(float scale, int width, int height) {
    if (set_theme(scale)) ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_NewFrame();  // makes the first picture of the fonts, and none later
    if (ImGui::GetIO().Fonts->TexID == ImTextureID{}) ImGui_ImplOpenGL3_CreateFontsTexture();
    if (window_) {
        ImGui_ImplGlfw_NewFrame();
    } else {
        ImGui::GetIO().DisplaySize = {static_cast<float>(width), static_cast<float>(height)};
        ImGui::GetIO().DeltaTime = 1.0F / 60;
    }
    ImGui::NewFrame();
}

void Gui::end() {
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

bool Gui::has_waiting_input() { return ImGui::GetCurrentContext()->InputEventsQueue.Size > 0; }

}  // namespace beamfork
