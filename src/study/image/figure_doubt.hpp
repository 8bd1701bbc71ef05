// What is not known of a moving-mirror telescope's sharpness while the figure of its mirrors is unknown: the third-order
// spherical aberration that the mirrors have at this focus lies between those of the figures that exist.
#pragma once

#include <optional>
#include <string>

#include "train/train.hpp"

namespace beamfork {

/// Of the mirrors with their corrector alone, W040 in waves of the e line: positive where the rim's path is longer.
struct FigureDoubt {
    double low = 0;
    double high = 0;
    /// A quarter of a wave at the rim is the usual limit of what shows (Lord Rayleigh's; common practice).
    [[nodiscard]] bool matters() const;
    /// "Nobody has said how its mirrors are figured; ... ", in two sentences.
    [[nodiscard]] std::string sentence() const;
};

/// Nothing for other telescopes and where the figure is stated.
std::optional<FigureDoubt> figure_doubt(const Setup& setup, const Train& train);

}  // namespace beamfork
