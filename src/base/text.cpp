#include "base/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <vector>

#include <fmt/format.h>

namespace beamfork {

std::string format_number(double value, int decimals) {
    if (!std::isfinite(value)) return "n/a";
    std::string text = fmt::format("{:.{}f}", value, decimals);
    const bool is_zero = text.find_first_of("123456789") == std::string::npos;
    if (is_zero && text.front() == '-') text.erase(0, 1);
    return text;
}

std::string format_exact(double value) {
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
    return {buffer.data(), end};
}

std::string format_signed(double value, int decimals) {
    const std::string text = format_number(value, decimals);
    return text.front() == '-' || !std::isfinite(value) ? text : "+" + text;
}

std::string typeset(std::string_view words) {
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool may_begin = i == 0 || words[i - 1] == ' ' || words[i - 1] == '(';
        const bool is_minus =
            words[i] == '-' && may_begin && i + 1 < words.size() && is_digit(words[i + 1]);
        out += is_minus ? "−" : std::string(1, words[i]);
    }
    return out;
}

std::optional<double> parse_number(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return std::nullopt;
    text = text.substr(first, text.find_last_not_of(" \t") - first + 1);
    if (text.starts_with("+-")) return std::nullopt;
    if (text.front() == '+') text.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
        }
    }
    return row.back();
}

std::optional<std::string> nearest_name(std::string_view name,
                                        std::span<const std::string> candidates) {
    constexpr std::size_t longest_name = 200;  // a longer one is noise, not a slip of the finger
    if (name.size() > longest_name) return std::nullopt;
    const std::string* best = nullptr;
    std::size_t best_distance = 0;
    for (const std::string& candidate : candidates) {
        const std::size_t distance = edit_distance(name, candidate);
        if (best == nullptr || distance < best_distance) {
            best = &candidate;
            best_distance = distance;
        }
    }
    if (best == nullptr || 2 * best_distance > std::max(name.size(), best->size()))
        return std::nullopt;
    return *best;
}

std::string lower_case(std::string_view text) {
    std::string lower(text);
    for (char& letter : lower)
        letter = letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    return lower;
}

std::string did_you_mean(std::string_view word,
                         std::span<const std::string> known,
                         std::string_view open_quote,
                         std::string_view close_quote) {
    const auto near = nearest_name(word, known);
    if (!near) return "";
    return fmt::format("; did you mean {}{}{}?", open_quote, *near, close_quote);
}

}  // namespace beamfork
