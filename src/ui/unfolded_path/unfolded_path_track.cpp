#include <algorithm>
#include <cmath>

#include "trace/ray.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/unfolded_path/unfolded_path_picture.hpp"

namespace beamfork {

namespace {

constexpr double dying_stretch = 60;  // mm of a ray that is clipped, as in the picture

float line_width() { return std::max(1.0F, grid(0.25F)); }

// One eye's half of the picture, or all of it when it is drawn alone.
struct TrackPainter {
    const PathCanvas& canvas;
    const EyeTrack& track;
    ImDrawList& list;
    double sign;

    TrackPainter(const PathCanvas& on, const EyeTrack& of)
        : canvas(on), track(of), list(on.list), sign(drawn_sign(of.eye)) {}

    [[nodiscard]] ImVec2 at(double place, double height) const {
        return canvas.at(place, sign * height);
    }
    [[nodiscard]] bool is_lit(std::size_t part) const {
        return canvas.lit_part == static_cast<int>(part);
    }

    void draw() const {
        const float axis = canvas.at(0, 0).y;
        const bool is_alone = canvas.eyes != UnfoldedEyes::both;
        const bool is_above = track.eye == Eye::left;
        const ImVec2 low{canvas.area.left, is_alone || is_above ? canvas.area.top : axis};
        const ImVec2 high{canvas.area.right(), is_alone || !is_above ? canvas.area.bottom() : axis};
        if (high.y <= low.y) return;
        list.PushClipRect(low, high, true);
        draw_glass();
        draw_light();
        draw_walls();
        for (const Jaw& jaw : track.jaws)
            draw_jaw(jaw);
        for (const GlassBlock& block : track.glass)
            name_glass(block);
        list.PopClipRect();
    }

    void draw_glass() const {
        for (const GlassBlock& block : track.glass) {
            const ImVec2 a = at(block.from, block.above);
            const ImVec2 b = at(block.to, block.below);
            const ImVec2 low{std::min(a.x, b.x), std::min(a.y, b.y)};
            const ImVec2 high{std::max(a.x, b.x), std::max(a.y, b.y)};
            list.AddRectFilled(low, high,
                               colour(ColourRole::glass, is_lit(block.part) ? 0.26F : 0.15F));
            list.AddRect(low, high, colour(ColourRole::glass, 0.5F), 0, 0, line_width());
            draw_counted(block);
        }
    }

    // The length that counts, filled, within the real one, outlined; at the outer side of the glass.
    void draw_counted(const GlassBlock& block) const {
        const float thick = grid(1.5F);
        const double out = canvas.eyes == UnfoldedEyes::right ? block.below : block.above;
        const float outer = at(block.from, out).y;
        const float inner = outer + (outer < canvas.mid() ? thick : -thick);
        const ImVec2 low{canvas.x(block.from), std::min(outer, inner)};
        const float end = low.y + thick;
        list.AddRectFilled(low, {canvas.x(block.from + block.reduced), end},
                           colour(ColourRole::glass, 0.65F));
        list.AddRect(low, {canvas.x(block.to), end}, colour(ColourRole::glass, 0.65F), 0, 0,
                     line_width());
    }

    // Beside the glass, where no light runs; a little wider than the glass at most.
    void name_glass(const GlassBlock& block) const {
        const double out = canvas.eyes == UnfoldedEyes::right ? block.below : block.above;
        const float outer = at(block.from, out).y;
        const float left = canvas.x(block.from);
        const float width = canvas.x(block.to) - left;
        const float text = text_width(block.label);
        if (0.6F * text > width) return;
        const float line = ImGui::GetTextLineHeight();
        const ImVec2 low{left + (width - text) / 2,
                         outer < canvas.mid() ? outer - line - grid(0.5F) : outer + grid(0.5F)};
        list.AddRectFilled(low, {low.x + text, low.y + line}, colour(Tone::ground, 0.7F));
        text_at(list, low, block.label, text_colour(ColourRole::glass));
    }

    void draw_light() const {
        // Edges of the field first: the light of the middle lies over it.
        for (auto cone = track.cones.rbegin(); cone != track.cones.rend(); ++cone) {
            for (const LightBand& band : cone->bands)
                draw_band(band, cone->field == 0);
        }
    }

    void draw_band(const LightBand& band, bool is_middle) const {
        const float fill = is_middle ? 0.2F : 0.09F;
        const float edge = is_middle ? 0.95F : 0.5F;
        const float left = canvas.area.left;
        const float right = canvas.area.right();
        const float parting = canvas.x(track.dividing);
        const bool is_lost = band.fate != RayFate::reached;
        const float dying = is_lost ? canvas.x(band.places.back().at - dying_stretch) : right;
        const float alive_edge = is_lost ? 0 : edge;  // what arrives is outlined
        paint_between(band, left, std::min(parting, dying),
                      {ColourRole::undivided_beam, 0.8F * fill, alive_edge});
        paint_between(band, parting, dying, {track.role, fill, alive_edge});
        if (!is_lost) return;
        paint_between(band, dying, right, {ColourRole::clipped, fill + 0.15F, 0.8F * edge});
        const BandPlace& end = band.places.back();
        mark_end(at(end.at, (end.a + end.b) / 2), band.fate == RayFate::leaked, 0.9F);
    }

    struct BandLook {
        ColourRole role;
        float fill;
        float edge;
    };
    void paint_between(const LightBand& band, float low, float high, const BandLook& look) const {
        if (low >= high) return;
        list.PushClipRect({low, canvas.area.top}, {high, canvas.area.bottom()}, true);
        paint_band(band, colour(look.role, look.fill), colour(look.role, look.edge));
        list.PopClipRect();
    }

    // Without smoothed edges, which would show as seams between the pieces.
    void paint_band(const LightBand& band, ImU32 fill, ImU32 edge) const {
        const ImDrawListFlags before = list.Flags;
        list.Flags &= ~ImDrawListFlags_AntiAliasedFill;
        for (std::size_t i = 1; i < band.places.size(); ++i) {
            const BandPlace& p = band.places[i - 1];
            const BandPlace& q = band.places[i];
            list.AddQuadFilled(at(p.at, p.a), at(q.at, q.a), at(q.at, q.b), at(p.at, p.b), fill);
        }
        list.Flags = before;
        if ((edge & IM_COL32_A_MASK) == 0) return;
        for (const auto side : {&BandPlace::a, &BandPlace::b}) {
            for (const BandPlace& place : band.places)
                list.PathLineTo(at(place.at, place.*side));
            list.PathStroke(edge, 0, line_width());
        }
    }

    void draw_walls() const {
        for (const TubeWall& wall : track.walls) {
            const ImU32 ink = colour(ColourRole::metal, is_lit(wall.part) ? 0.9F : 0.55F);
            for (const double height : {wall.above, wall.below})
                list.AddLine(at(wall.from, height), at(wall.to, height), ink, line_width());
        }
    }

    void draw_jaw(const Jaw& jaw) const {
        if (jaw.kind == JawKind::fold)
            list.AddLine(at(jaw.above.x, jaw.above.y), at(jaw.below.x, jaw.below.y),
                         colour(ColourRole::glass, 0.55F), line_width());
        if (jaw.kind == JawKind::lens) draw_lens(jaw);
        const bool is_wedge = jaw.kind == JawKind::opening || jaw.kind == JawKind::field_stop;
        for (const AxisPlace& edge : {jaw.above, jaw.below}) {
            const ImVec2 tip = at(edge.x, edge.y);
            const float away = edge.y * sign > 0 ? -1.0F : 1.0F;
            if (is_wedge || jaw.bites()) draw_wedge(jaw, tip, away);
            if (jaw.bites()) mark_end(tip, jaw.loss.is_leak, 1.4F);
        }
    }

    void draw_wedge(const Jaw& jaw, ImVec2 tip, float away) const {
        const float height = grid(jaw.kind == JawKind::field_stop ? 6.5F : 5);
        const float half = grid(jaw.bites() || jaw.kind == JawKind::field_stop ? 1 : 0.7F);
        const ColourRole role = jaw.bites()                       ? ColourRole::clipped
                                : jaw.kind == JawKind::field_stop ? ColourRole::undivided_beam
                                                                  : ColourRole::metal;
        const float end = tip.y + away * height;
        list.AddTriangleFilled(tip, {tip.x - half, end}, {tip.x + half, end},
                               colour(role, is_lit(jaw.part) ? 1 : 0.85F));
    }

    // The sign of optics: arrowheads outward for a lens that gathers, inward for one that spreads.
    void draw_lens(const Jaw& jaw) const {
        const ImU32 ink = colour(ColourRole::glass, is_lit(jaw.part) ? 1 : 0.85F);
        const float width = grid(0.5F);
        list.AddLine(at(jaw.above.x, jaw.above.y), at(jaw.below.x, jaw.below.y), ink, width);
        const float barb = grid(1.5F);
        for (const AxisPlace& edge : {jaw.above, jaw.below}) {
            const ImVec2 tip = at(edge.x, edge.y);
            const float away = edge.y * sign > 0 ? -1.0F : 1.0F;
            const float to = tip.y + (jaw.focal_length < 0 ? away : -away) * barb;
            list.AddLine(tip, {tip.x - barb, to}, ink, width);
            list.AddLine(tip, {tip.x + barb, to}, ink, width);
        }
    }

    // As in the picture: a cross where light is clipped, a ring where it leaks out.
    void mark_end(ImVec2 centre, bool is_leak, float size) const {
        const float r = grid(size);
        const ImU32 ink = text_colour(ColourRole::clipped);
        const float width = grid(0.5F);
        if (is_leak) {
            list.AddCircle(centre, r, ink, 0, width);
            return;
        }
        list.AddLine({centre.x - r, centre.y - r}, {centre.x + r, centre.y + r}, ink, width);
        list.AddLine({centre.x - r, centre.y + r}, {centre.x + r, centre.y - r}, ink, width);
    }
};

}  // namespace

void draw_unfolded_track(const PathCanvas& canvas, const EyeTrack& track) {
    TrackPainter(canvas, track).draw();
}

}  // namespace beamfork
