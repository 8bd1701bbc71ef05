#include "render/offscreen.hpp"

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <glad/gl.h>

#include <EGL/egl.h>
#include <EGL/eglext.h>

namespace beamfork {

namespace {

tl::unexpected<Error> refused(const std::string& step) {
    return fail(ErrorCode::no_graphics,
                "cannot draw without a display: " + step
                    + " (needs OpenGL 3.3 through EGL; on Debian: libegl1 and libgl1-mesa-dri)");
}

using GetDisplay = PFNEGLGETPLATFORMDISPLAYEXTPROC;

void add_surfaceless(std::vector<EGLDisplay>& displays, GetDisplay get_display) {
    const char* const listed = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
    const std::string_view extensions = listed == nullptr ? "" : listed;
    if (extensions.find("EGL_MESA_platform_surfaceless") == std::string_view::npos) return;
    displays.push_back(get_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr));
}

void add_devices(std::vector<EGLDisplay>& displays, GetDisplay get_display) {
    const auto query =
        reinterpret_cast<PFNEGLQUERYDEVICESEXTPROC>(eglGetProcAddress("eglQueryDevicesEXT"));
    if (query == nullptr) return;
    std::array<EGLDeviceEXT, 16> devices{};
    EGLint found = 0;
    if (query(static_cast<EGLint>(devices.size()), devices.data(), &found) == EGL_FALSE) return;
    for (EGLint i = 0; i < found; ++i) {
        displays.push_back(
            get_display(EGL_PLATFORM_DEVICE_EXT, devices.at(static_cast<std::size_t>(i)), nullptr));
    }
}

// All that need no screen, in the order in which they are tried.
std::vector<EGLDisplay> displays_without_screen() {
    std::vector<EGLDisplay> displays;
    const auto get_display =
        reinterpret_cast<GetDisplay>(eglGetProcAddress("eglGetPlatformDisplayEXT"));
    if (get_display == nullptr) return displays;
    add_surfaceless(displays, get_display);
    add_devices(displays, get_display);
    std::erase(displays, EGL_NO_DISPLAY);
    return displays;
}

}  // namespace

Result<OffscreenContext> OffscreenContext::create() {
    Result<OffscreenContext> tried = refused("no EGL platform that needs no screen");
    for (EGLDisplay const display : displays_without_screen()) {
        tried = on(display);
        if (tried) break;
    }
    return tried;
}

Result<OffscreenContext> OffscreenContext::on(void* display) {
    OffscreenContext made;
    if (eglInitialize(display, nullptr, nullptr) == EGL_FALSE) return refused("EGL does not start");
    made.display_ = display;
    if (eglBindAPI(EGL_OPENGL_API) == EGL_FALSE) return refused("EGL offers no OpenGL");
    const std::array<EGLint, 5> wanted{EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_SURFACE_TYPE,
                                       EGL_PBUFFER_BIT, EGL_NONE};
    EGLConfig config = nullptr;
    EGLint found = 0;
    eglChooseConfig(display, wanted.data(), &config, 1, &found);
    if (found < 1) return refused("no EGL configuration for OpenGL");
    const std::array<EGLint, 9> attributes{EGL_CONTEXT_MAJOR_VERSION,
                                           3,
                                           EGL_CONTEXT_MINOR_VERSION,
                                           3,
                                           EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                           EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                           EGL_CONTEXT_OPENGL_DEBUG,
                                           EGL_TRUE,
                                           EGL_NONE};
    made.context_ = eglCreateContext(display, config, EGL_NO_CONTEXT, attributes.data());
    if (made.context_ == EGL_NO_CONTEXT) return refused("no OpenGL 3.3 core context");
    if (eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, made.context_) == EGL_FALSE) {
        return refused("the context cannot be made current");
    }
    if (gladLoadGL(reinterpret_cast<GLADloadfunc>(eglGetProcAddress)) == 0) {
        return refused("the OpenGL functions cannot be loaded");
    }
    return made;
}

OffscreenContext::OffscreenContext(OffscreenContext&& other) noexcept
    : display_(std::exchange(other.display_, nullptr)),
      context_(std::exchange(other.context_, nullptr)) {}

OffscreenContext& OffscreenContext::operator=(OffscreenContext&& other) noexcept {
    std::swap(display_, other.display_);
    std::swap(context_, other.context_);
    return *this;
}

OffscreenContext::~OffscreenContext() {
    if (display_ == nullptr) return;
    eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    if (context_ != nullptr) eglDestroyContext(display_, context_);
    eglTerminate(display_);
}

}  // namespace beamfork
