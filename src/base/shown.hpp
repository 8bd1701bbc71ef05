// Text of strangers made safe to look at: what would steer a terminal, turn the direction of reading or cannot be seen
// is shown as JSON would write it ("\u001B").
#pragma once

#include <string>
#include <string_view>

namespace beamfork {

/// The same text with each control character (C0 but line break and tab, DEL, C1), each mark of direction (Unicode
/// Standard Annex 9, table of bidirectional formatting characters) and each letter without width escaped as \uXXXX, above
/// U+FFFF as a pair; a byte that is not UTF-8 as \xXX. Within a JSON text only the writing changes, not the value. To be
/// used where text leaves: terminal, HTML, SVG, title bar. Shown text is shown as it is.
std::string shown(std::string_view text);

/// The same for what belongs in one line, a key or a file's name: line breaks and tabs are escaped as well.
std::string shown_in_line(std::string_view text);

}  // namespace beamfork
