#include "base/chance.hpp"

#include "base/text.hpp"

namespace beamfork {

std::string format_chance(double chance) {
    if (chance > 0.995) return "more than 99";
    if (chance < 0.005) return "less than 1";
    return format_number(100 * chance, 0);
}

std::string short_chance(double chance) {
    if (chance > 0.995) return "> 99";
    if (chance < 0.005) return "< 1";
    return format_number(100 * chance, 0);
}

}  // namespace beamfork
