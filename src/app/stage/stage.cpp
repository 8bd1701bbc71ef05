#include "app/stage/stage.hpp"

#include <chrono>

namespace beamfork {

Result<Stage> Stage::create() {
    auto renderer = Renderer::create();
    if (!renderer) return tl::make_unexpected(renderer.error());
    return Stage(*std::move(renderer));
}

Result<bool> Stage::show(const Frame& frame, const Look& look) {
    if (look.area.width < 1 || look.area.height < 1) return false;
    if (last_ == look && revision_ == frame.revision) return false;
    renderer_.upload(frame);
    PictureSize size{look.area.width, look.area.height};
    size.pixel_scale = look.pixel_scale;
    size.transparent = look.transparent;
    if (look.quick) size = draft(size, detail_.share(), detail_.rays());
    const auto begin = std::chrono::steady_clock::now();
    auto texture =
        renderer_.draw(look.camera, look.options, size, look.highlighted_part, look.emphasis);
    if (!texture) return tl::make_unexpected(texture.error());
    if (look.quick) {
        renderer_.finish();
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
        detail_.took(took.count());
    }
    texture_ = *texture;
    last_ = look;
    revision_ = frame.revision;
    return true;
}

}  // namespace beamfork
