#include "document/toml_file.hpp"

#include "document/words.hpp"

#include <fmt/format.h>

namespace beamfork {

tl::unexpected<Error> refuse(const Reading& reading, int line, std::string what) {
    return fail(ErrorCode::bad_input, std::move(what), reading.at(line));
}

namespace {

Result<toml::table> parse(Reading& reading, std::string_view text, const FileFormat& format) {
    constexpr int longest_key = 16;  // words in a dotted key
    if (const auto line = line_that_is_not_text(text)) {
        return refuse(
            reading, *line,
            fmt::format("expected a text file (UTF-8), found other bytes; is this a Beamfork {}?",
                        format.what));
    }
    reading.comments = Comments(text);
    if (const int line = reading.comments.line_with_longer_key(longest_key)) {
        return refuse(reading, line, "a key of so many words cannot be read");
    }
    try {
        return toml::parse(text);
    } catch (const toml::parse_error& error) {
        return refuse(reading, static_cast<int>(error.source().begin.line),
                      fmt::format("this is not valid TOML: {}", error.description()));
    }
}

Result<void>
check_version(const Reading& reading, const toml::table& root, const FileFormat& format) {
    const toml::node* node = root.get(format.version_key);
    if (node == nullptr) {
        return refuse(reading, 1,
                      fmt::format("expected {} = {} at the top of the file; is this a Beamfork {}?",
                                  format.version_key, format.newest, format.what));
    }
    const auto* version = node->as_integer();
    if (version == nullptr || version->get() < 1) {
        return refuse(
            reading, line_of(*node),
            fmt::format("{} must be the version of the file format, a whole number from 1 to {}",
                        format.version_key, format.newest));
    }
    if (version->get() > format.newest) {
        return fail(ErrorCode::newer_version,
                    fmt::format("this file has format version {}, this program knows versions up "
                                "to {}: open it with a "
                                "newer Beamfork",
                                version->get(), format.newest),
                    reading.at(line_of(*node)));
    }
    return {};
}

}  // namespace

Result<toml::table> parse_file(Reading& reading, std::string_view text, const FileFormat& format) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.size() > largest_file) {
        return refuse(reading, 0,
                      fmt::format("expected a {} file of at most {} KiB, found {} KiB", format.what,
                                  largest_file / 1024, (text.size() + 1023) / 1024));
    }
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    auto root = parse(reading, text, format);
    if (!root) return root;
    if (auto version = check_version(reading, *root, format); !version)
        return tl::make_unexpected(version.error());
    return root;
}

void move_remark_to_top(Remarks& remarks, const FileFormat& format, const std::string& from) {
    const std::string first(format.version_key);
    auto found = remarks.find(from);
    if (from == first || found == remarks.end()) return;
    std::string& top = remarks[first].above;
    std::string moved = std::exchange(found->second.above, {});
    top = moved.empty() || top.empty() ? moved + top : moved + "\n" + top;
    if (found->second == Remark{}) remarks.erase(found);
    if (remarks[first] == Remark{}) remarks.erase(first);
}

}  // namespace beamfork
