// Fit as rows of numbers with their formulas in words: eyes and eyepieces, weight, joints.
#pragma once

#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;
struct Setup;

/// One joint: both ends as words, and a sign beside the colour.
struct JointRow {
    std::size_t behind = 0;  ///< the part it is about
    std::string parts;       ///< "Focuser → Prism diagonal"
    std::string ends;        ///< "2 in holder | 1.25 in barrel", or what is unstated
    std::string verdict;     ///< "fits", "needs an adapter" or "not stated"
    ColourRole role = ColourRole::dimension;
    std::string help;
};

struct FitRows {
    std::vector<ValueRow> eyes;
    std::vector<ValueRow> weight;
    std::vector<JointRow> joints;
    std::string image;        ///< how it stands, in both eyes
    std::string weight_note;  ///< what is not known, and the caution
};

FitRows fit_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
