// OpenGL without a display: an EGL context for pictures, tests and films, on Mesa's surfaceless platform or, where
// that is missing, on the first graphics card that EGL lists.
//
// The context is current on the creating thread from create() until the object dies; only one such
// object should be alive on a thread. Draw into a framebuffer of your own (render/renderer.hpp does).
#pragma once

#include "base/error.hpp"

namespace beamfork {

class OffscreenContext {
public:
    /// Error `no_graphics` says which step the system refused and what to install.
    static Result<OffscreenContext> create();

    OffscreenContext() = default;
    OffscreenContext(const OffscreenContext&) = delete;
    OffscreenContext& operator=(const OffscreenContext&) = delete;
    OffscreenContext(OffscreenContext&& other) noexcept;
    OffscreenContext& operator=(OffscreenContext&& other) noexcept;
    ~OffscreenContext();

private:
    static Result<OffscreenContext> on(void* display);
    void* display_ = nullptr;
    void* context_ = nullptr;
};

}  // namespace beamfork
