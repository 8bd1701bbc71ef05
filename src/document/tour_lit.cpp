#include "document/tour_lit.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr std::string_view lit_prefix = "part:";
constexpr std::string_view lit_telescope = "telescope";
constexpr std::string_view lit_chain = "chain";

// The part's name that such a word holds; nothing of a kind or a place.
std::optional<std::string_view> name_in(std::string_view word) {
    if (!word.starts_with(lit_prefix)) return std::nullopt;
    word.remove_prefix(lit_prefix.size());
    word.remove_prefix(std::min(word.find_first_not_of(' '), word.size()));
    return word;
}

bool is_meant(std::string_view word, const Part& part) {
    if (const auto name = name_in(word)) return part.name == *name;
    const Role role = role_of(part);
    if (word == lit_telescope) return role == Role::telescope;
    if (word == lit_chain) return role == Role::chain;
    return kind_of(part.body).key == word;
}

bool has_part(const Setup& setup, std::string_view name) {
    return std::any_of(setup.parts.begin(), setup.parts.end(),
                       [&](const Part& part) { return part.name == name; });
}

std::vector<std::string> known_words() {
    std::vector<std::string> known{std::string(lit_telescope), std::string(lit_chain)};
    for (const PartKind& kind : part_kinds())
        if (kind.role < Role::observer) known.push_back(kind.key);
    return known;
}

}  // namespace

std::string lit_word_of(const Part& part) { return std::string(lit_prefix) + " " + part.name; }

std::vector<bool> lit_parts(std::span<const std::string> lit, const Setup& setup) {
    std::vector<bool> lights(setup.parts.size(), false);
    for (std::size_t i = 0; i < lights.size(); ++i) {
        lights[i] = std::any_of(lit.begin(), lit.end(), [&](const std::string& word) {
            return is_meant(word, setup.parts[i]);
        });
    }
    if (std::find(lights.begin(), lights.end(), true) == lights.end())
        lights.assign(setup.parts.size(), true);
    return lights;
}

std::vector<std::string> with_part_lit(std::span<const std::string> lit,
                                       const Setup& setup,
                                       std::span<const std::size_t> choices,
                                       std::size_t part,
                                       bool is_lit) {
    std::vector<bool> lights = lit_parts(lit, setup);
    lights.at(part) = is_lit;
    const auto is_on = [&](std::size_t choice) { return lights.at(choice); };
    if (std::all_of(choices.begin(), choices.end(), is_on)
        || std::none_of(choices.begin(), choices.end(), is_on))
        return {};
    std::vector<std::string> words;
    std::vector<bool> told(setup.parts.size(), false);
    for (const std::string& word : lit) {
        bool fits = false;
        bool lights_more = false;
        for (std::size_t i = 0; i < setup.parts.size(); ++i) {
            if (!is_meant(word, setup.parts[i])) continue;
            fits = true;
            lights_more = lights_more || !lights[i];
        }
        if (!fits || lights_more) continue;
        words.push_back(word);
        for (std::size_t i = 0; i < setup.parts.size(); ++i)
            told[i] = told[i] || is_meant(word, setup.parts[i]);
    }
    for (const std::size_t choice : choices) {
        if (lights.at(choice) && !told[choice]) words.push_back(lit_word_of(setup.parts[choice]));
    }
    return words;
}

std::optional<std::string> lit_objection(std::span<const std::string> lit) {
    const std::vector<std::string> known = known_words();
    for (std::size_t i = 0; i < lit.size(); ++i) {
        const std::string& word = lit[i];
        if (std::find(lit.begin(), lit.begin() + static_cast<std::ptrdiff_t>(i), word)
            != lit.begin() + static_cast<std::ptrdiff_t>(i))
            return fmt::format("'{}' is lit twice", word);
        const auto name = name_in(word);
        if (name && !name->empty()) continue;
        if (std::find(known.begin(), known.end(), word) != known.end()) continue;
        return fmt::format("'{}' cannot be lit; expected 'part: ' with the name of a part, or one "
                           "of: {}{}",
                           word, fmt::join(known, ", "), did_you_mean(word, known));
    }
    return std::nullopt;
}

std::optional<std::string> lit_part_objection(const std::string& word, const Setup& setup) {
    const auto name = name_in(word);
    if (!name || has_part(setup, *name)) return std::nullopt;
    std::vector<std::string> names;
    for (const Part& part : setup.parts)
        if (role_of(part) < Role::observer) names.push_back(part.name);
    return fmt::format("no part is called '{}'; expected one of: {}{}", *name,
                       fmt::join(names, ", "), did_you_mean(std::string(*name), names));
}

void follow_rename(std::vector<Tour>& tours,
                   const std::string& from,
                   const std::string& to,
                   bool is_other) {
    for (Tour& tour : tours) {
        for (TourStep& step : tour.steps) {
            const auto found = std::find_if(step.lit.begin(), step.lit.end(),
                                            [&](auto& word) { return name_in(word) == from; });
            if (found == step.lit.end()) continue;
            const std::string now = std::string(lit_prefix) + " " + to;
            if (std::find(step.lit.begin(), step.lit.end(), now) != step.lit.end()) {
                if (!is_other) step.lit.erase(found);
            } else if (is_other) {
                step.lit.insert(found + 1, now);
            } else {
                *found = now;
            }
        }
    }
}

void forget_parts_that_are_gone(std::vector<Tour>& tours, const Setup& setup) {
    for (Tour& tour : tours) {
        for (TourStep& step : tour.steps)
            std::erase_if(step.lit, [&](const std::string& word) {
                return lit_part_objection(word, setup).has_value();
            });
    }
}

}  // namespace beamfork
