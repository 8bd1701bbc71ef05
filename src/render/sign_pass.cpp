#include "render/passes.hpp"

namespace beamfork {

Result<SignPass> SignPass::create() {
    auto line = Program::create("line", "line");
    if (!line) return tl::make_unexpected(line.error());
    auto mark = Program::create("mark", "mark");
    if (!mark) return tl::make_unexpected(mark.error());
    SignPass made;
    made.line_ = *std::move(line);
    made.mark_ = *std::move(mark);
    return made;
}

void SignPass::draw(const PassInput& input) const {
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
        line_.use();
        input.frame.draw_lines(on_top);
        mark_.use();
        input.frame.draw_marks(on_top, input.options.clipped_rays);
    }
    glDisable(GL_BLEND);
}

}  // namespace beamfork
