// What every surface lets through, and how much light enters each eye.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_brightness_panel(const Ui& ui);

}  // namespace beamfork
