#include "ui/talk/talk_sight.hpp"

#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

void draw_talk_sight(ImDrawList& list, const Area& picture, float foot, ImTextureID texture) {
    constexpr float share_of_height = 0.3F;
    const float side = share_of_height * picture.height;
    const float line = ImGui::GetTextLineHeight();
    const float gap = 0.5F * line;
    const ImVec2 high{picture.right() - gap, picture.bottom() - foot - gap};
    const ImVec2 low{high.x - 2 * side - 3 * gap, high.y - side - line - 3 * gap};
    list.AddRectFilled(low, high, colour(Tone::ground, 0.9F), gap);
    text_at(list, {low.x + gap, low.y + gap}, "The Moon: left eye, right eye", colour(Tone::text),
            TextFace::bold);
    const float top = low.y + line + 2 * gap;
    for (int eye = 0; eye < 2; ++eye) {
        const float left = low.x + gap + static_cast<float>(eye) * (side + gap);
        const float from = 0.5F * static_cast<float>(eye);
        list.AddImage(texture, {left, top}, {left + side, top + side}, {from, 0}, {from + 0.5F, 1});
    }
}

}  // namespace beamfork
