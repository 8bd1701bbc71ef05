// A tour: what a speaker tells of a setup, step by step. A plain value; its captions are templates that quote the
// studies by name, as in "the image falls {focus.shortfall}" (scene/tour/tour_quotes.hpp), so that they cannot go stale.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "document/extras.hpp"
#include "document/standard_view.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// A place of one's own to see from, as scene/picture/camera.hpp's orbit camera: world millimetres, degrees.
struct TourCamera {
    std::array<double, 3> target_mm{0, 0, 0};
    double distance_mm = 500;
    double yaw_deg = 0;
    double pitch_deg = 0;
    bool operator==(const TourCamera&) const = default;
};

/// What the room is asked before it reads the caption. All texts are templates as captions are. Which answer is right is
/// told by its place, or by a value of the studies: then it is right for whatever setup is told of.
struct TourQuestion {
    std::string question;
    std::vector<std::string> answers;  ///< two or three
    std::size_t right = 0;             ///< index of the right one, unless ...
    std::string right_value{};         ///< ... a value decides: "{head.path}"; empty: none does
    bool operator==(const TourQuestion&) const = default;
};
/// What a step shows besides where the light goes (scene/picture/view_options.hpp).
enum class TourShow {
    motion,
    pupil,
    apart,
    stars,    ///< the light of two stars alone: one in the middle of the field, one at its edge
    fields,   ///< what arrives on the field stops alone, without the light on its way
    ruler,    ///< the light path laid along the parts that are lit, instead of the light
    colours,  ///< where blue, green and red come together, many times as large
    sight,    ///< the Moon as each eye sees it, in a corner
};
inline constexpr std::array all_tour_shows{TourShow::motion,  TourShow::pupil,  TourShow::apart,
                                           TourShow::stars,   TourShow::fields, TourShow::ruler,
                                           TourShow::colours, TourShow::sight};
/// As the setup file names it: "motion".
std::string_view name_of(TourShow show);

/// What a step tells of instead of the document's setup: one worked out of it, with a lens put in or a cure carried out.
/// The built-in tours alone have it; it is never saved.
struct ToldInstead {
    Setup setup;
    std::optional<Setup> ghost{};  ///< whose light and image are seen as well, as what they were
    std::string ghost_words{};     ///< at that image
    bool operator==(const ToldInstead&) const = default;
};

struct TourStep {
    StandardView view = StandardView::overview;
    std::string caption;  ///< for the room: two or three short sentences; the answer to a question
    std::string notes;    ///< for the speaker
    std::optional<TourCamera> camera{};  ///< counts instead of `view`
    Extras extras{};
    std::set<TourShow> show{};       ///< beyond what is shown when the tour begins
    std::vector<std::string> lit{};  ///< what stands out (tour_lit.hpp); empty: everything
    std::optional<TourQuestion> asks{};
    std::optional<ToldInstead> instead{};
    bool operator==(const TourStep&) const = default;
};

struct Tour {
    std::string name;  ///< one word for the command line: "why-it-will-not-focus"
    std::string title;
    std::vector<TourStep> steps;
    Extras extras{};
    bool operator==(const Tour&) const = default;
};

inline constexpr std::size_t most_answers = 3;
inline constexpr std::size_t most_tours = 40;
inline constexpr std::size_t most_tour_steps = 200;

/// What stands before the foreign keys of a camera among TourStep::extras.
inline constexpr std::string_view camera_prefix = "camera.";

/// The setup that a step of the document's tour tells of.
inline const Setup& told_setup(const TourStep& step, const Setup& setup) {
    return step.instead ? step.instead->setup : setup;
}

/// The names that a caption may quote.
std::span<const std::string_view> quote_names();

/// The template with each {name} replaced by what `value` says of it; "{{" stands for a brace. Error bad_input: a brace
/// that is not closed, or value's own.
Result<std::string>
with_quotes(std::string_view caption,
            const std::function<Result<std::string>(std::string_view name)>& value);

/// "'{x}' is no value that can be quoted; did you mean '{y}'?"
Error unknown_quote(std::string_view name, std::span<const std::string_view> known);

/// What is wrong with a caption: a bad quote, control characters, more than 400 bytes.
std::optional<std::string> caption_objection(std::string_view caption);
/// What is wrong with a question: a bad quote, too long, no answers or too many, two alike, none that can be right.
struct QuestionFault {
    enum class At { question, answers, right } at = At::question;
    std::string sentence;
};
std::optional<QuestionFault> question_fault(const TourQuestion& asks);
/// The tour of that name or, where none has it, of that title, in capitals or not. Error bad_input: neither, with the
/// nearest.
Result<const Tour*> find_tour(std::span<const Tour> tours, const std::string& name_or_title);
/// A tour's name is one word of small letters, digits and hyphens.
std::optional<std::string> tour_name_objection(std::string_view name);
/// The first thing that is wrong with them: names, titles, captions, notes, cameras, a tour without a step, two alike,
/// too many.
std::optional<std::string> tours_objection(std::span<const Tour> tours);

/// `wanted` made one word, with a number behind it where one of the tours has that name.
std::string free_tour_name(std::span<const Tour> tours, std::string_view wanted);

}  // namespace beamfork
