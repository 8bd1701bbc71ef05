// What would mend a finding: a change of the setup that was worked out and studied anew, what it brings and what
// it costs. Which changes are tried is common practice, no source; what they do is computed.
#pragma once

#include <string>
#include <vector>

#include "study/ways_to_focus/reversibility.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// One number that a change of the setup makes another, in words: "edge light", "70 to 75 %".
struct EffectLine {
    std::string quantity;
    std::string change;  ///< with its unit
    bool is_gain = true;
    bool operator==(const EffectLine&) const = default;
};

struct Cure {
    std::string what;  ///< what to do, as an order, with mm: "Put rings of 3.0 mm on the barrels"
    std::vector<EffectLine> effect{};  ///< by the studies of the changed setup, gains first
    std::string cost{};  ///< what it asks for and spoils besides, in sentences; may be empty
    Reversibility reversibility = Reversibility::exchange;
    bool removes = false;  ///< the finding is gone with it; else it is only smaller
    Setup setup{};         ///< with it carried out, its choice included
    bool operator==(const Cure&) const = default;
};

}  // namespace beamfork
