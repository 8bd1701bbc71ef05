#include "app/text_lines.hpp"

#include <algorithm>

namespace beamfork {

std::string wrapped(const std::string& head, const std::string& text, std::size_t indent) {
    constexpr std::size_t text_width = 96;
    std::string out = head;
    std::size_t column = indent;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::size_t word = end - at;
        if (column > indent && column + word + 1 > text_width) {
            out += '\n' + std::string(indent, ' ');
            column = indent;
        } else if (at > 0) {
            out += ' ';
            ++column;
        }
        out.append(text, at, word);
        column += word;
        at = end + 1;
    }
    return out + '\n';
}

std::string padded(const std::string& text, std::size_t width) {
    // Width in letters, not bytes: the names are UTF-8.
    const auto letters =
        static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
            return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
        }));
    return text + std::string(letters < width ? width - letters : 1, ' ');
}

}  // namespace beamfork
