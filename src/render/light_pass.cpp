// Light and glass only ever add to the same sum. Addition commutes, so nothing is sorted and nothing flickers.
#include <algorithm>

#include "render/passes.hpp"
#include "scene/picture/light_arrival.hpp"

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

bool needs_ribbon_extras(const ViewOptions& options) {
    return options.paint_pupil || options.light_moves;
}

float ray_level(int ray_count, float light_breadth_mm, float light_gain) {
    constexpr float full_beam = 0.15F;  // linear level of the undivided beam at its full breadth
    return light_gain * full_beam * light_breadth_mm / static_cast<float>(std::max(1, ray_count));
}

Result<LightPass> LightPass::create() {
    auto ribbon = Program::create("ribbon", "ribbon");
    if (!ribbon) return tl::make_unexpected(ribbon.error());
    LightPass made;
    made.ribbons_[0][0] = *std::move(ribbon);
    for (const bool ink : {false, true}) {
        auto glass = Program::create("glass", "glass", ink ? light_is_ink : "");
        if (!glass) return tl::make_unexpected(glass.error());
        auto faded = Program::create("glass", "faded_body", ink ? light_is_ink : "");
        if (!faded) return tl::make_unexpected(faded.error());
        made.glass_[ink ? 1 : 0] = *std::move(glass);
        made.faded_[ink ? 1 : 0] = *std::move(faded);
    }
    return made;
}

Result<void> LightPass::prepare(const ViewOptions& options) {
    const std::size_t painted = options.paint_pupil ? 1 : 0;
    const std::size_t moves = options.light_moves ? 1 : 0;
    if (is_made_[painted][moves]) return {};
    std::string variant = painted == 1 ? "#define LIGHT_IS_PAINTED\n" : "";
    if (moves == 1) variant += "#define LIGHT_MOVES\n";
    auto ribbon = Program::create("ribbon", "ribbon", variant);
    if (!ribbon) return tl::make_unexpected(ribbon.error());
    ribbons_[painted][moves] = *std::move(ribbon);
    is_made_[painted][moves] = true;
    return {};
}

const Program& LightPass::ribbon_for(const ViewOptions& options) const {
    return ribbons_[options.paint_pupil ? 1 : 0][options.light_moves ? 1 : 0];
}

void LightPass::draw_light(const PassInput& input) const {
    input.targets.bind_light();
    glClearColor(0, 0, 0, 0);
    glClear(GL_COLOR_BUFFER_BIT);
    if (!input.options.light || input.emphasis.results <= 0) return;
    add_up_in_front_of_bodies();
    const Program& ribbon = ribbon_for(input.options);
    ribbon.use();
    // Fewer rays carry the same light.
    const float gain = input.options.light_gain * input.emphasis.results / input.rays;
    ribbon.set("u_ray_level",
               ray_level(input.frame.light.ray_count(), input.frame.light.breadth_mm(), gain));
    if (!needs_ribbon_extras(input.options))
        return input.frame.light.draw(input.options.clipped_rays, input.rays);
    ribbon.set("u_front", input.options.light_front_mm);
    ribbon.set("u_spacing", packet_spacing_mm);
    input.frame.light.draw_with_extras(input.options.clipped_rays, input.rays);
}

void LightPass::add_glass(const PassInput& input) const {
    constexpr float faint_glass = 0.75F;  // of it goes with a part that fades
    input.targets.bind_light();
    add_up_in_front_of_bodies();
    const Program& glass = glass_[input.options.on_light_ground() ? 1 : 0];
    glass.use();
    input.frame.meshes.bind();
    for (const MeshRange& mesh : input.frame.meshes.all()) {
        if (mesh.finish != Finish::glass) continue;
        glass.set("u_tint", mesh.tint);
        glass.set("u_level", 1 - faint_glass * input.emphasis.fade_of(mesh.part));
        const bool highlighted = mesh.part >= 0 && mesh.part == input.highlighted_part;
        glass.set("u_highlight", highlighted ? 1.0F : 0.0F);
        input.frame.meshes.draw(mesh);
    }
    if (!input.emphasis.faded.empty()) add_faded_bodies(input);
}

// Bodies that have faded, as a breath of glass: through them one sees the light and what is lit.
void LightPass::add_faded_bodies(const PassInput& input) const {
    const Program& faded = faded_[input.options.on_light_ground() ? 1 : 0];
    faded.use();
    faded.set("u_by_plane", input.options.shells == ShellView::section ? 1 : 0);
    faded.set("u_section_x", input.options.section_x_mm);
    for (const MeshRange& mesh : input.frame.meshes.all()) {
        const float fade = input.emphasis.fade_of(mesh.part);
        const bool is_hidden = mesh.is_shell && input.options.shells == ShellView::hidden;
        if (mesh.finish == Finish::glass || fade <= 0 || is_hidden) continue;
        faded.set("u_level", fade);
        input.frame.meshes.draw(mesh);
    }
}

}  // namespace beamfork
