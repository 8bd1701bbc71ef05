// Lit bodies. Shells are opened in the fragment shader: what faces the viewer within a set angle about the shell's
// axis is left out. Every fragment of one shell uses the same direction to the viewer, so the cut is a
// straight line along the tube.
#include <algorithm>

#include "render/passes.hpp"
#include "scene/picture/shell_opening.hpp"

namespace beamfork {

namespace {

bool is_drawn(const MeshRange& mesh, const ViewOptions& options) {
    if (mesh.finish == Finish::glass) return false;
    return !mesh.is_shell || options.shells != ShellView::hidden;
}

// Among those that are drawn as ever, or those on their way; what has faded for good is not drawn.
bool has_fade(const MeshRange& mesh, const Emphasis& emphasis, bool fading) {
    const float fade = emphasis.fade_of(mesh.part);
    return fading ? fade > 0 && fade < 1 : fade <= 0;
}

bool is_cut(const MeshRange& mesh, const ViewOptions& options) {
    if (options.shells == ShellView::section) return mesh.finish != Finish::mirror;
    return options.shells == ShellView::open && mesh.is_shell;
}

ShellOpening opening_of(const MeshRange& shell, const Camera& camera) {
    return shell_opening(eye_position(camera), shell.shell_axis_point, shell.shell_axis);
}

}  // namespace

Result<BodyPass> BodyPass::create() {
    BodyPass made;
    for (const bool cut : {false, true}) {
        for (const bool fading : {false, true}) {
            auto program =
                Program::create("body", cut ? "cut_body" : "body", fading ? "#define FADES\n" : "");
            if (!program) return tl::make_unexpected(program.error());
            made.programs_[cut ? 1 : 0][fading ? 1 : 0] = *std::move(program);
        }
    }
    auto disc = Program::create("disc", "disc");
    if (!disc) return tl::make_unexpected(disc.error());
    made.disc_ = *std::move(disc);
    made.disc_layout_ = VertexArray::create();
    return made;
}

void BodyPass::draw(const PassInput& input) const {
    const bool has_samples = input.targets.size().samples > 1;
    const auto by_coverage = [&](bool is_on) {  // a cut edge is as smooth as any other edge
        for (const GLenum what : {GL_SAMPLE_ALPHA_TO_COVERAGE, GL_SAMPLE_ALPHA_TO_ONE})
            is_on&& has_samples ? glEnable(what) : glDisable(what);
    };
    input.targets.bind_bodies();
    glEnable(GL_DEPTH_TEST);
    glDepthFunc(GL_LEQUAL);
    glDepthMask(GL_TRUE);
    glDisable(GL_BLEND);
    glDisable(GL_CULL_FACE);
    glFrontFace(GL_CCW);
    glClearColor(0, 0, 0, 0);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
    input.frame.meshes.bind();
    draw_uncut(input, false);
    by_coverage(true);
    draw_cut(input, false);
    if (!input.emphasis.faded.empty()) {
        draw_uncut(input, true);
        draw_cut(input, true);
    }
    if (input.options.shells == ShellView::whole) draw_housings(input);
    draw_discs(input);
    by_coverage(false);
    input.targets.resolve_bodies();
}

// What no cut runs through: all of a whole body, and of an opened shell what is clear of its edges.
void BodyPass::draw_uncut(const PassInput& input, bool fading) const {
    const Program& whole = programs_[0][fading ? 1 : 0];
    whole.use();
    for (const MeshRange& mesh : input.frame.meshes.all()) {
        if (!is_drawn(mesh, input.options) || !has_fade(mesh, input.emphasis, fading)) continue;
        if (!is_cut(mesh, input.options)) {
            set_finish(whole, mesh, input);
            input.frame.meshes.draw(mesh);
        } else if (input.options.shells == ShellView::open) {
            set_finish(whole, mesh, input);
            input.frame.meshes.draw_opened(mesh, opening_of(mesh, input.camera),
                                           ShellShare::clear_of_edges);
        }
    }
}

void BodyPass::draw_cut(const PassInput& input, bool fading) const {
    const Program& cut = programs_[1][fading ? 1 : 0];
    cut.use();
    const bool by_plane = input.options.shells == ShellView::section;
    cut.set("u_by_plane", by_plane ? 1 : 0);
    cut.set("u_section_x", input.options.section_x_mm);
    for (const MeshRange& mesh : input.frame.meshes.all()) {
        const bool is_wanted = is_drawn(mesh, input.options) && is_cut(mesh, input.options);
        if (!is_wanted || !has_fade(mesh, input.emphasis, fading)) continue;
        set_finish(cut, mesh, input);
        if (by_plane) {
            input.frame.meshes.draw(mesh);
            continue;
        }
        const ShellOpening opening = opening_of(mesh, input.camera);
        cut.set("u_opening", glm::vec4(opening.towards, opening.cosine));
        input.frame.meshes.draw_opened(mesh, opening, ShellShare::along_edges);
    }
}

void BodyPass::draw_housings(const PassInput& input) const {
    input.frame.housings.bind();
    for (const bool fading : {false, true}) {
        const Program& whole = programs_[0][fading ? 1 : 0];
        whole.use();
        for (const MeshRange& mesh : input.frame.housings.all()) {
            if (!has_fade(mesh, input.emphasis, fading)) continue;
            set_finish(whole, mesh, input);
            input.frame.housings.draw(mesh);
        }
    }
}

void BodyPass::set_finish(const Program& program,
                          const MeshRange& mesh,
                          const PassInput& input) const {
    program.set("u_finish", static_cast<int>(mesh.finish));
    program.set("u_tint", mesh.tint);
    program.set("u_is_shell", mesh.is_shell ? 1 : 0);
    program.set("u_axis_point", mesh.shell_axis_point);
    program.set("u_axis", mesh.shell_axis);
    const glm::vec3 rim = 0.9F * mesh.tint + 0.08F;
    program.set("u_rim", glm::pow(rim, glm::vec3(1 / 2.2F)));
    const bool highlighted = mesh.part >= 0 && mesh.part == input.highlighted_part;
    program.set("u_highlight", highlighted ? 1.0F : 0.0F);
    program.set("u_fade", input.emphasis.fade_of(mesh.part));
    const int samples = std::max(1, input.targets.size().samples);
    program.set("u_grain", 1.0F / static_cast<float>(samples));
}

void BodyPass::draw_discs(const PassInput& input) const {
    disc_.use();
    disc_.set("u_picture", 0);
    disc_.set("u_level", input.emphasis.results);
    glBindVertexArray(disc_layout_.name());
    glActiveTexture(GL_TEXTURE0);
    for (const DiscTexture& disc : input.frame.discs.all()) {
        glBindTexture(GL_TEXTURE_2D, disc.texture.name());
        disc_.set("u_centre", disc.centre);
        disc_.set("u_right", disc.right);
        disc_.set("u_up", disc.up);
        glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
    }
}

}  // namespace beamfork
