#include <string>

#include "render/passes.hpp"

namespace beamfork {

Result<CompositePass> CompositePass::create() {
    CompositePass made;
    for (unsigned i = 0; i < 8; ++i) {
        const unsigned no_ground = i / 4;
        const unsigned ink = i / 2 % 2;
        const unsigned bloom = i % 2;
        const std::string variant = std::string(no_ground != 0 ? "#define NO_GROUND\n" : "")
                                    + (ink != 0 ? light_is_ink : "")
                                    + (bloom != 0 ? "#define WITH_BLOOM\n" : "");
        auto program = Program::create("fullscreen", "composite", variant);
        if (!program) return tl::make_unexpected(program.error());
        made.programs_[no_ground][ink][bloom] = *std::move(program);
    }
    made.layout_ = VertexArray::create();
    return made;
}

void CompositePass::draw(const PassInput& input) const {
    constexpr float bloom_share = 0.85F;
    constexpr float bloom_share_of_ink = 0.25F;
    const Targets& targets = input.targets;
    targets.bind_result();
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    const PictureSize& size = targets.size();
    const Program& composite =
        programs_[size.transparent ? 1 : 0][input.options.on_light_ground() ? 1 : 0]
                 [size.bloom ? 1 : 0];
    composite.use();
    const auto texture = [](GLenum unit, GLuint name) {
        glActiveTexture(unit);
        glBindTexture(GL_TEXTURE_2D, name);
    };
    texture(GL_TEXTURE0, targets.body_texture());
    texture(GL_TEXTURE1, targets.light_texture());
    texture(GL_TEXTURE2, targets.bloom_texture(0));
    glActiveTexture(GL_TEXTURE0);
    composite.set("u_bodies", 0);
    composite.set("u_light", 1);
    composite.set("u_bloom", 2);
    const bool light_ground = input.options.on_light_ground();
    composite.set("u_bloom_share", light_ground ? bloom_share_of_ink : bloom_share);
    composite.set("u_ground_low", light_ground ? glm::vec3(0.925F, 0.932F, 0.945F)
                                               : glm::vec3(0.047F, 0.058F, 0.078F));
    composite.set("u_ground_high", light_ground ? glm::vec3(1) : glm::vec3(0.110F, 0.137F, 0.172F));
    glBindVertexArray(layout_.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
}

}  // namespace beamfork
