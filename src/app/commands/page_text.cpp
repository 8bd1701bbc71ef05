#include "app/commands/page_text.hpp"

#include <algorithm>

namespace beamfork {

namespace {

constexpr std::size_t page_width = 96;

bool begins_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

std::string wrapped(const std::string& head, const std::string& text, std::size_t indent) {
    std::string out = head;
    std::size_t column = indent;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::size_t word = end - at;
        if (column > indent && column + word + 1 > page_width) {
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

std::size_t letters_of(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_letter));
}

std::string in_column(const std::string& text, std::size_t width, bool at_right) {
    const std::size_t letters = letters_of(text);
    if (letters > width) {
        std::size_t end = 0;
        for (std::size_t seen = 0; end < text.size(); ++end) {
            if (begins_letter(text[end]) && ++seen == width) break;
        }
        return text.substr(0, end) + "…";
    }
    const std::string blanks(width - letters, ' ');
    return at_right ? blanks + text : text + blanks;
}

}  // namespace beamfork
