#include "document/tour.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "document/tour_lit.hpp"
#include "document/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr std::size_t longest_caption =
    400;  // what fits a talk's band in large letters, and some more
constexpr std::size_t longest_question = 200;  // two lines beside the answers
constexpr std::size_t longest_answer = 80;

constexpr std::array<std::string_view, 32> all_quote_names{
    "focus.shortfall",  "focus.verdict",      "focus.margin_in",     "focus.margin_out",
    "focus.back_focus", "focus.wanted",       "focus.drawtube",      "head.name",
    "head.path",        "head.left",          "head.right",          "chain.path",
    "glass.length",     "eye.left",           "eye.right",           "eye.brighter",
    "eye.change",       "eyes.change",        "shifter.name",        "shifter.factor",
    "shifter.gain",     "shifter.distance",   "edge.light",          "edge.rim",
    "middle.aperture",  "telescope.aperture", "sight.magnification", "sight.true_field",
    "sight.exit_pupil", "sight.focal_ratio",  "glass.colour",        "glass.depth"};

std::string in_small_letters(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter + 32);
    return text;
}

bool is_in_tour_name(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '-';
}

// Nothing but a text whose quotes are known, of at most so many bytes; `what` is what it is called.
std::optional<std::string>
template_objection(const std::string& what, std::string_view text, std::size_t longest) {
    if (text.size() > longest)
        return fmt::format("{} must not be longer than {} letters: the room reads it in large "
                           "type",
                           what, longest);
    if (const auto wrong = story_objection(text)) return what + ": " + *wrong;
    const auto filled = with_quotes(text, [](std::string_view name) -> Result<std::string> {
        const auto known = quote_names();
        if (std::find(known.begin(), known.end(), name) != known.end()) return std::string();
        return tl::make_unexpected(unknown_quote(name, known));
    });
    if (!filled) return what + ": " + filled.error().what;
    return std::nullopt;
}

std::optional<std::string> step_objection(const TourStep& step) {
    if (const auto wrong = caption_objection(step.caption)) return wrong;
    if (const auto wrong = lit_objection(step.lit)) return wrong;
    if (step.asks) {
        if (const auto fault = question_fault(*step.asks)) return fault->sentence;
    }
    if (const auto wrong = story_objection(step.notes)) return "notes: " + *wrong;
    if (!step.camera) return std::nullopt;
    const TourCamera& camera = *step.camera;
    if (!(camera.distance_mm >= 4 && camera.distance_mm <= 30'000))
        return "a camera's distance_mm must be from 4 to 30000";
    if (!(std::abs(camera.pitch_deg) <= 90)) return "a camera's pitch_deg must be from -90 to 90";
    if (!(std::abs(camera.yaw_deg) <= 360)) return "a camera's yaw_deg must be from -360 to 360";
    return std::nullopt;
}

}  // namespace

std::span<const std::string_view> quote_names() { return all_quote_names; }

Result<std::string>
with_quotes(std::string_view caption,
            const std::function<Result<std::string>(std::string_view name)>& value) {
    std::string filled;
    while (!caption.empty()) {
        const std::size_t open = caption.find('{');
        filled += caption.substr(0, open);
        if (open == std::string_view::npos) break;
        caption.remove_prefix(open + 1);
        if (caption.starts_with('{')) {
            filled += '{';
            caption.remove_prefix(1);
            continue;
        }
        const std::size_t close = caption.find('}');
        if (close == std::string_view::npos) {
            return fail(ErrorCode::bad_input,
                        fmt::format("a caption has a '{{' without its '}}': '{{{}'", caption));
        }
        auto words = value(caption.substr(0, close));
        if (!words) return words;
        filled += *words;
        caption.remove_prefix(close + 1);
    }
    return filled;
}

Error unknown_quote(std::string_view name, std::span<const std::string_view> known) {
    const std::vector<std::string> names(known.begin(), known.end());
    return {ErrorCode::bad_input,
            fmt::format("'{{{}}}' is no value that can be quoted{}", name,
                        did_you_mean(name, names, "'{", "}'")),
            {}};
}

std::optional<std::string> caption_objection(std::string_view caption) {
    return template_objection("a caption", caption, longest_caption);
}

namespace {

std::optional<std::string> answers_objection(const std::vector<std::string>& answers) {
    if (answers.size() < 2 || answers.size() > most_answers)
        return fmt::format("a question has two or three answers, not {}", answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const std::string what = fmt::format("answer {}", i + 1);
        if (answers[i].find_first_not_of(" \n") == std::string::npos)
            return what + " must not be empty";
        if (const auto wrong = template_objection(what, answers[i], longest_answer)) return wrong;
        for (std::size_t j = 0; j < i; ++j) {
            if (answers[j] == answers[i])
                return fmt::format("answers {} and {} are alike", j + 1, i + 1);
        }
    }
    return std::nullopt;
}

std::optional<std::string> right_objection(const TourQuestion& asks) {
    const auto& [question, answers, right, value] = asks;
    if (value.empty()) {
        if (right < answers.size()) return std::nullopt;
        return fmt::format("the right answer must be a number from 1 to {}, not {}", answers.size(),
                           right + 1);
    }
    if (const auto wrong = template_objection("the right answer", value, longest_answer))
        return wrong;
    const bool is_quoted = value.find('{') != std::string::npos;
    if (is_quoted || std::find(answers.begin(), answers.end(), value) != answers.end())
        return std::nullopt;
    return fmt::format("the right answer '{}' is none of the answers; expected one of them, its "
                       "number, or a value such as '{{focus.verdict}}'",
                       value);
}

}  // namespace

std::string_view name_of(TourShow show) {
    switch (show) {
    case TourShow::motion: return "motion";
    case TourShow::pupil: return "pupil";
    case TourShow::apart: return "apart";
    case TourShow::stars: return "stars";
    case TourShow::fields: return "fields";
    case TourShow::ruler: return "ruler";
    case TourShow::colours: return "colours";
    case TourShow::sight: return "sight";
    }
    return "motion";
}

std::optional<QuestionFault> question_fault(const TourQuestion& asks) {
    using At = QuestionFault::At;
    if (asks.question.find_first_not_of(" \n") == std::string::npos)
        return QuestionFault{At::question, "a question to the room must not be empty"};
    if (auto wrong = template_objection("a question", asks.question, longest_question))
        return QuestionFault{At::question, std::move(*wrong)};
    if (auto wrong = answers_objection(asks.answers))
        return QuestionFault{At::answers, std::move(*wrong)};
    if (auto wrong = right_objection(asks)) return QuestionFault{At::right, std::move(*wrong)};
    return std::nullopt;
}

Result<const Tour*> find_tour(std::span<const Tour> tours, const std::string& name_or_title) {
    std::vector<std::string> names;
    for (const Tour& tour : tours) {
        if (tour.name == name_or_title) return &tour;
        names.push_back(tour.name);
    }
    const std::string wanted = in_small_letters(name_or_title);
    std::vector<std::string> known = names;
    for (const Tour& tour : tours) {
        if (in_small_letters(tour.title) == wanted) return &tour;
        known.push_back(tour.title);
    }
    return fail(ErrorCode::bad_input,
                fmt::format("no tour is called '{}'; expected one of: {}{}", name_or_title,
                            fmt::join(names, ", "), did_you_mean(name_or_title, known)));
}

std::optional<std::string> tour_name_objection(std::string_view name) {
    constexpr std::size_t longest = 60;
    const bool is_word = !name.empty() && name.size() <= longest
                         && std::all_of(name.begin(), name.end(), is_in_tour_name);
    if (is_word) return std::nullopt;
    return fmt::format("a tour's name is one word of at most {} small letters, digits and hyphens, "
                       "such as \"club-night\", not \"{}\"",
                       longest, name.substr(0, longest));
}

std::optional<std::string> tours_objection(std::span<const Tour> tours) {
    if (tours.size() > most_tours)
        return fmt::format("a setup can have at most {} tours", most_tours);
    for (std::size_t i = 0; i < tours.size(); ++i) {
        const Tour& tour = tours[i];
        if (const auto wrong = tour_name_objection(tour.name)) return wrong;
        if (const auto wrong = title_objection(tour.title)) return "a tour: " + *wrong;
        if (tour.steps.empty())
            return fmt::format("the tour '{}' has no step: add a [[tour.step]]", tour.name);
        if (tour.steps.size() > most_tour_steps)
            return fmt::format("the tour '{}' has more than {} steps", tour.name, most_tour_steps);
        for (const TourStep& step : tour.steps) {
            if (const auto wrong = step_objection(step)) return wrong;
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (tours[j].name == tour.name)
                return fmt::format("there are two tours called '{}'; give them different names",
                                   tour.name);
        }
    }
    return std::nullopt;
}

std::string free_tour_name(std::span<const Tour> tours, std::string_view wanted) {
    std::string stem;
    for (const char letter : wanted.substr(0, 50)) {
        const char small = letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
        if (is_in_tour_name(small)) stem += small;
        if (!is_in_tour_name(small) && !stem.empty() && stem.back() != '-') stem += '-';
    }
    while (!stem.empty() && stem.back() == '-')
        stem.pop_back();
    if (stem.empty()) stem = "tour";
    const auto is_taken = [&](const std::string& name) {
        return std::any_of(tours.begin(), tours.end(),
                           [&](const Tour& tour) { return tour.name == name; });
    };
    std::string name = stem;
    for (int number = 2; is_taken(name); ++number)
        name = fmt::format("{}-{}", stem, number);
    return name;
}

}  // namespace beamfork
