// What the graphics driver complains about, kept for tests and the log.
#pragma once

#include <memory>
#include <string>
#include <vector>

namespace beamfork {

/// Collects errors and undefined behaviour the driver reports (GL_KHR_debug where it exists, and
/// glGetError). One per context; it must die before the context.
class DebugLog {
public:
    /// Starts listening on the current context.
    static DebugLog create();

    DebugLog() = default;
    DebugLog(const DebugLog&) = delete;
    DebugLog& operator=(const DebugLog&) = delete;
    DebugLog(DebugLog&&) noexcept = default;
    DebugLog& operator=(DebugLog&&) noexcept = default;
    ~DebugLog();

    /// Asks glGetError, adding what it finds under the name of `place`.
    void ask(const char* place);

    /// All complaints since the last call.
    std::vector<std::string> take();

private:
    std::unique_ptr<std::vector<std::string>> messages_;
};

}  // namespace beamfork
