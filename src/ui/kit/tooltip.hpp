// What a widget says of itself while the pointer rests on it.
#pragma once

#include <string_view>

namespace beamfork {

/// Wrapped at a readable width; shows while the last widget is under the pointer.
void tooltip(std::string_view text);

/// The same beside the last widget instead of over it: of one that holds much to read itself.
void tooltip_beside(std::string_view text);

}  // namespace beamfork
