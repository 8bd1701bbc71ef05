// The unfolded path: the whole train straightened, to scale, from the telescope's converging light to both field
// stops, as plain data. Places are mm along the unfolded axis of each eye and mm across it (scene/unfolded_path/unfolded_axis.hpp).
//
// Each eye is cut by the plane in which its arm folds; heights are positive on the side of the field that gets less
// light.
#pragma once

#include <array>
#include <span>
#include <string>
#include <vector>

#include "parts/eye.hpp"
#include "scene/handles/movable_length.hpp"
#include "scene/kit/colours.hpp"
#include "scene/picture/opening_loss.hpp"
#include "scene/unfolded_path/unfolded_cones.hpp"

namespace beamfork {

struct Report;
struct Setup;

/// A part's place along the left eye's axis and what it does to the light path.
struct PathStretch {
    std::size_t part = 0;
    std::string name;
    double from = 0;  ///< `to` may lie before it: a part that reaches back into the one before
    double to = 0;
    double reduced = 0;  ///< air-equivalent mm that its glass and air spend
    std::string value;   ///< "−35.0 mm", "+65.0 mm"
    ColourRole role = ColourRole::dimension;
    std::string help;
};

/// Glass without a break: `length` mm that count as `reduced` = length / index.
struct GlassBlock {
    std::size_t part = 0;
    double from = 0;
    double to = 0;
    double above = 0;  ///< where it ends across the axis, mm; `below` is negative
    double below = 0;
    double index = 1;  ///< at the primary wavelength
    double length = 0;
    double reduced = 0;
    std::string label;  ///< "99.0 → 63.0 mm"
    std::string help;
};

enum class JawKind { opening, face, fold, lens, field_stop };

/// An opening as a pair of jaws: everything beyond `above` and `below` is stopped.
struct Jaw {
    std::size_t part = 0;
    std::size_t surface = 0;  ///< index into EyePath::surfaces
    JawKind kind = JawKind::opening;
    std::string name;  ///< as EndShare's: "<part>: <opening>"
    AxisPlace above{0};
    AxisPlace below{0};
    Loss loss;                ///< by the clipping study
    double focal_length = 0;  ///< of a lens, mm; 0: none
    std::string help;
    [[nodiscard]] bool bites() const { return loss.share >= share_that_shows; }
};

/// Straight walls between two equal openings of one part.
struct TubeWall {
    std::size_t part = 0;
    double from = 0;
    double to = 0;
    double above = 0;
    double below = 0;
};

/// Where the image really is, and where this eye wants it.
struct FocusMark {
    double real = 0;
    double wanted = 0;
    double gap = 0;  ///< mm in air: positive when the image falls before its place
    bool is_in_focus = false;
    std::string text;  ///< "focus 30.0 mm short"
    std::string help;
};

/// One eye's light, glass and openings.
struct EyeTrack {
    Eye eye = Eye::left;
    std::string name;  ///< "Left eye"
    ColourRole role = ColourRole::left_arm;
    double dividing = 0;  ///< where the two arms part
    double stop = 0;      ///< the field stop's place
    std::vector<LightCone> cones;
    std::vector<GlassBlock> glass;
    std::vector<Jaw> jaws;
    std::vector<TubeWall> walls;
    FocusMark focus;
};

/// Where the drawtube's rear face can stand, and where it stands.
struct DrawtubeZone {
    std::size_t part = 0;
    double racked_in = 0;
    double racked_out = 0;
    double present = 0;
    double wanted = 0;
    bool shows_wanted = false;  ///< not with a moving mirror: it focuses instead
    ColourRole role = ColourRole::good;
    std::string text;
    std::string help;
};

/// A length of a part that can be changed by moving something along the axis.
struct Grip : MovableLength {
    double at = 0;      ///< what moves
    double anchor = 0;  ///< what stays with its part
    std::string text;   ///< "12.0 mm"
    std::string help;
};

struct UnfoldedPathRows {
    std::vector<PathStretch> stretches;  ///< in the order of the light
    std::array<EyeTrack, 2> eyes;        ///< left, right
    DrawtubeZone drawtube;
    std::vector<Grip> grips;
    double zero = 0;      ///< the drawtube's rear face racked in: where a scale starts
    double fit_from = 0;  ///< what a first look shows
    double fit_to = 1;
    double fit_height = 1;  ///< to either side of the axis, mm
};

UnfoldedPathRows unfolded_path_rows(const Setup& setup, const Report& report);

/// An opening that takes light, with the eye whose light it takes most of.
struct BitingJaw {
    Eye eye = Eye::left;
    Jaw jaw;
};

/// The worst openings of these eyes, each name once, those that take most first.
std::vector<BitingJaw>
worst_jaws(const UnfoldedPathRows& rows, std::span<const Eye> eyes, std::size_t most);

}  // namespace beamfork
