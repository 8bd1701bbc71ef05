#include "render/night_pass.hpp"

namespace beamfork {

Result<NightPass> NightPass::create() {
    NightPass made;
    auto program = Program::create("fullscreen", "night");
    if (!program) return tl::make_unexpected(program.error());
    made.program_ = *std::move(program);
    made.layout_ = VertexArray::create();
    return made;
}

void NightPass::draw(GLuint picture, float brightness) const {
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    glDisable(GL_CULL_FACE);
    glDisable(GL_SCISSOR_TEST);
    program_.use();
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, picture);
    program_.set("u_picture", 0);
    program_.set("u_brightness", brightness);
    glBindVertexArray(layout_.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
    glBindVertexArray(0);
}

Result<Image> read_in_red(const Canvas& canvas, float brightness) {
    const auto night = NightPass::create();
    if (!night) return tl::make_unexpected(night.error());
    const auto red = Canvas::create(canvas.width(), canvas.height());
    if (!red) return tl::make_unexpected(red.error());
    red->bind();
    night->draw(canvas.texture(), brightness);
    return red->read_pixels();
}

Result<NightScreen> NightScreen::create() {
    NightScreen made;
    auto pass = NightPass::create();
    if (!pass) return tl::make_unexpected(pass.error());
    made.pass_ = *std::move(pass);
    return made;
}

Result<void> NightScreen::begin(int width, int height, bool is_night) {
    is_night_ = is_night && width > 0 && height > 0;
    if (!is_night_) {
        clear_window(width, height);
        return {};
    }
    if (canvas_.texture() == 0 || width != width_ || height != height_) {
        auto canvas = Canvas::create(width, height);
        if (!canvas) return tl::make_unexpected(canvas.error());
        canvas_ = *std::move(canvas);
        width_ = width;
        height_ = height;
    }
    canvas_.bind();
    return {};
}

void NightScreen::end(float brightness) const {
    if (!is_night_) return;
    clear_window(width_, height_);
    pass_.draw(canvas_.texture(), brightness);
}

}  // namespace beamfork
