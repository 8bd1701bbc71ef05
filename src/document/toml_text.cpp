#include "document/toml_text.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string escaped(char letter) {
    switch (letter) {
    case '\\': return R"(\\)";
    case '"': return R"(\")";
    case '\n': return R"(\n)";
    case '\t': return R"(\t)";
    case '\r': return R"(\r)";
    default: break;
    }
    const auto code = static_cast<unsigned char>(letter);
    return code < 0x20 || code == 0x7F ? fmt::format("\\u{:04X}", code) : std::string(1, letter);
}

}  // namespace

std::string toml_string(std::string_view text) {
    std::string quoted = "\"";
    for (const char letter : text)
        quoted += escaped(letter);
    return quoted + '"';
}

std::string toml_lines(std::string_view text) {
    std::string quoted = "\"\"\"\n";
    std::size_t quotes_in_row = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char letter = text[i];
        quotes_in_row = letter == '"' ? quotes_in_row + 1 : 0;
        const bool needs_no_escape = letter == '\n' || letter == '\t'
                                     || (letter == '"' && quotes_in_row < 3 && i + 1 < text.size());
        quoted += needs_no_escape ? std::string(1, letter) : escaped(letter);
        if (quotes_in_row == 3) quotes_in_row = 0;
    }
    return quoted + "\"\"\"";
}

std::string toml_words(std::string_view text) {
    return text.find('\n') != std::string_view::npos ? toml_lines(text) : toml_string(text);
}

std::string toml_key(std::string_view key) {
    constexpr std::string_view bare =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-";
    const bool is_bare = !key.empty() && key.find_first_not_of(bare) == std::string_view::npos;
    return is_bare ? std::string(key) : toml_string(key);
}

}  // namespace beamfork
