#include "scene/tour/tour_question.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double nearest_within = 0.25;  // of the truth; beyond it no answer is called right

// Unbroken spaces as plain ones, none at the ends.
std::string plain_words(std::string text) {
    constexpr std::string_view unbroken = "\u00A0";
    for (auto at = text.find(unbroken); at != std::string::npos; at = text.find(unbroken, at))
        text.replace(at, unbroken.size(), " ");
    const auto first = text.find_first_not_of(" \n");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" \n") - first + 1);
}

struct NumberWithUnit {
    double number = 0;
    std::string unit;
};

std::optional<NumberWithUnit> number_in(const std::string& text) {
    const std::string words = plain_words(text);
    const std::size_t end = std::min(words.find_first_not_of("0123456789.+-"), words.size());
    const auto number = parse_number(words.substr(0, end));
    if (!number) return std::nullopt;
    return NumberWithUnit{*number, plain_words(words.substr(end))};
}

}  // namespace

std::optional<std::size_t> right_answer(std::span<const std::string> answers,
                                        const std::string& truth) {
    const auto same = std::find_if(answers.begin(), answers.end(), [&](const std::string& one) {
        return plain_words(one) == plain_words(truth);
    });
    if (same != answers.end()) return static_cast<std::size_t>(same - answers.begin());
    const auto wanted = number_in(truth);
    if (!wanted) return std::nullopt;
    std::optional<std::size_t> nearest;
    double off = nearest_within * std::abs(wanted->number);
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const auto answer = number_in(answers[i]);
        if (!answer || answer->unit != wanted->unit) return std::nullopt;
        if (std::abs(answer->number - wanted->number) > off) continue;
        off = std::abs(answer->number - wanted->number);
        nearest = i;
    }
    return nearest;
}

Result<AskedQuestion> asked_question(const TourQuestion& asks, std::span<const TourQuote> quotes) {
    AskedQuestion asked;
    const auto fill = [&](const std::string& text, std::string& into) -> Result<void> {
        auto filled = filled_caption(text, quotes);
        if (!filled) return tl::make_unexpected(filled.error());
        into = std::move(*filled);
        return {};
    };
    if (auto done = fill(asks.question, asked.question); !done)
        return tl::make_unexpected(done.error());
    for (const std::string& answer : asks.answers) {
        if (auto done = fill(answer, asked.answers.emplace_back()); !done)
            return tl::make_unexpected(done.error());
    }
    if (asks.right_value.empty()) {
        if (asks.right < asks.answers.size()) asked.right = asks.right;
        return asked;
    }
    if (auto done = fill(asks.right_value, asked.truth); !done)
        return tl::make_unexpected(done.error());
    asked.right = right_answer(asked.answers, asked.truth);
    return asked;
}

std::string told_result(const AskedQuestion& asked, const std::string& caption) {
    if (asked.right) return caption;
    return fmt::format("None of these: {}. {}", asked.truth, caption);
}

}  // namespace beamfork
