// A setup as TOML text (*.train.toml), and back. The format runs off the part kinds' fields: this code
// knows no kind by name. Keys are explained in src/document/README.md.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "document/document.hpp"

namespace beamfork {

/// The newest version of the format that this program reads, and the one it writes.
constexpr int file_version = 1;
/// Larger files are refused: a setup of a hundred parts with comments needs a fortieth of it.
constexpr std::size_t largest_file = 4U << 20U;
/// More keys without effect are refused: a file with so many is none of ours.
constexpr std::size_t most_notices = 1000;

/// Something in a file that is kept but has no effect, such as a mistyped key: where, and one sentence
/// with the nearest known name.
struct Notice {
    int line = 0;
    std::string text;
    bool operator==(const Notice&) const = default;
};

struct ReadSetup {
    Document document;
    std::vector<Notice> notices;  ///< in the order of their lines
};

/// `file_name` is for the error alone. Fields that are left out take their kind's values. The setup that
/// is returned has no order fault, no value out of range, and different names within each role.
Result<ReadSetup> read_setup(std::string_view text, const std::string& file_name);

/// All fields in the order of their kind; reads back to the same document.
std::string write_setup(const Document& document);

Result<ReadSetup> load_file(const std::filesystem::path& path);

/// Whole or not at all: on an error the old file is as it was (document/atomic_file.hpp).
Result<void> save_file(const std::filesystem::path& path, const Document& document);

}  // namespace beamfork
