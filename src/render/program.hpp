// A linked pair of shaders from shaders/, with its uniforms by name.
//
// Every program sees `shaders/common.glsl` ahead of its own text and shares one uniform block, View
// (render/view_block.hpp), at binding 0.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/error.hpp"
#include "render/gl_object.hpp"

#include <glm/glm.hpp>

namespace beamfork {

class Program {
public:
    Program() = default;

    /// Compiles shaders/<vertex>.vert and shaders/<fragment>.frag. Error `no_graphics` carries the driver's log
    /// and names the shader; `not_found` when there is no such file. `variant` is text put ahead of both, such as
    /// "#define WITH_BLOOM\n".
    static Result<Program>
    create(std::string_view vertex, std::string_view fragment, std::string_view variant = {});

    void use() const { glUseProgram(program_.name()); }

    /// The program must be in use. A uniform the driver dropped as unused is skipped silently.
    void set(std::string_view uniform, float value) const;
    void set(std::string_view uniform, int value) const;
    void set(std::string_view uniform, glm::vec2 value) const;
    void set(std::string_view uniform, const glm::vec3& value) const;
    void set(std::string_view uniform, const glm::vec4& value) const;

private:
    [[nodiscard]] GLint location(std::string_view uniform) const;
    void read_uniforms();

    GlObject<ProgramKind> program_;
    std::vector<std::pair<std::string, GLint>> uniforms_;
};

}  // namespace beamfork
