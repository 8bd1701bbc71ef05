// Everything the program knows of one setup with one eyepiece pair, observer and target: the train at its
// focus and all studies of it. Derived, never saved.
#pragma once

#include <array>

#include "study/findings/findings.hpp"
#include "study/fit/fit.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/focus/other_uses.hpp"
#include "study/focus/pupil_distance.hpp"
#include "study/focus/reach_table.hpp"
#include "study/focus/real_focus.hpp"
#include "study/focus/uncertainty.hpp"
#include "study/image/coma_correction.hpp"
#include "study/image/figure_doubt.hpp"
#include "study/image/image_quality.hpp"
#include "study/light/brightness.hpp"
#include "study/light/clipping.hpp"
#include "study/light/magnification.hpp"
#include "study/two_eyes/alignment.hpp"
#include "study/two_eyes/orientation.hpp"
#include "study/ways_to_focus/ways_to_focus.hpp"

namespace beamfork {

struct Report {
    Train train;  ///< with the drawtube where the budget puts it
    FocusBudget budget;
    Magnification magnification;
    Fit fit;
    DistanceCoupling distance;  ///< what setting the head to a pupil distance does to focus
    std::vector<OtherUse> other_uses;
    Uncertainty uncertainty;
    ReachTable reach;                             ///< of every combination, whichever is chosen
    std::array<ImageOrientation, 2> orientation;  ///< left, right
    std::array<EyeClipping, 2> clipping;          ///< left, right
    std::array<RealFocus, 2> real_focus;
    std::array<EyeImage, 2> image_quality;
    std::optional<FigureDoubt> figure_doubt;         ///< of a moving mirror whose figure is unknown
    std::vector<ComaCorrection> coma_corrections;    ///< of the left eye, in the order of the light
    std::array<Millimetres, 2> image_behind_stop{};  ///< paraxial; negative: before the field stop
    std::vector<WayToFocus> ways_to_focus;  ///< best first; empty when focus is reached well
    Brightness brightness;
    Alignment alignment;
    std::vector<Finding> findings;  ///< most severe first
    bool cures_are_sought =
        false;  ///< findings have their cures (cure_search.hpp); else nobody has looked

    [[nodiscard]] const EyeClipping& clipping_of(Eye eye) const { return clipping[side_of(eye)]; }
    /// By how much the image falls before (+) where this eye wants it, along the axis in air.
    [[nodiscard]] Millimetres gap(Eye eye) const;
};

/// Errors as build_train. The two eyes are traced side by side on two threads; the result does not
/// depend on that.
Result<Report> make_report(const Setup& setup, const Choice& choice, ClippingEffort effort = {});

/// With the setup's reach table as it was made before: it is the same for all choices but for what it is held against.
/// On this thread alone: for those who make several reports at once.
Result<Report> make_report(const Setup& setup,
                           const Choice& choice,
                           ClippingEffort effort,
                           const ReachTable& reach);

/// The setup's own choice as far as its findings go, to try a change: without the ways to focus and the diffraction
/// pictures, which no finding's severity or sentence looks at. On this thread alone.
Result<Report> make_trial(const Setup& setup, ClippingEffort effort);

/// All findings of a report, most severe first.
std::vector<Finding> find_all(const Setup& setup, const Report& report);

/// True when something fails or is poor, sharpness apart: the setup should not go into the night like this.
bool is_poor(const std::vector<Finding>& findings);

}  // namespace beamfork
