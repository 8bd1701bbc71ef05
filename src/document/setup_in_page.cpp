#include "document/setup_in_page.hpp"

#include <array>
#include <utility>

namespace beamfork {

namespace {

// A browser drops one line break behind the opening tag, so one is put there for it.
constexpr std::string_view opening = "<pre id=\"setup-file\">\n";
constexpr std::string_view closing = "</pre>";

using Named = std::pair<char, std::string_view>;
constexpr std::array named_characters{Named{'&', "&amp;"}, Named{'<', "&lt;"}, Named{'>', "&gt;"}};

}  // namespace

std::string setup_for_page(std::string_view setup_text) {
    std::string out(opening);
    for (const char c : setup_text) {
        std::string_view words(&c, 1);
        for (const auto& [character, name] : named_characters) {
            if (c == character) words = name;
        }
        out += words;
    }
    return out + std::string(closing) + "\n";
}

bool is_page(std::string_view bytes) {
    return bytes.starts_with("<!DOCTYPE html") || bytes.starts_with("<!doctype html");
}

std::optional<std::string> setup_in_page(std::string_view page) {
    const auto found = page.find(opening);
    if (found == std::string_view::npos) return std::nullopt;
    page.remove_prefix(found + opening.size());
    const auto end = page.find(closing);
    if (end == std::string_view::npos) return std::nullopt;
    page = page.substr(0, end);
    std::string text;
    while (!page.empty()) {
        std::size_t taken = 1;
        char character = page.front();
        for (const auto& [plain, name] : named_characters) {
            if (!page.starts_with(name)) continue;
            character = plain;
            taken = name.size();
        }
        text += character;
        page.remove_prefix(taken);
    }
    return text;
}

}  // namespace beamfork
