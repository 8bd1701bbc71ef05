// The table behind glossary(): words and nothing else.
#pragma once

#include <span>

#include "scene/words/glossary.hpp"

namespace beamfork {

std::span<const Term> glossary_table();

}  // namespace beamfork
