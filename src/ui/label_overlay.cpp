#include "ui/label_overlay.hpp"

#include <algorithm>

#include "scene/label_layout.hpp"
#include "ui/theme.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

ImU32 ink_of(const Label& label, bool light_ground) {
    if (light_ground) return IM_COL32(24, 32, 42, 255);
    switch (label.role) {
    case LabelRole::dimension:
    case LabelRole::warning: return text_colour(ColourRole::shortfall);
    case LabelRole::eye:
    case LabelRole::part:
    case LabelRole::note: break;
    }
    return colour(Tone::text);
}

void draw_label(ImDrawList& list, ImVec2 origin, const LabelLook& look, const PlacedLabel& placed) {
    const Label& label = look.frame.labels[placed.label];
    const bool light = look.options.on_light_ground();
    const auto on_list = [&](glm::vec2 at) { return ImVec2{origin.x + at.x, origin.y + at.y}; };
    const bool hot = label.part >= 0 && label.part == look.hot_part;
    const bool selected =
        label.part >= 0 && look.selected_part == static_cast<std::size_t>(label.part);
    if (placed.has_leader) {
        list.AddLine(on_list(placed.anchor), on_list(placed.leader), colour(Tone::text_dim, 0.7F),
                     std::max(1.0F, grid(0.25F)));
    }
    const ImU32 ground =
        light ? IM_COL32(255, 255, 255, 215) : colour(hot ? Tone::raised_hot : Tone::ground, 0.72F);
    list.AddRectFilled(on_list(placed.low), on_list(placed.high), ground, grid(1));
    if (selected)
        list.AddRect(on_list(placed.low), on_list(placed.high), colour(Tone::accent), grid(1));
    const ImVec2 low = on_list(placed.low);
    text_at(list, {low.x + grid(1.5F), low.y + grid(0.5F)}, label.text, ink_of(label, light),
            label.role == LabelRole::part || label.role == LabelRole::note ? TextFace::regular
                                                                           : TextFace::bold);
}

}  // namespace

void draw_labels(ImDrawList& list, ImVec2 origin, Viewport viewport, const LabelLook& look) {
    if (!look.options.labels) return;
    const auto measure = [](const Label& label) {
        const float width = text_width(label.text, TextFace::bold);
        return glm::vec2{width + grid(3), ImGui::GetTextLineHeight() + grid(1)};
    };
    const LightCover light = light_cover(look.frame, look.camera, viewport);
    for (const PlacedLabel& placed :
         lay_out_labels(look.frame.labels, look.camera, viewport, measure, light, look.foot_px)) {
        draw_label(list, origin, look, placed);
    }
}

}  // namespace beamfork
