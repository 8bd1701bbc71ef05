#include "base/typed_number.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/text.hpp"
#include "base/typed_tokens.hpp"
#include "base/unit_words.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

using Refused = tl::unexpected<Error>;
Refused refused(std::string sentence) { return fail(ErrorCode::bad_input, std::move(sentence)); }

// A value on its way, in the entry's own unit.
struct Amount {
    double value = 0;
    bool has_unit = false;
    bool has_plain = false;  ///< a number without a unit was added to one that has one
    bool has_other = false;  ///< a number in it has a unit that is not the entry's own
};

// Sums of products of signed numbers, brackets and units, by recursive descent.
class Parser {
public:
    Parser(std::vector<Token> tokens, NumberUnit unit)
        : tokens_(std::move(tokens)), measure_(measure_of(unit)), own_(own_word(unit)) {}

    Result<double> whole() {
        const auto amount = sum();
        if (!amount) return Refused(amount.error());
        if (now().kind == TokenKind::close) return refused("there is a “)” without its “(”");
        if (now().kind != TokenKind::end)
            return refused(fmt::format("“{}” cannot stand there", now().text));
        if (!std::isfinite(amount->value)) return refused("the result is too large");
        return amount->value;
    }

private:
    [[nodiscard]] const Token& now() const { return tokens_[at_]; }
    [[nodiscard]] const Token& after(std::size_t count) const {
        return tokens_[std::min(at_ + count, tokens_.size() - 1)];
    }
    [[nodiscard]] static bool begins_value(const Token& token) {
        return token.kind == TokenKind::number || token.kind == TokenKind::open;
    }
    // "2x3" and "2 × 3" multiply; "2.6×" is a factor.
    [[nodiscard]] bool is_times() const {
        if (now().kind == TokenKind::times) return now().text != "×" || begins_value(after(1));
        return now().kind == TokenKind::word && (now().text == "x" || now().text == "X")
               && begins_value(after(1));
    }
    [[nodiscard]] bool is_unit() const {
        return (now().kind == TokenKind::word || now().text == "×") && !is_times();
    }

    [[nodiscard]] double in_own_unit(double value, const UnitWord& word) const {
        if (is_own(word)) return value;
        return value * (word.numerator * own_.denominator) / (word.denominator * own_.numerator);
    }
    [[nodiscard]] bool is_own(const UnitWord& word) const {
        return word.numerator * own_.denominator == own_.numerator * word.denominator;
    }

    Result<UnitWord> unit_word() {
        const std::string_view typed = now().text;
        const auto words = measure_.words;
        const auto has = [&](std::span<const UnitWord> list) {
            return std::find_if(list.begin(), list.end(),
                                [&](const UnitWord& word) { return word.word == typed; });
        };
        if (const auto found = has(words); found != words.end()) {
            ++at_;
            return *found;
        }
        const std::string expected =
            words.empty() ? "a plain number is expected"
                          : fmt::format("{} is expected, in {}", measure_.name, measure_.offered);
        for (const UnitMeasure& other : unit_measures()) {
            if (has(other.words) != other.words.end())
                return refused(fmt::format("“{}” belongs to {}; {}", typed, other.name, expected));
        }
        std::vector<std::string> known;
        for (const UnitWord& word : words)
            known.emplace_back(word.word);
        return refused(fmt::format("“{}” is neither a number nor a unit; {}{}", typed, expected,
                                   did_you_mean(typed, known, "“", "”")));
    }

    Result<Amount> sum() {
        auto total = product();
        while (total && (now().kind == TokenKind::plus || now().kind == TokenKind::minus)) {
            const double sign = now().kind == TokenKind::plus ? 1 : -1;
            ++at_;
            const auto next = product();
            if (!next) return next;
            total = added(*total, *next, sign);
        }
        return total;
    }

    static Result<Amount> added(const Amount& a, const Amount& b, double sign) {
        const Amount both{a.value + sign * b.value, a.has_unit || b.has_unit,
                          a.has_plain || b.has_plain || a.has_unit != b.has_unit,
                          a.has_other || b.has_other};
        if (both.has_plain && both.has_other)
            return refused("some numbers have a unit and some have none; give each its unit");
        return both;
    }

    Result<Amount> product() {
        auto total = signed_value();
        bool is_single = true;
        while (total) {
            if (is_unit()) {
                total = with_unit(*total, is_single);
            } else if (is_times() || now().kind == TokenKind::divided) {
                const bool divides = now().kind == TokenKind::divided;
                ++at_;
                const auto next = signed_value();
                if (!next) return next;
                total = combined(*total, *next, divides);
                is_single = false;
            } else {
                break;
            }
        }
        return total;
    }

    static Result<Amount> combined(const Amount& a, const Amount& b, bool divides) {
        if (divides && b.has_unit) return refused("divide by a plain number, without a unit");
        if (a.has_unit && b.has_unit)
            return refused("multiply by a plain number: only one factor may have a unit");
        if (divides && b.value == 0) return refused("that divides by zero");
        Amount both = a.has_unit ? a : b;
        both.value = divides ? a.value / b.value : a.value * b.value;
        return both;
    }

    Result<Amount> with_unit(Amount amount, bool is_single) {
        if (amount.has_unit)
            return refused(fmt::format("“{}” is a second unit for the same number", now().text));
        const auto word = unit_word();
        if (!word) return Refused(word.error());
        amount = {in_own_unit(amount.value, *word), true, false, !is_own(*word)};
        return is_single ? with_smaller(amount, *word) : amount;
    }

    // 1 ft 2 in, 3° 20′ 10″: each unit smaller than the one before; the sign holds for all.
    Result<Amount> with_smaller(Amount amount, UnitWord larger) {
        while (now().kind == TokenKind::number) {
            const double sign = std::signbit(amount.value) ? -1 : 1;
            const auto next = number();
            if (!next) return next;
            if (!is_unit()) return refused("the last number needs its unit");
            const auto word = unit_word();
            if (!word) return Refused(word.error());
            if (word->numerator * larger.denominator >= larger.numerator * word->denominator)
                return refused(fmt::format("“{}” behind “{}” is not the smaller unit", word->word,
                                           larger.word));
            amount.value += sign * in_own_unit(next->value, *word);
            amount.has_other = amount.has_other || !is_own(*word);
            larger = *word;
        }
        return amount;
    }

    Result<Amount> signed_value() {
        double sign = 1;
        if (now().kind == TokenKind::minus || now().kind == TokenKind::plus) {
            sign = now().kind == TokenKind::minus ? -1 : 1;
            ++at_;
        }
        auto amount = now().kind == TokenKind::open ? bracket() : number();
        if (amount) amount->value *= sign;
        return amount;
    }

    Result<Amount> bracket() {
        constexpr int deepest = 40;  // of brackets in brackets: the stack is finite
        if (++depth_ > deepest) return refused("there are too many brackets in brackets");
        ++at_;
        auto amount = sum();
        if (!amount) return amount;
        if (now().kind != TokenKind::close) return refused("a “)” is missing");
        ++at_;
        --depth_;
        return amount;
    }

    // Also mixed: 1 1/4, 1¼.
    Result<Amount> number() {
        if (now().kind != TokenKind::number) return no_number();
        const Token first = now();
        ++at_;
        if (!first.is_whole) return Amount{first.value};
        if (now().is_fraction) return Amount{first.value + tokens_[at_++].value};
        const bool is_mixed = now().is_whole && after(1).kind == TokenKind::divided
                              && after(2).is_whole && after(2).value != 0;
        if (!is_mixed) return Amount{first.value};
        const double part = now().value / after(2).value;
        at_ += 3;
        return Amount{first.value + part};
    }

    [[nodiscard]] Refused no_number() const {
        const std::string expected =
            std::string(measure_.name)
            + (measure_.offered.empty() ? "" : " in " + std::string(measure_.offered));
        if (now().kind == TokenKind::end) {
            return at_ == 0 ? refused("type " + expected)
                            : refused(fmt::format("a number is missing behind “{}”",
                                                  tokens_[at_ - 1].text));
        }
        return refused(fmt::format("“{}” is not a number; {} is expected", now().text, expected));
    }

    std::vector<Token> tokens_;
    const UnitMeasure& measure_;
    UnitWord own_;
    std::size_t at_ = 0;
    int depth_ = 0;
};

}  // namespace

Result<double> parse_typed(std::string_view text, NumberUnit unit) {
    constexpr std::size_t longest = 200;  // bytes; a longer text was pasted by mistake
    if (text.size() > longest) return refused("that is too long for a number");
    auto tokens = cut_into_tokens(text);
    if (!tokens) return Refused(std::move(tokens.error()));
    return Parser(*std::move(tokens), unit).whole();
}

}  // namespace beamfork
