#include "ui/handles/dimension_overlay.hpp"

#include <algorithm>

#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

namespace {

struct DimensionInk {
    ImU32 line;
    ImU32 edge;  ///< under the lines, so that they stand off light and metal
    ImU32 ground;
};

DimensionInk dimension_ink(bool on_light_ground) {
    if (on_light_ground)
        return {IM_COL32(24, 32, 42, 255), IM_COL32(255, 255, 255, 160),
                IM_COL32(255, 255, 255, 235)};
    return {colour(ColourRole::dimension), colour(Tone::ground, 0.6F), colour(Tone::ground, 0.88F)};
}

void draw_arrow(ImDrawList& list, ImVec2 origin, const DimensionArrow& arrow, ImU32 ink) {
    const glm::vec2 base = arrow.tip - grid(2.5F) * arrow.towards;
    const glm::vec2 aside = grid(0.8F) * glm::vec2{-arrow.towards.y, arrow.towards.x};
    const auto at = [&](glm::vec2 p) { return ImVec2{origin.x + p.x, origin.y + p.y}; };
    list.AddTriangleFilled(at(arrow.tip), at(base + aside), at(base - aside), ink);
}

}  // namespace

glm::vec2 measure_number(const std::string& text) {
    return {text_width(text, TextFace::bold) + grid(2), ImGui::GetTextLineHeight() + grid(0.5F)};
}

void draw_dimensions(ImDrawList& list,
                     ImVec2 origin,
                     std::span<const Dimension> dimensions,
                     std::span<const PlacedDimension> placed,
                     bool on_light_ground) {
    const DimensionInk ink = dimension_ink(on_light_ground);
    const auto at = [&](glm::vec2 p) { return ImVec2{origin.x + p.x, origin.y + p.y}; };
    const float thin = std::max(1.0F, grid(0.25F));
    for (const PlacedDimension& one : placed) {
        for (const auto* strokes : {&one.extensions, &one.lines}) {
            for (const auto& [from, to] : *strokes)
                list.AddLine(at(from), at(to), ink.edge, 3 * thin);
        }
        for (const auto& [from, to] : one.extensions)
            list.AddLine(at(from), at(to), ink.line, thin);
        for (const auto& [from, to] : one.lines)
            list.AddLine(at(from), at(to), ink.line, 1.5F * thin);
        for (const DimensionArrow& arrow : one.arrows)
            draw_arrow(list, origin, arrow, ink.line);
        list.AddRectFilled(at(one.number.low), at(one.number.high), ink.ground, grid(0.75F));
        text_at(list, at(one.number.low + glm::vec2{grid(1), grid(0.25F)}),
                dimensions[one.dimension].text, ink.line, TextFace::bold);
    }
}

}  // namespace beamfork
