// The comments of a TOML text by line, which a TOML reader throws away and a save must not.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/part.hpp"

namespace beamfork {

class Comments {
public:
    explicit Comments(std::string_view text);

    /// Takes out the comment lines right above line `first` (from 1), up to the line that says something
    /// else, and the comment behind what line `last` says. Blank lines are kept between comments, and one below the
    /// last.
    Remark take(int first, int last);
    /// Takes out all that nobody took: the lines at the end of the text, and those inside entries that are
    /// kept without being understood.
    std::string take_rest();
    /// The first line with a dotted key of more than `most` words, or 0. A reader would descend
    /// into each word, and a hostile file would exhaust its stack.
    [[nodiscard]] int line_with_longer_key(int most) const;

private:
    struct Line {
        bool says_something = false;
        std::string comment;  ///< with its '#'
        int key_words = 1;
    };
    std::string take_lines(std::size_t first, std::size_t end);
    std::vector<Line> lines_;
};

}  // namespace beamfork
