#include "ui/picture/label_overlay.hpp"

#include <algorithm>

#include "scene/picture/label_layout.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

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

// 1 as ever, 0 gone: names fade twice as fast as bodies, so that half way there are only those of one step.
float shown_share(const Label& label, const Emphasis& emphasis) {
    const float results = label.is_result() ? emphasis.results : 1;
    return std::clamp(2 * results * (1 - emphasis.fade_of(label.part)) - 1, 0.0F, 1.0F);
}

// The ink at that strength.
ImU32 weakened(ImU32 ink, float share) {
    ImVec4 strong = ImGui::ColorConvertU32ToFloat4(ink);
    strong.w *= share;
    return ImGui::ColorConvertFloat4ToU32(strong);
}

void draw_label(ImDrawList& list,
                ImVec2 origin,
                const LabelLook& look,
                const Label& label,
                const PlacedLabel& placed) {
    const float share = shown_share(label, look.emphasis);
    const bool light = look.options.on_light_ground();
    const auto on_list = [&](glm::vec2 at) { return ImVec2{origin.x + at.x, origin.y + at.y}; };
    const bool hot = label.part >= 0 && label.part == look.hot_part;
    const bool selected =
        label.part >= 0 && look.selected_part == static_cast<std::size_t>(label.part);
    if (placed.has_leader) {
        list.AddLine(on_list(placed.anchor), on_list(placed.leader),
                     colour(Tone::text_dim, 0.7F * share), std::max(1.0F, grid(0.25F)));
    }
    const ImU32 ground =
        light ? IM_COL32(255, 255, 255, 215) : colour(hot ? Tone::raised_hot : Tone::ground, 0.72F);
    list.AddRectFilled(on_list(placed.low), on_list(placed.high), weakened(ground, share), grid(1));
    if (selected)
        list.AddRect(on_list(placed.low), on_list(placed.high), colour(Tone::accent), grid(1));
    const ImVec2 low = on_list(placed.low);
    text_at(list, {low.x + grid(1.5F), low.y + grid(0.5F)}, label.text,
            weakened(ink_of(label, light), share),
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
    const LightCover light =
        look.cover != nullptr ? *look.cover : light_cover(look.frame, look.camera, viewport);
    std::vector<Label> labels;
    for (const Label& label : look.frame.labels)
        if (shown_share(label, look.emphasis) > 0) labels.push_back(label);
    for (const PlacedLabel& placed :
         lay_out_labels(labels, look.camera, viewport, measure, light, look.foot_px)) {
        draw_label(list, origin, look, labels[placed.label], placed);
    }
}

}  // namespace beamfork
