#include "render/passes.hpp"

namespace beamfork {

Result<OverlayPass> OverlayPass::create() {
    auto line = Program::create("line", "line");
    if (!line) return tl::make_unexpected(line.error());
    auto mark = Program::create("mark", "mark");
    if (!mark) return tl::make_unexpected(mark.error());
    OverlayPass made;
    made.line_ = *std::move(line);
    made.mark_ = *std::move(mark);
    return made;
}

void OverlayPass::draw_lines(const PassInput& input, bool on_top) const {
    constexpr float faint_line = 0.85F;  // of it goes with a part that fades
    line_.use();
    if (input.emphasis == Emphasis{}) {
        line_.set("u_alpha", 1.0F);
        return input.frame.lines.draw(on_top);
    }
    for (const LineGroup& group : input.frame.lines.groups(on_top)) {
        const float shown = group.is_result ? input.emphasis.results : 1;
        line_.set("u_alpha", shown * (1 - faint_line * input.emphasis.fade_of(group.part)));
        input.frame.lines.draw(group);
    }
}

void OverlayPass::draw(const PassInput& input) const {
    input.targets.bind_result();
    glDepthMask(GL_FALSE);
    glDepthFunc(GL_LEQUAL);
    glDisable(GL_CULL_FACE);
    glEnable(GL_BLEND);
    glBlendEquation(GL_FUNC_ADD);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    for (const bool on_top : {false, true}) {
        if (on_top) {
            glDisable(GL_DEPTH_TEST);
        } else {
            glEnable(GL_DEPTH_TEST);
        }
        draw_lines(input, on_top);
        if (input.emphasis.results <= 0) continue;
        mark_.use();
        mark_.set("u_alpha", input.emphasis.results);
        input.frame.marks.draw(on_top, input.options.clipped_rays);
    }
    glDisable(GL_BLEND);
}

}  // namespace beamfork
