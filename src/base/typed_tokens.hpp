// Typed text cut into numbers, words and signs.
#pragma once

#include <string_view>
#include <vector>

#include "base/error.hpp"

namespace beamfork {

enum class TokenKind { number, word, plus, minus, times, divided, open, close, end };

struct Token {
    TokenKind kind = TokenKind::end;
    std::string_view text{};   ///< as typed
    double value = 0;          ///< of a number
    bool is_whole = false;     ///< a number of digits alone: 12
    bool is_fraction = false;  ///< a sign such as ½
};

/// The last one is `end`. An error names a number that cannot be read. The text must outlive the tokens.
Result<std::vector<Token>> cut_into_tokens(std::string_view text);

}  // namespace beamfork
