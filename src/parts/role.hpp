// Where a part belongs in the train.
#pragma once

#include <cstddef>

namespace beamfork {

/// A setup lists its parts in this order.
enum class Role { telescope, focuser, chain, splitter, eyepiece, observer, target };
inline constexpr std::size_t role_count = 7;

}  // namespace beamfork
