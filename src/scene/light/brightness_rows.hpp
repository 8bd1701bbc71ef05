// Brightness ready to show: what every surface lets through for each eye as a falling staircase of
// magnitudes, and the numbers per eye and for both.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;
struct Setup;

/// One surface. An eye whose light does not meet it has no value and no bar.
struct BrightnessStepRow {
    std::string label;  ///< "<part>: <face>"
    std::optional<std::size_t> part;
    std::string help;
    struct Bar {
        std::string passes;  ///< "99.5" %, or "–"
        double from = 0;     ///< magnitudes lost before it
        double to = 0;       ///< and after it
    };
    std::array<Bar, 2> eyes;  ///< left, right
};

/// A number for each eye.
struct EyePairRow {
    std::string label;
    std::array<std::string, 2> values;  ///< left, right
    std::string unit;
    std::string help;
};

struct BrightnessRows {
    std::string sentence;  ///< what a reader takes home
    std::vector<EyePairRow> per_eye;
    std::vector<ValueRow> both;
    std::vector<BrightnessStepRow> steps;
    double most_lost = 1;  ///< magnitudes at the end of the longer staircase: the axis's end
};

BrightnessRows brightness_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
