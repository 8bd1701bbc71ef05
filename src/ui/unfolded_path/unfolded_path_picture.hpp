// Draws the unfolded path: light, glass, jaws and marks, and the words and scales along it.
#pragma once

#include "scene/unfolded_path/unfolded_path_view.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Where it is drawn, and what of it.
struct PathCanvas {
    ImDrawList& list;
    Area area;
    UnfoldedView view;
    UnfoldedEyes eyes = UnfoldedEyes::both;
    int lit_part = -1;  ///< under the pointer or selected
    [[nodiscard]] float mid() const { return area.top + area.height / 2; }
    [[nodiscard]] ImVec2 at(double place, double height) const {
        return {area.left + static_cast<float>(view.x_of(place)),
                mid() + static_cast<float>(view.y_of(height))};
    }
    [[nodiscard]] float x(double place) const { return at(place, 0).x; }
};

/// A word above the picture, tied to a place in it.
struct PathWord {
    std::string text;
    std::string brief;  ///< where room is short
    ImU32 ink = 0;
    ImVec2 to;
};

/// One eye's glass, light and jaws, in its half of the picture or in all of it when it is shown alone.
void draw_unfolded_track(const PathCanvas& canvas, const EyeTrack& track);

void draw_unfolded_path(const PathCanvas& canvas, const UnfoldedPathRows& rows);

/// Words in one line within `lane`, each with a line down to its place: in brief where room is short, the last ones
/// left out where it ends.
void draw_path_words(const PathCanvas& canvas, std::vector<PathWord> words, const Area& lane);

/// What is said above the picture: the gap of the focus, then the openings that take most.
std::vector<PathWord> path_words(const PathCanvas& canvas, const UnfoldedPathRows& rows);

/// Millimetres behind the racked-in drawtube, with its travel along the upper edge.
void draw_path_scale(const PathCanvas& canvas, const UnfoldedPathRows& rows, const Area& lane);

}  // namespace beamfork
