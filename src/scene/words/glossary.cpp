#include "scene/words/glossary.hpp"

#include <algorithm>
#include <cctype>
#include <string>
#include <utility>

#include "base/text.hpp"
#include "base/word_match.hpp"
#include "scene/words/glossary_table.hpp"

namespace beamfork {

namespace {

bool is_letter(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; }

// Letters on either side would make it a piece of another word; a plural's s does not.
bool stands_in(const std::string& label, const std::string& word) {
    for (std::size_t at = label.find(word); at != std::string::npos;
         at = label.find(word, at + 1)) {
        std::size_t end = at + word.size();
        if (end < label.size() && label[end] == 's') ++end;
        const bool begins = at == 0 || !is_letter(label[at - 1]);
        if (begins && (end == label.size() || !is_letter(label[end]))) return true;
    }
    return false;
}

// Calls `use` with the term's word and each of its other names.
template <class Use>
void for_each_name(const Term& term, Use use) {
    use(term.word);
    std::string_view rest = term.also;
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find(", "), rest.size());
        use(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 2, rest.size()));
    }
}

}  // namespace

std::span<const Term> glossary() { return glossary_table(); }

std::vector<const Term*> matching_terms(std::string_view typed) {
    constexpr int by_meaning = 100;              // behind all that is found by its name
    constexpr std::size_t least_in_meaning = 3;  // letters; fewer would find nearly everything
    std::vector<std::pair<int, const Term*>> ranked;
    for (const Term& term : glossary()) {
        std::optional<int> best;
        for_each_name(term, [&](std::string_view name) {
            const auto rank = word_match(typed, name);
            if (rank && (!best || *rank < *best)) best = rank;
        });
        if (!best && typed.size() >= least_in_meaning) {
            best = word_match(typed, term.meaning);
            if (best) *best += by_meaning;
        }
        if (best) ranked.emplace_back(*best, &term);
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<const Term*> terms;
    for (const auto& one : ranked)
        terms.push_back(one.second);
    return terms;
}

const Term* term_in(std::string_view label) {
    const std::string small = lower_case(label);
    const Term* longest = nullptr;
    std::size_t length = 0;
    for (const Term& term : glossary()) {
        for_each_name(term, [&](std::string_view name) {
            if (name.size() <= length || !stands_in(small, lower_case(name))) return;
            longest = &term;
            length = name.size();
        });
    }
    return longest;
}

}  // namespace beamfork
