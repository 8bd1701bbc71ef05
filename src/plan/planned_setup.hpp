// A planned train as a setup of its own, as it would be written down by hand: to be studied, saved and opened.
#pragma once

#include <string>

#include "document/document.hpp"
#include "plan/plan.hpp"

namespace beamfork {

/// All observers and targets that were planned for, but for targets too near for the telescope; looked at as in the use at
/// that index, of which the tube must be able to see the target.
Document planned_document(const Plan& plan, const PlannedTrain& train, std::size_t use);

/// "Club refractor + M42 prism diagonal + 1.6x shifter + Splitter head + 25 mm, 50° pair": what is told of a train;
/// spacers among it, the focuser left out where the telescope has no other in the drawer.
std::string train_words(const Plan& plan, const PlannedTrain& train);

}  // namespace beamfork
