// Writing a file whole or not at all, and reading one without trusting its size.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/error.hpp"

namespace beamfork {

/// Writes beside the file, forces the bytes to the disk, then puts the new file in the old one's place. On
/// an error the old file is as it was and nothing is left beside it. A symbolic link stays, and what it
/// points at is replaced; permissions of the old file are kept. The folder must exist. Errors:
/// `no_permission`, `not_found` (no such folder), `impossible` (disk full, not a plain file).
Result<void> replace_file(const std::filesystem::path& path, std::string_view bytes);

/// The bytes of a file; `bad_input` when there are more than `most`, whatever it claims to hold, and when a pipe or device
/// says nothing for as long as `patience`.
Result<std::string> read_file(const std::filesystem::path& path,
                              std::size_t most,
                              std::chrono::milliseconds patience = std::chrono::seconds(5));

}  // namespace beamfork
