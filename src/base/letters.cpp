#include "base/letters.hpp"

#include <algorithm>

#include <utf8.h>

namespace beamfork {

std::optional<std::size_t> first_not_utf8(std::string_view bytes) {
    const auto bad = utf8::find_invalid(bytes.begin(), bytes.end());
    if (bad == bytes.end()) return std::nullopt;
    return static_cast<std::size_t>(bad - bytes.begin());
}

std::string_view first_letter(std::string_view text) {
    constexpr std::size_t longest = 4;
    for (std::size_t size = 1; size <= std::min(longest, text.size()); ++size) {
        const std::string_view front = text.substr(0, size);
        if (utf8::is_valid(front.begin(), front.end())) return front;
    }
    return text.substr(0, 1);
}

char32_t code_point_of(std::string_view letter) {
    constexpr char32_t replacement = 0xFFFD;
    if (letter.empty() || !utf8::is_valid(letter.begin(), letter.end())) return replacement;
    return utf8::peek_next(letter.begin(), letter.end());
}

std::size_t letter_count(std::string_view text) {
    std::size_t count = 0;
    for (; !text.empty(); ++count)
        text.remove_prefix(first_letter(text).size());
    return count;
}

std::string_view first_letters(std::string_view text, std::size_t count) {
    std::size_t size = 0;
    for (; count > 0 && size < text.size(); --count)
        size += first_letter(text.substr(size)).size();
    return text.substr(0, size);
}

std::string_view letters_within(std::string_view text, std::size_t bytes) {
    std::size_t size = 0;
    while (size < text.size()) {
        const std::size_t next = size + first_letter(text.substr(size)).size();
        if (next > bytes) break;
        size = next;
    }
    return text.substr(0, size);
}

std::string_view without_last_letter(std::string_view text) {
    return letters_within(text, text.empty() ? 0 : text.size() - 1);
}

}  // namespace beamfork
