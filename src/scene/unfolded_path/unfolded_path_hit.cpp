#include <algorithm>
#include <cmath>

#include "scene/unfolded_path/unfolded_path_view.hpp"

namespace beamfork {

namespace {

constexpr double near_px = 6;
constexpr double jaw_px = 22;  // how far a jaw is drawn outward from its edge

bool is_on_jaw(const Jaw& jaw, const UnfoldedView& view, double x, double height) {
    const AxisPlace& edge = height >= 0 ? jaw.above : jaw.below;
    const double outward = (std::abs(height) - std::abs(edge.y)) * view.px_per_mm * view.across;
    return std::abs(view.x_of(edge.x) - x) <= near_px && outward >= -near_px && outward <= jaw_px;
}

bool is_in_glass(const GlassBlock& block, double place, double height) {
    return place >= block.from && place <= block.to && height <= block.above
           && height >= block.below;
}

std::optional<PathHit>
hit_on(const EyeTrack& track, const UnfoldedView& view, double x, double height) {
    const double eyepiece_place = view.x_of(track.focus.real);
    const bool is_on_axis = std::abs(height) * view.px_per_mm * view.across <= near_px;
    if (is_on_axis && std::abs(eyepiece_place - x) <= near_px)
        return PathHit{track.jaws.back().part, track.focus.help};
    // What bites is meant rather than what lies beside it.
    const Jaw* found = nullptr;
    for (const Jaw& jaw : track.jaws) {
        if (!is_on_jaw(jaw, view, x, height)) continue;
        if (found == nullptr || jaw.loss.share > found->loss.share) found = &jaw;
    }
    if (found != nullptr) return PathHit{found->part, found->help};
    for (const GlassBlock& block : track.glass) {
        if (is_in_glass(block, view.place_at(x), height)) return PathHit{block.part, block.help};
    }
    return std::nullopt;
}

}  // namespace

bool shows(UnfoldedEyes eyes, Eye eye) {
    return eyes == UnfoldedEyes::both || (eyes == UnfoldedEyes::left) == (eye == Eye::left);
}

PathHit path_under(
    const UnfoldedPathRows& rows, UnfoldedEyes eyes, const UnfoldedView& view, double x, double y) {
    const double height = view.height_at(y);
    for (const EyeTrack& track : rows.eyes) {
        if (!shows(eyes, track.eye)) continue;
        const double own = drawn_sign(track.eye) * height;
        if (eyes == UnfoldedEyes::both && own < 0) continue;
        if (auto hit = hit_on(track, view, x, own)) return *hit;
    }
    const double place = view.place_at(x);
    const PathStretch* shortest = nullptr;
    for (const PathStretch& stretch : rows.stretches) {
        const double low = std::min(stretch.from, stretch.to);
        const double high = std::max(stretch.from, stretch.to);
        if (place < low || place > high) continue;
        if (shortest == nullptr || high - low < std::abs(shortest->to - shortest->from))
            shortest = &stretch;
    }
    return shortest != nullptr ? PathHit{shortest->part, shortest->help} : PathHit{};
}

}  // namespace beamfork
