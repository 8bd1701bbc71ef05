// What a change does to the numbers an observer cares for, in words.
#pragma once

#include <string>

#include "study/report.hpp"

namespace beamfork {

struct CureEffect {
    std::string
        gains;  ///< "6.4 mm of travel left inward; 28 to 38×"; other magnification and field included
    std::string losses;  ///< "edge light 70 to 41 %"; may be empty
};

/// Only what changes so much that it is noticed. Both reports are of setups that make a train.
CureEffect effect_of_cure(const Report& before, const Report& after);

}  // namespace beamfork
