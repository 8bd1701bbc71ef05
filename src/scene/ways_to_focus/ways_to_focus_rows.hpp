// The ways to reach focus, ready to show: what to do, what it gives, what it costs.
#pragma once

#include <string>
#include <vector>

#include "scene/findings/finding_rows.hpp"

namespace beamfork {

struct WayRow {
    FindingSign sign =
        FindingSign::tick;  ///< tick: suffices; triangle: reaches barely; cross: not alone
    ColourRole role = ColourRole::good;
    std::string what;
    std::string effect;  ///< "gives back 36.4 mm; 6.4 mm left inward; 1.40× the magnification"
    std::string light;   ///< "Light: stars 0.06 mag fainter; areas 0.41 mag dimmer"
    std::string cost;    ///< a sentence; begins with how easily it is gone back on
};

/// How a row's figures are worked out, for its hover.
std::string ways_to_focus_help();

std::vector<WayRow> ways_to_focus_rows(const Report& report);

/// The setup with the way of that row carried out.
const Setup& setup_of_way(const Report& report, std::size_t row);

/// One sentence above the list: what is wanted, or that nothing need be done.
std::string ways_to_focus_sentence(const Report& report);

}  // namespace beamfork
