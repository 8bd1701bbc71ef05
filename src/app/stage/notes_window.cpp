#include "app/stage/notes_window.hpp"

#include <utility>

#include "app/stage/full_screen.hpp"
#include "ui/kit/theme.hpp"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>

#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

namespace beamfork {

void NotesWindow::Close::operator()(GLFWwindow* window) const { glfwDestroyWindow(window); }

void NotesWindow::open() {
    const DesktopArea at = place_for_notes(main_);
    const bool on_same_screen = !has_second_screen();
    glfwWindowHint(GLFW_FLOATING, on_same_screen ? GLFW_TRUE : GLFW_FALSE);  // above the talk
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_FALSE);
    glfwWindowHint(GLFW_FOCUS_ON_SHOW, GLFW_FALSE);
    window_.reset(glfwCreateWindow(at.width, at.height, "Beamfork: notes", nullptr, main_));
    glfwWindowHint(GLFW_FLOATING, GLFW_FALSE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
    glfwWindowHint(GLFW_FOCUS_ON_SHOW, GLFW_TRUE);
    was_refused_ = window_ == nullptr;
    if (was_refused_) return;
    glfwSetWindowPos(window_.get(), at.left, at.top);
    glfwSetWindowUserPointer(window_.get(), main_);
    glfwSetKeyCallback(window_.get(),
                       [](GLFWwindow* here, int key, int code, int action, int held) {
                           auto* main = static_cast<GLFWwindow*>(glfwGetWindowUserPointer(here));
                           ImGui_ImplGlfw_KeyCallback(main, key, code, action, held);
                       });
    glfwMakeContextCurrent(window_.get());
    glfwSwapInterval(0);  // the main window keeps the pace
    glfwMakeContextCurrent(main_);
}

void paint_speaker_page(const SpeakerPage& page, int width, int height) {
    const ImVec2 size{static_cast<float>(width), static_cast<float>(height)};
    ImDrawList list(ImGui::GetDrawListSharedData());
    list._ResetForNewFrame();
    list.PushTextureID(font(TextFace::large)->ContainerAtlas->TexID);
    list.PushClipRect({0, 0}, size);
    draw_speaker_page(list, size, page);
    ImDrawData data;
    data.Valid = true;
    data.DisplaySize = size;
    data.FramebufferScale = {1, 1};
    data.AddDrawList(&list);
    ImGui_ImplOpenGL3_RenderDrawData(&data);
}

void NotesWindow::draw(const SpeakerPage& page) {
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(window_.get(), &width, &height);
    if (width < 1 || height < 1) return;
    glfwMakeContextCurrent(window_.get());
    paint_speaker_page(page, width, height);
    glfwSwapBuffers(window_.get());
    glfwMakeContextCurrent(main_);
}

void NotesWindow::show(const std::optional<SpeakerPage>& page) {
    if (window_ && glfwWindowShouldClose(window_.get()) == GLFW_TRUE) {
        was_closed_ = true;
        window_.reset();
        glfwMakeContextCurrent(main_);
        return;
    }
    if (!page) {
        if (window_) window_.reset();
        was_refused_ = false;
        return;
    }
    if (!window_ && !was_refused_) open();
    if (window_) draw(*page);
}

bool NotesWindow::take_closed() { return std::exchange(was_closed_, false); }

}  // namespace beamfork
