#include "render/program.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "base/assets.hpp"

namespace beamfork {

namespace {

constexpr std::string_view version_line = "#version 330 core\n";

/// A shader stage, deleted when it goes out of scope (the linked program keeps what it needs).
struct Stage {
    explicit Stage(GLenum kind) : name(glCreateShader(kind)) {}
    Stage(const Stage&) = delete;
    Stage& operator=(const Stage&) = delete;
    ~Stage() { glDeleteShader(name); }
    GLuint name;
};

std::string log_of(GLuint shader) {
    std::array<char, 4096> text{};
    GLsizei length = 0;
    glGetShaderInfoLog(shader, static_cast<GLsizei>(text.size()), &length, text.data());
    return {text.data(), static_cast<std::size_t>(length)};
}

/// Compiles one file behind the version line and the common text; the error, if any.
std::optional<Error> compile(GLuint shader, const std::string& file, std::string_view variant) {
    const auto common = asset("shaders/common.glsl");
    const auto text = asset(file);
    if (!common || !text) return Error{ErrorCode::not_found, "no shader of this name", {file, 0}};
    const std::array<const char*, 5> pieces{version_line.data(),
                                            variant.empty() ? "" : variant.data(), common->data(),
                                            "#line 1\n", text->data()};
    const std::array<GLint, 5> lengths{
        static_cast<GLint>(version_line.size()), static_cast<GLint>(variant.size()),
        static_cast<GLint>(common->size()), -1, static_cast<GLint>(text->size())};
    glShaderSource(shader, 5, pieces.data(), lengths.data());
    glCompileShader(shader);
    GLint compiled = GL_FALSE;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &compiled);
    if (compiled == GL_TRUE) return std::nullopt;
    return Error{ErrorCode::no_graphics, "shader does not compile: " + log_of(shader), {file, 0}};
}

}  // namespace

Result<Program>
Program::create(std::string_view vertex, std::string_view fragment, std::string_view variant) {
    const std::string vertex_file = "shaders/" + std::string(vertex) + ".vert";
    const std::string fragment_file = "shaders/" + std::string(fragment) + ".frag";
    const Stage vertex_stage(GL_VERTEX_SHADER);
    const Stage fragment_stage(GL_FRAGMENT_SHADER);
    if (auto error = compile(vertex_stage.name, vertex_file, variant)) {
        return tl::make_unexpected(std::move(*error));
    }
    if (auto error = compile(fragment_stage.name, fragment_file, variant)) {
        return tl::make_unexpected(std::move(*error));
    }
    Program made;
    made.program_ = GlObject<ProgramKind>::create();
    const GLuint name = made.program_.name();
    glAttachShader(name, vertex_stage.name);
    glAttachShader(name, fragment_stage.name);
    glLinkProgram(name);
    GLint linked = GL_FALSE;
    glGetProgramiv(name, GL_LINK_STATUS, &linked);
    if (linked != GL_TRUE) {
        std::array<char, 4096> text{};
        glGetProgramInfoLog(name, static_cast<GLsizei>(text.size()), nullptr, text.data());
        return fail(ErrorCode::no_graphics, std::string("shaders do not link: ") + text.data(),
                    {fragment_file, 0});
    }
    const GLuint block = glGetUniformBlockIndex(name, "View");
    if (block != GL_INVALID_INDEX) glUniformBlockBinding(name, block, 0);
    made.read_uniforms();
    return made;
}

void Program::read_uniforms() {
    GLint count = 0;
    glGetProgramiv(program_.name(), GL_ACTIVE_UNIFORMS, &count);
    for (GLint i = 0; i < count; ++i) {
        std::array<char, 128> text{};
        GLint size = 0;
        GLenum type = 0;
        glGetActiveUniform(program_.name(), static_cast<GLuint>(i),
                           static_cast<GLsizei>(text.size()), nullptr, &size, &type, text.data());
        const GLint at = glGetUniformLocation(program_.name(), text.data());
        if (at >= 0) uniforms_.emplace_back(text.data(), at);
    }
}

GLint Program::location(std::string_view uniform) const {
    const auto found =
        std::find_if(uniforms_.begin(), uniforms_.end(),
                     [uniform](const auto& entry) { return entry.first == uniform; });
    return found == uniforms_.end() ? -1 : found->second;
}

void Program::set(std::string_view uniform, float value) const {
    glUniform1f(location(uniform), value);
}
void Program::set(std::string_view uniform, int value) const {
    glUniform1i(location(uniform), value);
}
void Program::set(std::string_view uniform, glm::vec2 value) const {
    glUniform2f(location(uniform), value.x, value.y);
}
void Program::set(std::string_view uniform, const glm::vec3& value) const {
    glUniform3f(location(uniform), value.x, value.y, value.z);
}
void Program::set(std::string_view uniform, const glm::vec4& value) const {
    glUniform4f(location(uniform), value.x, value.y, value.z, value.w);
}

}  // namespace beamfork
