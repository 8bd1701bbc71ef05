// The built-in tours one by one, each in a source of its own name; built_in_tours.hpp has them all.
#pragma once

#include "document/tour.hpp"

namespace beamfork {

struct Report;

Tour why_it_will_not_focus(const Setup& setup, const Report& report);
Tour what_a_shifter_does(const Setup& setup, const Report& report);
Tour what_glass_does(const Setup& setup, const Report& report);
Tour why_the_edge_goes_dark(const Setup& setup, const Report& report);

}  // namespace beamfork
