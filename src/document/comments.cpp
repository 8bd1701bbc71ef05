#include "document/comments.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

namespace {

// Walks a TOML text letter by letter, knowing only where strings and comments begin and end.
struct Walker {
    std::string_view rest;
    std::string_view open_string;  // the quotes that will close a string of several lines

    [[nodiscard]] bool at(std::string_view word) const { return rest.starts_with(word); }

    void pass_string_of_lines() {
        if (open_string == R"(""")" && at("\\")) {
            const bool continues = rest.size() > 1 && rest[1] != '\n' && rest[1] != '\r';
            rest.remove_prefix(continues ? 2 : 1);
        } else if (at(open_string)) {
            rest.remove_prefix(3);
            // Up to two more quotes belong to the string itself.
            for (int i = 0; i < 2 && at(open_string.substr(0, 1)); ++i)
                rest.remove_prefix(1);
            open_string = {};
        } else {
            rest.remove_prefix(1);
        }
    }

    void pass_string_of_one_line() {
        const char quote = rest.front();
        rest.remove_prefix(1);
        while (!rest.empty() && rest.front() != '\n') {
            const char letter = rest.front();
            const bool escapes =
                quote == '"' && letter == '\\' && rest.size() > 1 && rest[1] != '\n';
            rest.remove_prefix(escapes ? 2 : 1);
            if (letter == quote) return;
        }
    }
};

std::string_view take_comment(std::string_view& rest) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    std::string_view comment = rest.substr(0, end);
    rest.remove_prefix(end);
    const auto last = comment.find_last_not_of(" \t\r");
    return comment.substr(0, last + 1);
}

}  // namespace

Comments::Comments(std::string_view text) {
    Walker walker{text, {}};
    Line line;
    int words = 1;
    while (!walker.rest.empty()) {
        const char letter = walker.rest.front();
        if (letter == '\n') {
            lines_.push_back(line);
            line = {!walker.open_string.empty(), {}, 1};
            words = 1;
            walker.rest.remove_prefix(1);
        } else if (!walker.open_string.empty()) {
            line.says_something = true;
            walker.pass_string_of_lines();
        } else if (letter == '#') {
            line.comment = take_comment(walker.rest);
        } else if (walker.at(R"(""")") || walker.at("'''")) {
            line.says_something = true;
            walker.open_string = letter == '"' ? R"(""")" : "'''";
            walker.rest.remove_prefix(3);
        } else if (letter == '"' || letter == '\'') {
            line.says_something = true;
            walker.pass_string_of_one_line();
        } else {
            constexpr std::string_view blanks = " \t\r";
            constexpr std::string_view key_ends = "=,[]{}";
            if (blanks.find(letter) == std::string_view::npos) line.says_something = true;
            if (letter == '.') line.key_words = std::max(line.key_words, ++words);
            if (key_ends.find(letter) != std::string_view::npos) words = 1;
            walker.rest.remove_prefix(1);
        }
    }
    lines_.push_back(line);
}

std::string Comments::take_lines(std::size_t first, std::size_t end) {
    std::string text;
    std::string blanks;
    for (std::size_t i = first; i < end; ++i) {
        std::string& comment = lines_[i].comment;
        if (comment.empty()) {
            if (!text.empty() && !lines_[i].says_something) blanks += '\n';
            continue;
        }
        if (!text.empty()) text += '\n';
        text += blanks + comment;
        blanks.clear();
        comment.clear();
    }
    return text;
}

Remark Comments::take(int first, int last) {
    const int count = static_cast<int>(lines_.size());
    const auto end = static_cast<std::size_t>(std::clamp(first - 1, 0, count));
    std::size_t begin = end;
    while (begin > 0 && !lines_[begin - 1].says_something)
        --begin;
    const bool stands_free = end > begin && lines_[end - 1].comment.empty();
    Remark remark{take_lines(begin, end), {}};
    if (stands_free && !remark.above.empty()) remark.above += '\n';
    if (last >= 1 && last <= count) {
        Line& line = lines_[static_cast<std::size_t>(last - 1)];
        if (line.says_something) remark.beside = std::exchange(line.comment, {});
    }
    return remark;
}

std::string Comments::take_rest() { return take_lines(0, lines_.size()); }

int Comments::line_with_longer_key(int most) const {
    const auto found = std::find_if(lines_.begin(), lines_.end(),
                                    [&](const Line& line) { return line.key_words > most; });
    return found == lines_.end() ? 0 : static_cast<int>(found - lines_.begin()) + 1;
}

}  // namespace beamfork
