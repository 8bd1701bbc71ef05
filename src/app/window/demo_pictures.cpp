#include "app/window/demo_pictures.hpp"

#include "app/stage/gui.hpp"
#include "base/assets.hpp"
#include "desk/open_setup.hpp"
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

std::vector<DemoEntry> DemoPictures::entries() const {
    std::vector<DemoEntry> list;
    for (const Demo& demo : demos()) {
        const auto found = pictures_.find(demo.asset);
        const bool has_picture = found != pictures_.end();
        list.push_back({demo.title, demo.story, demo.asset,
                        has_picture ? as_imgui_texture(found->second.name()) : ImTextureID{}});
    }
    return list;
}

bool DemoPictures::refresh(bool is_wanted) {
    if (!is_wanted) return false;
    for (const Demo& demo : demos()) {
        if (pictures_.contains(demo.asset)) continue;
        UploadedPicture& picture = pictures_[demo.asset];
        const auto image = demo_picture(demo.asset);
        if (image) picture.upload_to_shrink(image->width, image->height, image->rgba);
        return true;
    }
    return false;
}

}  // namespace beamfork
