// Light at the field stops, ready to draw: how bright each place of the field is for each eye, which
// openings took the rest, and the numbers that follow.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "parts/eye.hpp"
#include "scene/kit/colours.hpp"
#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;
struct Setup;

/// One opening's band of a stacked plot: the light it takes, by ring, middle of the field first.
struct StopShare {
    std::string name;  ///< "<part>: <opening>"
    std::optional<std::size_t> part;
    bool is_leak = false;
    std::vector<double>
        share;  ///< 0..1 of the objective's light; as many as `LightRows::fractions`
    double largest = 0;
};

struct EyeLightRows {
    Eye eye = Eye::left;
    std::string name;  ///< "Left eye"
    ColourRole role = ColourRole::left_arm;
    std::vector<double> relative;   ///< mean of each ring, 0..1
    std::vector<double> lowest;     ///< its darkest direction
    std::vector<StopShare> shares;  ///< largest first
    std::vector<ValueRow> values;   ///< fully illuminated diameter, edge, working aperture
};

struct LightRows {
    std::vector<double> fractions;   ///< of the field stop's radius, 0 to 1
    std::vector<double> diameters;   ///< the same as mm on the field stop
    std::vector<EyeLightRows> eyes;  ///< left, right
    std::string sentence;            ///< what a reader takes home
};

LightRows light_at_stops_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
