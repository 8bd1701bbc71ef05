// Image quality ready to draw: for each eye, on axis and at the edge of its field, the spot in three colours, the
// light within a circle, and the numbers; ahead of all a sentence.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "parts/eye.hpp"
#include "scene/kit/colours.hpp"
#include "scene/kit/value_row.hpp"
#include "train/wavelengths.hpp"

namespace beamfork {

struct Report;

struct ImagePointRows {
    std::string name;  ///< "Left eye, on axis"
    bool is_formed = false;
    std::array<std::vector<glm::dvec2>, wavelength_count> spots;  ///< µm from the spot's middle
    double widest = 0;                                            ///< farthest ray from it, µm
    std::vector<double> energy;    ///< share of the light within each of ImageRows::radii, 0..1
    std::vector<ValueRow> values;  ///< alike for all points
};

struct EyeImageRows {
    Eye eye = Eye::left;
    ColourRole role = ColourRole::left_arm;
    std::array<ImagePointRows, 2> points;  ///< on axis, at the edge
};

struct ImageRows {
    std::string sentence;                ///< what a reader takes home
    double airy_radius = 0;              ///< µm
    std::vector<double> radii;           ///< µm, from 0
    std::vector<double> perfect_energy;  ///< of a perfect image through a whole round aperture
    std::array<EyeImageRows, 2> eyes;    ///< left, right
};

ImageRows image_quality_rows(const Report& report);

}  // namespace beamfork
