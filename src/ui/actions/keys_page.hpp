// The page of all keys, by topic, from the tables of actions.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

inline constexpr const char* keys_popup = "Keys";

void draw_keys_page(const Ui& ui);

}  // namespace beamfork
