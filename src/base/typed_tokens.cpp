#include "base/typed_tokens.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

struct Sign {
    std::string_view text;
    TokenKind kind;
};
constexpr std::array signs{Sign{"+", TokenKind::plus},    Sign{"-", TokenKind::minus},
                           Sign{"−", TokenKind::minus},   Sign{"*", TokenKind::times},
                           Sign{"×", TokenKind::times},   Sign{"·", TokenKind::times},
                           Sign{"/", TokenKind::divided}, Sign{"÷", TokenKind::divided},
                           Sign{"(", TokenKind::open},    Sign{")", TokenKind::close}};

struct VulgarFraction {
    std::string_view text;
    double value;
};
constexpr std::array vulgar_fractions{VulgarFraction{"½", 0.5}, VulgarFraction{"¼", 0.25},
                                      VulgarFraction{"¾", 0.75}};

constexpr std::array marks{"\"", "″", "”", "'", "′", "’", "°", "%"};  // words without letters

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

// Cuts text into numbers, words and signs.
class Lexer {
public:
    explicit Lexer(std::string_view text) : rest_(text) {}

    Result<std::vector<Token>> tokens() {
        std::vector<Token> found;
        while (true) {
            while (skip_blank()) {
            }
            if (rest_.empty()) break;
            auto token = next();
            if (!token) return tl::make_unexpected(std::move(token.error()));
            found.push_back(*token);
        }
        found.push_back({});
        return found;
    }

private:
    bool skip_blank() {
        constexpr std::array narrow{std::string_view("\u00a0"), std::string_view("\u202f")};
        for (const std::string_view blank : narrow) {
            if (!rest_.starts_with(blank)) continue;
            rest_.remove_prefix(blank.size());
            return true;
        }
        if (rest_.empty() || !is_blank(rest_.front())) return false;
        rest_.remove_prefix(1);
        return true;
    }

    Token take(TokenKind kind, std::size_t size) {
        const Token token{kind, rest_.substr(0, size)};
        rest_.remove_prefix(size);
        return token;
    }

    Result<Token> next() {
        if (is_digit(rest_.front()) || rest_.front() == '.' || rest_.front() == ',')
            return number();
        for (const VulgarFraction& fraction : vulgar_fractions) {
            if (!rest_.starts_with(fraction.text)) continue;
            Token token = take(TokenKind::number, fraction.text.size());
            token.value = fraction.value;
            token.is_fraction = true;
            return token;
        }
        for (const Sign& sign : signs) {
            if (rest_.starts_with(sign.text)) return take(sign.kind, sign.text.size());
        }
        for (const std::string_view mark : marks) {
            if (rest_.starts_with(mark)) return take(TokenKind::word, mark.size());
        }
        return take(TokenKind::word, std::max<std::size_t>(1, letters()));
    }

    // Bytes up to the next blank, digit or sign.
    [[nodiscard]] std::size_t letters() const {
        std::size_t size = 0;
        const auto ends = [&](std::string_view from) {
            const auto starts = [&](const auto& mark) { return from.starts_with(mark); };
            return is_blank(from.front()) || is_digit(from.front())
                   || std::any_of(marks.begin(), marks.end(), starts)
                   || std::any_of(signs.begin(), signs.end(),
                                  [&](const Sign& sign) { return starts(sign.text); });
        };
        while (size < rest_.size() && !ends(rest_.substr(size)))
            ++size;
        return size;
    }

    // Digits, one decimal point or comma, and an exponent where digits follow its letter.
    Result<Token> number() {
        std::size_t size = 0;
        std::size_t points = 0;
        for (; size < rest_.size(); ++size) {
            const bool is_point = rest_[size] == '.' || rest_[size] == ',';
            if (!is_point && !is_digit(rest_[size])) break;
            points += is_point ? 1 : 0;
        }
        const bool is_whole = points == 0;
        if (size < rest_.size() && (rest_[size] == 'e' || rest_[size] == 'E')) {
            std::size_t digits = size + 1;
            if (digits < rest_.size() && (rest_[digits] == '+' || rest_[digits] == '-')) ++digits;
            if (digits < rest_.size() && is_digit(rest_[digits])) {
                while (digits < rest_.size() && is_digit(rest_[digits]))
                    ++digits;
                size = digits;
            }
        }
        Token token = take(TokenKind::number, size);
        std::string plain(token.text);
        std::replace(plain.begin(), plain.end(), ',', '.');
        const auto value = points <= 1 ? parse_number(plain) : std::nullopt;
        if (!value)
            return fail(
                ErrorCode::bad_input,
                fmt::format("“{}” is not a number; write it like 1250.5 or 1250,5", token.text));
        token.value = *value;
        token.is_whole = is_whole;
        return token;
    }

    std::string_view rest_;
};

}  // namespace

Result<std::vector<Token>> cut_into_tokens(std::string_view text) { return Lexer(text).tokens(); }

}  // namespace beamfork
