#include "app/commands/page_text.hpp"

#include <algorithm>

#include "base/letters.hpp"

namespace beamfork {

namespace {

constexpr std::size_t page_width = 96;

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

std::string in_column(const std::string& text, std::size_t width, bool at_right) {
    const std::size_t letters = letter_count(text);
    if (letters > width) return std::string(first_letters(text, width - 1)) + "…";
    const std::string blanks(width - letters, ' ');
    return at_right ? blanks + text : text + blanks;
}

}  // namespace beamfork
