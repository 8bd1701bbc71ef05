#include "render/passes.hpp"

#include <glm/glm.hpp>

namespace beamfork {

Result<HaloPass> HaloPass::create() {
    auto shrink = Program::create("fullscreen", "halo_shrink");
    if (!shrink) return tl::make_unexpected(shrink.error());
    auto blur = Program::create("fullscreen", "halo_blur");
    if (!blur) return tl::make_unexpected(blur.error());
    HaloPass made;
    made.shrink_ = *std::move(shrink);
    made.blur_ = *std::move(blur);
    made.layout_ = VertexArray::create();
    return made;
}

void HaloPass::draw(const PassInput& input) const {
    const Targets& targets = input.targets;
    if (!targets.size().glow) return;
    const glm::vec2 texel(1.0F / static_cast<float>(targets.halo_width()),
                          1.0F / static_cast<float>(targets.halo_height()));
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    glBindVertexArray(layout_.name());
    glActiveTexture(GL_TEXTURE0);
    const auto fill = [&](const Program& program, int target, GLuint source, glm::vec2 step) {
        targets.bind_halo(target);
        glBindTexture(GL_TEXTURE_2D, source);
        program.set("u_source", 0);
        program.set("u_step", step);
        glDrawArrays(GL_TRIANGLES, 0, 3);
    };
    shrink_.use();
    fill(shrink_, 0, targets.light_texture(), 0.25F * texel);
    blur_.use();
    for (const float reach : {1.0F, 2.5F}) {  // two rounds: a bright core and a wide skirt
        fill(blur_, 1, targets.halo_texture(0), {reach * texel.x, 0});
        fill(blur_, 0, targets.halo_texture(1), {0, reach * texel.y});
    }
}

}  // namespace beamfork
