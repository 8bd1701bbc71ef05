#include "base/word_match.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "base/text.hpp"

namespace beamfork {

namespace {

constexpr std::size_t fewest_letters_to_mistype = 4;

enum Fit { whole_begin, word_begin, several_begins, mistyped_begin, no_fit };

// Beyond ASCII the bytes of letters such as ° and Ω are part of a word and compare as they are.
bool is_letter(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z');
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    bool is_inside = false;
    for (char c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        if (is_letter(c)) {
            if (!is_inside) words.emplace_back();
            words.back().push_back(c);
        }
        is_inside = is_letter(c);
    }
    return words;
}

// Whether `typed` falls into begins of words that follow each other; words between may be left out.
bool begins_several(std::string_view typed, const std::vector<std::string>& words) {
    std::vector<bool> is_reached(typed.size() + 1, false);  // so many letters are used up
    is_reached[0] = true;
    for (const std::string& word : words) {
        for (std::size_t from = typed.size(); from-- > 0;) {
            if (!is_reached[from]) continue;
            const std::size_t most = std::min(typed.size() - from, word.size());
            for (std::size_t i = 0; i < most && typed[from + i] == word[i]; ++i)
                is_reached[from + i + 1] = true;
        }
    }
    return is_reached.back();
}

bool begins_with_one_slip(const std::string& typed, const std::string& word) {
    if (typed.size() < fewest_letters_to_mistype) return false;
    for (const std::size_t length : {typed.size() - 1, typed.size(), typed.size() + 1}) {
        if (length <= word.size() && edit_distance(typed, word.substr(0, length)) <= 1) return true;
    }
    for (std::size_t i = 0; i + 1 < typed.size(); ++i) {  // neighbours that have changed places
        std::string turned = typed;
        std::swap(turned[i], turned[i + 1]);
        if (word.starts_with(turned)) return true;
    }
    return false;
}

Fit fit_of(const std::string& typed, const std::vector<std::string>& words) {
    constexpr std::size_t longest = 40;  // of a typed word; more is noise
    if (words.empty() || typed.size() > longest) return no_fit;
    if (words.front().starts_with(typed)) return whole_begin;
    const auto any = [&](const auto& fits) {
        return std::any_of(words.begin(), words.end(), fits);
    };
    if (any([&](const std::string& word) { return word.starts_with(typed); })) return word_begin;
    if (begins_several(typed, words)) return several_begins;
    if (any([&](const std::string& word) { return begins_with_one_slip(typed, word); }))
        return mistyped_begin;
    return no_fit;
}

}  // namespace

std::optional<int> word_match(std::string_view typed, std::string_view name) {
    const std::vector<std::string> words = words_of(name);
    int sum = 0;
    for (const std::string& piece : words_of(typed)) {
        const Fit fit = fit_of(piece, words);
        if (fit == no_fit) return std::nullopt;
        sum += fit;
    }
    return sum;
}

}  // namespace beamfork
