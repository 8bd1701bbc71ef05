// Light and glass only ever add to the same sum. Addition commutes, so nothing is sorted and nothing flickers.
#include <algorithm>

#include "render/passes.hpp"

namespace beamfork {

namespace {

void add_up_in_front_of_bodies() {
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LEQUAL);
    glDepthMask(GL_FALSE);
    glDisable(GL_CULL_FACE);
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFunc(GL_ONE, GL_ONE);
}

}  // namespace

float ray_level(int ray_count, float light_breadth_mm, float light_gain) {
    constexpr float full_beam = 0.15F;  // linear level of the undivided beam at its full breadth
    return light_gain * full_beam * light_breadth_mm / static_cast<float>(std::max(1, ray_count));
}

Result<LightPass> LightPass::create() {
    auto ribbon = Program::create("ribbon", "ribbon");
    if (!ribbon) return tl::make_unexpected(ribbon.error());
    auto glass = Program::create("glass", "glass");
    if (!glass) return tl::make_unexpected(glass.error());
    auto ink_glass = Program::create("glass", "glass", light_is_ink);
    if (!ink_glass) return tl::make_unexpected(ink_glass.error());
    LightPass made;
    made.ribbon_ = *std::move(ribbon);
    made.glass_ = *std::move(glass);
    made.ink_glass_ = *std::move(ink_glass);
    return made;
}

void LightPass::draw_light(const PassInput& input) const {
    input.targets.bind_light();
    glClearColor(0, 0, 0, 0);
    glClear(GL_COLOR_BUFFER_BIT);
    if (!input.options.light) return;
    add_up_in_front_of_bodies();
    ribbon_.use();
    ribbon_.set("u_ray_level", ray_level(input.frame.ray_count(), input.frame.light_breadth_mm(),
                                         input.options.light_gain));
    input.frame.draw_light(input.options.clipped_rays);
}

void LightPass::add_glass(const PassInput& input) const {
    input.targets.bind_light();
    add_up_in_front_of_bodies();
    const Program& glass = input.options.on_light_ground() ? ink_glass_ : glass_;
    glass.use();
    input.frame.bind_meshes();
    for (const MeshRange& mesh : input.frame.meshes()) {
        if (mesh.finish != Finish::glass) continue;
        glass.set("u_tint", mesh.tint);
        const bool highlighted = mesh.part >= 0 && mesh.part == input.highlighted_part;
        glass.set("u_highlight", highlighted ? 1.0F : 0.0F);
        input.frame.draw_mesh(mesh);
    }
}

}  // namespace beamfork
