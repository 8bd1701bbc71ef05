// The two eyes, and what is said of one of them.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace beamfork {

enum class Eye { left, right };
inline constexpr std::array both_eyes{Eye::left, Eye::right};

/// Its place in an array that holds the left eye's and the right eye's.
constexpr std::size_t side_of(Eye eye) { return eye == Eye::left ? 0 : 1; }

constexpr std::string_view name_of(Eye eye) { return eye == Eye::left ? "left" : "right"; }

/// "Left eye": at the head of a column.
constexpr std::string_view title_of(Eye eye) { return eye == Eye::left ? "Left eye" : "Right eye"; }

}  // namespace beamfork
