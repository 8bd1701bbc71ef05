// A chance in words.
#pragma once

#include <string>

namespace beamfork {

/// A chance of 0 to 1 in whole percent, without the sign: "96". What is a matter of chance is never quite sure:
/// "more than 99", "less than 1".
std::string format_chance(double chance);
/// The same in signs, for columns: "> 99", "< 1".
std::string short_chance(double chance);

}  // namespace beamfork
