// Setups with a part put in, taken out or exchanged; what is chosen stays chosen, wherever it moves.
#pragma once

#include <string>

#include "train/setup.hpp"

namespace beamfork {

/// The part stands before the part that is at `at` now, under a name that no other part of its role has.
Setup with_part(Setup setup, std::size_t at, Part part);
Setup without_part(Setup setup, std::size_t at);
/// The part at `at` becomes another, which is joined as it was: it takes over both fittings where it says none.
Setup with_body(Setup setup, std::size_t at, PartBody body, const std::string& name);

}  // namespace beamfork
