#include "render/passes.hpp"

#include <glm/glm.hpp>

namespace beamfork {

Result<BloomPass> BloomPass::create() {
    auto downsample = Program::create("fullscreen", "bloom_downsample");
    if (!downsample) return tl::make_unexpected(downsample.error());
    auto blur = Program::create("fullscreen", "bloom_blur");
    if (!blur) return tl::make_unexpected(blur.error());
    BloomPass made;
    made.downsample_ = *std::move(downsample);
    made.blur_ = *std::move(blur);
    made.layout_ = VertexArray::create();
    return made;
}

void BloomPass::draw(const PassInput& input) const {
    const Targets& targets = input.targets;
    if (!targets.size().bloom) return;
    const glm::vec2 texel(1.0F / static_cast<float>(targets.bloom_width()),
                          1.0F / static_cast<float>(targets.bloom_height()));
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    glBindVertexArray(layout_.name());
    glActiveTexture(GL_TEXTURE0);
    const auto fill = [&](const Program& program, int target, GLuint source, glm::vec2 step) {
        targets.bind_bloom(target);
        glBindTexture(GL_TEXTURE_2D, source);
        program.set("u_source", 0);
        program.set("u_step", step);
        glDrawArrays(GL_TRIANGLES, 0, 3);
    };
    downsample_.use();
    fill(downsample_, 0, targets.light_texture(), 0.25F * texel);
    blur_.use();
    for (const float reach : {1.0F, 2.5F}) {  // two rounds: a bright core and a wide skirt
        fill(blur_, 1, targets.bloom_texture(0), {reach * texel.x, 0});
        fill(blur_, 0, targets.bloom_texture(1), {0, reach * texel.y});
    }
}

}  // namespace beamfork
