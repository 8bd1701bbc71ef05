#include "ui/unfolded_path/unfolded_path_picture.hpp"

#include <algorithm>
#include <cmath>

#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

float mark_line() { return std::max(1.0F, grid(0.25F)); }

void draw_lit_stretch(const PathCanvas& canvas, const UnfoldedPathRows& rows) {
    for (const PathStretch& stretch : rows.stretches) {
        if (static_cast<int>(stretch.part) != canvas.lit_part) continue;
        const float a = canvas.x(std::min(stretch.from, stretch.to));
        const float b = std::max(canvas.x(std::max(stretch.from, stretch.to)), a + grid(0.5F));
        canvas.list.AddRectFilled({a, canvas.area.top}, {b, canvas.area.bottom()},
                                  colour(Tone::raised_hot, 0.55F));
    }
}

// Both eyes' gaps are drawn once where they agree.
bool gaps_agree(const UnfoldedPathRows& rows) {
    constexpr double last_digit = 0.05;
    return std::abs(rows.eyes[0].focus.gap - rows.eyes[1].focus.gap) < last_digit;
}

void draw_image_mark(ImDrawList& list, ImVec2 centre, ImU32 ink) {
    const float r = grid(1.75F);
    list.AddQuadFilled({centre.x - r, centre.y}, {centre.x, centre.y - r}, {centre.x + r, centre.y},
                       {centre.x, centre.y + r}, ink);
    list.AddQuad({centre.x - r, centre.y}, {centre.x, centre.y - r}, {centre.x + r, centre.y},
                 {centre.x, centre.y + r}, colour(Tone::ground), mark_line());
}

// From the image to where the eye wants it, with its head there.
void draw_gap_arrow(const PathCanvas& canvas, const EyeTrack& track, float y) {
    const ImU32 ink = colour(ColourRole::shortfall);
    const float from = canvas.x(track.focus.real);
    const float to = canvas.x(track.focus.wanted);
    const float axis = canvas.at(0, 0).y;
    dashed_line(canvas.list, {from, axis}, {from, y}, ink, mark_line());
    dashed_line(canvas.list, {to, axis}, {to, y}, ink, mark_line());
    canvas.list.AddLine({from, y}, {to, y}, ink, grid(0.6F));
    const float barb = std::min(grid(1.75F), std::abs(to - from) / 2);
    const float back = from > to ? barb : -barb;
    for (const float side : {-0.6F, 0.6F})
        canvas.list.AddLine({to, y}, {to + back, y + side * barb}, ink, grid(0.6F));
}

void draw_focus(const PathCanvas& canvas, const UnfoldedPathRows& rows) {
    const bool agree = gaps_agree(rows);
    const bool is_both = canvas.eyes == UnfoldedEyes::both;
    for (const EyeTrack& track : rows.eyes) {
        if (!shows(canvas.eyes, track.eye)) continue;
        const bool is_first = track.eye == Eye::left || !is_both;
        const float y = is_first ? canvas.area.top + grid(1.5F) : canvas.area.bottom() - grid(1.5F);
        if (!track.focus.is_in_focus && (is_first || !agree)) draw_gap_arrow(canvas, track, y);
        ImVec2 centre = canvas.at(track.focus.real, 0);
        if (is_both && !agree) centre.y += is_first ? -grid(1.75F) : grid(1.75F);
        if (is_first || !agree)
            draw_image_mark(
                canvas.list, centre,
                colour(track.focus.is_in_focus ? ColourRole::good : ColourRole::shortfall));
    }
}

}  // namespace

void draw_unfolded_path(const PathCanvas& canvas, const UnfoldedPathRows& rows) {
    ImDrawList& list = canvas.list;
    const ImVec2 low = canvas.area.corner();
    const ImVec2 high{canvas.area.right(), canvas.area.bottom()};
    list.AddRectFilled(low, high, colour(Tone::ground), grid(0.5F));
    list.PushClipRect(low, high, true);
    draw_lit_stretch(canvas, rows);
    for (const EyeTrack& track : rows.eyes) {
        if (shows(canvas.eyes, track.eye)) draw_unfolded_track(canvas, track);
    }
    const float axis = canvas.at(0, 0).y;
    dashed_line(list, {low.x, axis}, {high.x, axis}, colour(Tone::text_dim, 0.6F), mark_line());
    draw_focus(canvas, rows);
    list.PopClipRect();
}

}  // namespace beamfork
