#include "app/window/demo_pictures.hpp"

#include "app/stage/gui.hpp"
#include "base/assets.hpp"
#include "render/png_codec.hpp"

#include <fmt/format.h>

namespace beamfork {

Result<Image> demo_picture(const std::string& demo_asset) {
    constexpr std::string_view ending = ".train.toml";
    if (!demo_asset.ends_with(ending))
        return fail(ErrorCode::not_found, fmt::format("'{}' is no demo", demo_asset));
    const std::string name = demo_asset.substr(0, demo_asset.size() - ending.size()) + ".png";
    const auto bytes = asset(name);
    if (!bytes) return fail(ErrorCode::not_found, fmt::format("no picture '{}'", name));
    auto image = decode_png({reinterpret_cast<const std::uint8_t*>(bytes->data()), bytes->size()});
    if (!image) return fail(ErrorCode::bad_input, fmt::format("'{}' is no PNG", name));
    return *std::move(image);
}

void DemoPictures::fill(View& view) const {
    for (DemoEntry& demo : view.demos) {
        const auto found = pictures_.find(demo.asset);
        if (found != pictures_.end()) demo.picture = as_imgui_texture(found->second.name());
    }
}

bool DemoPictures::refresh(const View& view, const Requests& requests) {
    if (!requests.wants_demo_pictures) return false;
    for (const DemoEntry& demo : view.demos) {
        if (pictures_.contains(demo.asset)) continue;
        UploadedPicture& picture = pictures_[demo.asset];
        const auto image = demo_picture(demo.asset);
        if (image) picture.upload_to_shrink(image->width, image->height, image->rgba);
        return true;
    }
    return false;
}

}  // namespace beamfork
