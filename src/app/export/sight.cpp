#include "app/export/sight.hpp"

#include <algorithm>

#include "render/png_codec.hpp"
#include "render/words_on_image.hpp"
#include "scene/sight_view/sight_view_rows.hpp"

namespace beamfork {

Image captioned_sight(const Sights& sights, const SightRequest& request) {
    const SightImage drawn = draw_sight(sights, request);
    Image image{drawn.width, drawn.height, drawn.rgba};
    const double letters = std::max(11.0, request.pixels / 16.0);
    const int strip = static_cast<int>(1.6 * letters);
    constexpr std::array<std::uint8_t, 4> ground{26, 26, 26, 255};
    for (int i = 0; i < strip * image.width; ++i)
        image.rgba.insert(image.rgba.end(), ground.begin(), ground.end());
    image.height += strip;
    const auto names = picture_names(request.layout);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const double middle = (static_cast<double>(i) + 0.5) * request.pixels;
        // A name longer than its picture is set smaller.
        const double room = 0.94 * request.pixels;
        const double size =
            std::min(letters, letters * room / std::max(1.0, width_of_words(names[i], letters)));
        draw_words(image,
                   {middle - width_of_words(names[i], size) / 2, drawn.height + 1.1 * letters},
                   names[i], size, {222, 222, 222});
    }
    return image;
}

std::vector<std::uint8_t> moon_for_paper(const Setup& setup, const Report& report, bool is_night) {
    const Sights sights = sights_of(setup, report);
    SightRequest request;
    request.pixels = 240;
    Image image = captioned_sight(sights, fitted(request, sights));
    if (is_night) {
        for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
            image.rgba[i] = std::max({image.rgba[i], image.rgba[i + 1], image.rgba[i + 2]});
            image.rgba[i + 1] = image.rgba[i + 2] = 0;
        }
    }
    return encode_png(image);
}

}  // namespace beamfork
