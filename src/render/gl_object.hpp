// Names of OpenGL objects with one owner each: move-only, empty by default, freed by the owner.
//
// Nothing is created behind one's back: call `create()` with a context current. An empty object (name 0)
// may be destroyed without a context.
#pragma once

#include <utility>

#include <glad/gl.h>

namespace beamfork {

template <class Kind>
class GlObject {
public:
    GlObject() = default;
    GlObject(const GlObject&) = delete;
    GlObject& operator=(const GlObject&) = delete;
    GlObject(GlObject&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
    GlObject& operator=(GlObject&& other) noexcept {
        std::swap(name_, other.name_);
        return *this;
    }
    ~GlObject() {
        if (name_ != 0) Kind::free(name_);
    }

    static GlObject create() {
        GlObject made;
        made.name_ = Kind::make();
        return made;
    }

    [[nodiscard]] GLuint name() const { return name_; }

private:
    GLuint name_ = 0;
};

struct BufferKind {
    static GLuint make() {
        GLuint name = 0;
        glGenBuffers(1, &name);
        return name;
    }
    static void free(GLuint name) { glDeleteBuffers(1, &name); }
};

struct VertexArrayKind {
    static GLuint make() {
        GLuint name = 0;
        glGenVertexArrays(1, &name);
        return name;
    }
    static void free(GLuint name) { glDeleteVertexArrays(1, &name); }
};

struct TextureKind {
    static GLuint make() {
        GLuint name = 0;
        glGenTextures(1, &name);
        return name;
    }
    static void free(GLuint name) { glDeleteTextures(1, &name); }
};

struct RenderbufferKind {
    static GLuint make() {
        GLuint name = 0;
        glGenRenderbuffers(1, &name);
        return name;
    }
    static void free(GLuint name) { glDeleteRenderbuffers(1, &name); }
};

struct FramebufferKind {
    static GLuint make() {
        GLuint name = 0;
        glGenFramebuffers(1, &name);
        return name;
    }
    static void free(GLuint name) { glDeleteFramebuffers(1, &name); }
};

struct ProgramKind {
    static GLuint make() { return glCreateProgram(); }
    static void free(GLuint name) { glDeleteProgram(name); }
};

/// A place in a buffer and a size of one, in the types that OpenGL asks for.
inline const void* byte_offset(std::size_t bytes) {
    return reinterpret_cast<const void*>(bytes);  // NOLINT(performance-no-int-to-ptr): GL's way
}
inline GLsizeiptr byte_size(std::size_t count, std::size_t each) {
    return static_cast<GLsizeiptr>(count * each);
}

using Buffer = GlObject<BufferKind>;
using VertexArray = GlObject<VertexArrayKind>;
using Texture = GlObject<TextureKind>;
using Renderbuffer = GlObject<RenderbufferKind>;
using Framebuffer = GlObject<FramebufferKind>;

}  // namespace beamfork
