#include "app/page/page_text.hpp"

#include <algorithm>

#include "app/page/terminal.hpp"
#include "base/letters.hpp"

namespace beamfork {

namespace {

// A terminal tells its width; what goes into a file or another program has lines as long as a page of text.
std::size_t width_of_page() {
    constexpr std::size_t usual = 96;
    constexpr std::size_t least = 48;
    constexpr std::size_t most = 120;  // longer lines are hard to read
    const auto terminal = terminal_width();
    return terminal ? std::clamp(*terminal, least, most) : usual;
}

}  // namespace

std::size_t page_width() {
    static const std::size_t width = width_of_page();
    return width;
}

std::string wrapped(const std::string& head, const std::string& text, std::size_t indent) {
    std::string out = head;
    std::size_t column = indent;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::size_t word = end - at;
        if (column > indent && column + word + 1 > page_width()) {
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

std::string first_sentence(const std::string& text) {
    std::string first = text.substr(0, std::min(text.find(". "), text.find(';')));
    if (first.ends_with('.')) first.pop_back();
    return first;
}

std::string in_column(const std::string& text, std::size_t width, bool at_right) {
    const std::size_t letters = letter_count(text);
    if (letters > width) return std::string(first_letters(text, width - 1)) + "…";
    const std::string blanks(width - letters, ' ');
    return at_right ? blanks + text : text + blanks;
}

}  // namespace beamfork
