// What a TOML file of this program begins with, whatever it holds: it is text, valid TOML, and says the version of its
// format. Used by the readers alone.
#pragma once

#include <string>
#include <string_view>

#include "document/read_entry.hpp"

namespace beamfork {

/// What a file says of itself.
struct FileFormat {
    std::string_view version_key;  ///< at the top: "beamfork"
    int newest = 1;                ///< version that this program reads, and the one it writes
    std::string_view what;         ///< it is: "setup"
};

tl::unexpected<Error> refuse(const Reading& reading, int line, std::string what);

/// The whole text as a table, its comments put into `reading`. Errors: too large, no text, no TOML, another version.
Result<toml::table> parse_file(Reading& reading, std::string_view text, const FileFormat& format);

/// The comment that opens a file whose first key is `from` stays on top, above the version that is written first.
void move_remark_to_top(Remarks& remarks, const FileFormat& format, const std::string& from);

}  // namespace beamfork
