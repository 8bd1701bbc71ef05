#include "render/debug_log.hpp"

#include <utility>

#include <glad/gl.h>

namespace beamfork {

namespace {

constexpr std::size_t most_messages = 100;  // a broken driver must not fill the memory

void GLAD_API_PTR receive(GLenum /*source*/,
                          GLenum type,
                          GLuint /*id*/,
                          GLenum /*severity*/,
                          GLsizei length,
                          const GLchar* text,
                          const void* user) {
    if (type != GL_DEBUG_TYPE_ERROR && type != GL_DEBUG_TYPE_UNDEFINED_BEHAVIOR) return;
    auto* const messages =
        static_cast<std::vector<std::string>*>(const_cast<void*>(user));  // NOLINT: GL's signature
    if (messages->size() < most_messages) {
        messages->emplace_back(text, static_cast<std::size_t>(length));
    }
}

}  // namespace

DebugLog DebugLog::create() {
    DebugLog made;
    made.messages_ = std::make_unique<std::vector<std::string>>();
    while (glGetError() != GL_NO_ERROR) {
    }  // others' errors are not ours
    if (GLAD_GL_KHR_debug != 0) {
        glEnable(GL_DEBUG_OUTPUT);
        glEnable(GL_DEBUG_OUTPUT_SYNCHRONOUS);
        glDebugMessageCallback(receive, made.messages_.get());
    }
    return made;
}

DebugLog::~DebugLog() {
    if (messages_ != nullptr && GLAD_GL_KHR_debug != 0) glDebugMessageCallback(nullptr, nullptr);
}

void DebugLog::ask(const char* place) {
    if (messages_ == nullptr) return;
    for (GLenum error = glGetError(); error != GL_NO_ERROR; error = glGetError()) {
        if (messages_->size() >= most_messages) return;
        messages_->push_back("OpenGL error " + std::to_string(error) + " in " + place);
    }
}

std::vector<std::string> DebugLog::take() {
    if (messages_ == nullptr) return {};
    return std::exchange(*messages_, {});
}

}  // namespace beamfork
