#include "render/offscreen.hpp"

#include <array>
#include <string>
#include <string_view>
#include <utility>

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

EGLDisplay surfaceless_display() {
    const char* const listed = eglQueryString(EGL_NO_DISPLAY, EGL_EXTENSIONS);
    const std::string_view extensions = listed == nullptr ? "" : listed;
    const auto get_display = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(
        eglGetProcAddress("eglGetPlatformDisplayEXT"));
    const bool known = extensions.find("EGL_MESA_platform_surfaceless") != std::string_view::npos;
    if (!known || get_display == nullptr) return EGL_NO_DISPLAY;
    return get_display(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
}

}  // namespace

Result<OffscreenContext> OffscreenContext::create() {
    OffscreenContext made;
    EGLDisplay const display = surfaceless_display();
    if (display == EGL_NO_DISPLAY) return refused("no EGL surfaceless platform");
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
