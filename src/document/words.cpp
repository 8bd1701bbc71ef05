#include "document/words.hpp"

#include <algorithm>

#include "base/letters.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t longest_name = 100;
constexpr std::size_t longest_story = 20'000;

bool is_control(char letter) { return static_cast<unsigned char>(letter) < 0x20 || letter == 0x7F; }

std::optional<std::string> line_objection(std::string_view text, std::string_view what) {
    if (text.size() > longest_name)
        return fmt::format("{} must not be longer than {} letters", what, longest_name);
    if (line_that_is_not_text(text)) return fmt::format("{} must be UTF-8 text", what);
    if (std::any_of(text.begin(), text.end(), is_control)) {
        return fmt::format("{} must be one line without control characters", what);
    }
    return std::nullopt;
}

}  // namespace

std::optional<int> line_that_is_not_text(std::string_view bytes) {
    const std::size_t bad =
        std::min(bytes.find('\0'), first_not_utf8(bytes).value_or(std::string_view::npos));
    if (bad == std::string_view::npos) return std::nullopt;
    const std::string_view sound = bytes.substr(0, bad);
    return 1 + static_cast<int>(std::count(sound.begin(), sound.end(), '\n'));
}

std::optional<std::string> name_objection(std::string_view name) {
    if (name.find_first_not_of(' ') == std::string_view::npos)
        return "a part's name must not be empty";
    return line_objection(name, "a part's name");
}

std::optional<std::string> title_objection(std::string_view title) {
    return line_objection(title, "the title");
}

std::optional<std::string> story_objection(std::string_view story) {
    if (story.size() > longest_story) {
        return fmt::format("the story must not be longer than {} letters", longest_story);
    }
    if (line_that_is_not_text(story)) return "the story must be UTF-8 text";
    const bool has_control = std::any_of(story.begin(), story.end(), [](char letter) {
        return is_control(letter) && letter != '\n' && letter != '\t';
    });
    if (has_control) return "the story must not hold control characters";
    return std::nullopt;
}

bool name_is_taken(const Setup& setup,
                   Role role,
                   std::string_view name,
                   std::optional<std::size_t> except) {
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (i != except && role_of(setup.parts[i]) == role && setup.parts[i].name == name)
            return true;
    }
    return false;
}

std::string free_name(const Setup& setup, Role role, const std::string& wanted) {
    if (!name_is_taken(setup, role, wanted)) return wanted;
    // "Spacer 2" goes on to "Spacer 3", not to "Spacer 2 2".
    std::string stem = wanted;
    const auto last = stem.find_last_not_of("0123456789");
    if (last != std::string::npos && last > 0 && last + 1 < stem.size() && stem[last] == ' ')
        stem.erase(last);
    stem.resize(letters_within(stem, longest_name - 5).size());
    for (int number = 2;; ++number) {
        std::string candidate = fmt::format("{} {}", stem, number);
        if (!name_is_taken(setup, role, candidate)) return candidate;
    }
}

}  // namespace beamfork
