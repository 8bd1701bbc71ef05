// How thorough tests that try everything are: under the sanitizers all takes ten times as long, and what they find is
// found in a part of it as well.
#pragma once

#include <cstddef>

namespace test_effort {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool is_sanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool is_sanitized = true;
#else
inline constexpr bool is_sanitized = false;
#endif
#else
inline constexpr bool is_sanitized = false;
#endif

/// Of a long row, the first, and then one of so many.
inline constexpr std::size_t one_of = is_sanitized ? 4 : 1;

}  // namespace test_effort
