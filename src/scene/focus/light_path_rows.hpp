// What each part takes from the light path: derived from its glass and air, against what its maker states.
// Reduced (air-equivalent) mm.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace beamfork {

struct Report;
struct Setup;

struct LightPathRow {
    std::size_t part = 0;
    std::string name;
    std::string
        derived;  ///< mm, one decimal; both arms when they differ: "101.2 / 103.4"; at the setting
                  ///< for which a light path is stated
    std::string stated;      ///< mm, or "–" when unstated
    std::string difference;  ///< stated less derived, signed, or "–"
    std::string now;  ///< mm at the observer's pupil distance; empty when that makes no difference
    std::string glass;  ///< mm of glass, or "–"
    std::string note;   ///< what becomes of the difference; empty when there is none
    bool differs = false;
    bool fits = true;  ///< the part has enough air to take up the difference
};

std::vector<LightPathRow> light_path_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
