#include "ui/handles/handle_knob.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/kit/area.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

void paint_knob(ImDrawList& list, ImVec2 middle, glm::vec2 along, const KnobLook& look) {
    const float half = grid(2.5F);
    const float round = grid(2.25F);
    const glm::vec2 across{-along.y, along.x};
    const auto at = [&](float ahead, float aside) {
        const glm::vec2 by = ahead * along + aside * across;
        return ImVec2{middle.x + by.x, middle.y + by.y};
    };
    const float turn = std::atan2(along.y, along.x);
    constexpr float quarter = std::numbers::pi_v<float> / 2;
    const auto outline = [&](float more) {
        list.PathClear();
        list.PathArcTo(at(half, 0), round + more, turn - quarter, turn + quarter);
        list.PathArcTo(at(-half, 0), round + more, turn + quarter, turn + 3 * quarter);
    };
    outline(grid(0.5F));
    list.PathFillConvex(colour(Tone::ground, 0.85F));  // stands off any ground
    outline(0);
    list.PathFillConvex(colour(look.is_held  ? Tone::accent
                               : look.is_hot ? Tone::raised_hot
                                             : Tone::raised));
    outline(0);
    list.PathStroke(colour(Tone::accent), ImDrawFlags_Closed, std::max(1.0F, grid(0.35F)));
    const ImU32 ink = colour(look.is_held ? Tone::ground : Tone::text);
    for (const float end : {-1.0F, 1.0F}) {
        const float tip = end * (half + round - grid(0.75F));
        if (end < 0 ? look.is_at_low : look.is_at_high) {
            list.AddLine(at(tip, -grid(1.25F)), at(tip, grid(1.25F)), ink, grid(0.6F));
        } else {
            const float base = tip - end * grid(1.5F);
            // In the order that the library's smooth edges want.
            const float aside = end * grid(1.1F);
            list.AddTriangleFilled(at(tip, 0), at(base, aside), at(base, -aside), ink);
        }
    }
}

void paint_stalk(ImDrawList& list, const Area& area, const HandleView& view) {
    const ImVec2 from{area.left + view.rim.x, area.top + view.rim.y};
    const ImVec2 to{area.left + view.knob.x, area.top + view.knob.y};
    list.AddLine(from, to, colour(Tone::ground, 0.85F), grid(1));
    list.AddLine(from, to, colour(Tone::accent), std::max(1.0F, grid(0.35F)));
    list.AddCircleFilled(from, grid(0.75F), colour(Tone::accent));
}

namespace {

struct HintWords {
    std::string value;
    std::string more;
    [[nodiscard]] float value_width() const { return text_width(value, TextFace::bold) + grid(3); }
};

HintWords words_of(const Ui& ui, const Knob& knob, bool held) {
    const MovableLength& length = knob.handle.length;
    const std::string keys =
        "Keys " + ui.keys_text("handle/more") + ", " + ui.keys_text("handle/less");
    return {length.what + " " + told_value(length, length.value),
            held ? "Shift: fine  ·  Esc: back" : keys + "  ·  Shift: fine"};
}

}  // namespace

PixelBox hint_room(const Ui& ui, const Area& area, const Knob& knob, bool held) {
    const HintWords words = words_of(ui, knob, held);
    const glm::vec2 size{words.value_width() + text_width(words.more) + 2 * grid(2),
                         ImGui::GetTextLineHeight() + grid(2)};
    const glm::vec2 at = knob.view.knob;
    glm::vec2 low{at.x + grid(6), at.y - size.y / 2};
    if (std::abs(knob.view.along.x) > 0.4F) low = {at.x - size.x / 2, at.y - grid(5) - size.y};
    low.x = std::clamp(low.x, grid(1), std::max(grid(1), area.width - size.x - grid(1)));
    if (low.y < grid(1)) low.y = at.y + grid(5);
    return {low, low + size};
}

void paint_hint(const Ui& ui, const Area& area, const Knob& knob, bool held) {
    const HintWords words = words_of(ui, knob, held);
    const PixelBox room = hint_room(ui, area, knob, held);
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    const ImVec2 low{area.left + room.low.x, area.top + room.low.y};
    const ImVec2 high{area.left + room.high.x, area.top + room.high.y};
    list.AddRectFilled(low, high, colour(Tone::panel), grid(1));
    list.AddRect(low, high, colour(Tone::line), grid(1));
    const float top = low.y + grid(1);
    text_at(list, {low.x + grid(2), top}, words.value, colour(Tone::text), TextFace::bold);
    text_at(list, {low.x + grid(2) + words.value_width(), top}, words.more, colour(Tone::text_dim));
}

}  // namespace beamfork
