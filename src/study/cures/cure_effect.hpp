// What a change does to the numbers an observer cares for, in words.
#pragma once

#include <string>
#include <vector>

#include "study/findings/cure.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

/// All that is noticed, gains first; other magnification and field count as gains.
using CureEffect = std::vector<EffectLine>;

/// "edge light 70 to 75 %; magnification 28 to 38×": the gains, or what is lost. Empty when there are none.
std::string effect_text(const CureEffect& effect, bool gains);

/// Only what changes so much that it is noticed. Both reports are of setups that make a train.
CureEffect effect_of_cure(const Report& before, const Report& after);

}  // namespace beamfork
