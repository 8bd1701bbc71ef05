// One entry of a file, such as a [[part]], as a part. Used by the readers alone.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/comments.hpp"
#include "document/setup_file.hpp"

#include <toml++/toml.h>

namespace beamfork {

/// What is at hand while one file is read.
struct Reading {
    std::string file_name;
    Comments comments;
    std::vector<Notice> notices;
    std::vector<std::pair<int, std::string>> lit_words{};  ///< of tours, with their lines
    [[nodiscard]] Where at(int line) const { return {file_name, line}; }
};

inline int line_of(const toml::node& node) { return static_cast<int>(node.source().begin.line); }
inline int line_of(const toml::key& key) { return static_cast<int>(key.source().begin.line); }

/// A value as the user would call it: "the text "12"", "a list".
std::string what_it_is(const toml::node& node);

/// The keys and values of a table in the order of the file.
std::vector<std::pair<const toml::key*, const toml::node*>> in_file_order(const toml::table& table);

/// The remark at a key and its value, or at an entry's heading.
Remark take_remark(Reading& reading, const toml::key& key, const toml::node& value);
void keep_remark(Remarks& remarks, std::string_view key, Remark remark);

/// Keeps a foreign key, and notes it with the nearest of the known ones.
Result<void> keep_unrecognised(Reading& reading,
                               const toml::key& key,
                               const toml::node& value,
                               std::map<std::string, std::string>& unrecognised,
                               const std::string& sentence);

/// A value that must be text; `what` names it in the error.
Result<std::string>
read_words(const Reading& reading, const toml::node& value, const std::string& what);

struct ReadEntry {
    Part part;
    int line = 0;
    int name_line = 0;  ///< 0 when the entry has no name and goes by its kind's label
};

/// `kind` is given for entries that are of one kind by their heading; else the entry says its kind. Of the keys `beside`,
/// which the file's own kind has besides, only the remarks are taken.
Result<ReadEntry> read_entry(Reading& reading,
                             const toml::table& entry,
                             const PartKind* kind,
                             std::span<const std::string> beside = {});

/// Kinds that have a heading of their own, [[observer]] and [[target]]: they are not parts of the train.
bool has_own_heading(const PartKind& kind);

}  // namespace beamfork
