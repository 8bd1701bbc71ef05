// The values that a caption may quote, with their units, and the filling of a caption's template.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "document/tour.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

/// One value in words: "focus.shortfall" is "12.3 mm short", with a space between number and unit at which no line is
/// broken (U+00A0).
struct TourQuote {
    std::string name;
    std::string text;
    std::string meaning;  ///< what it is, in one sentence
};

/// All values of a setup, those of quote_names() (document/tour.hpp) whatever parts it has; what it lacks is said in words ("no shifter").
std::vector<TourQuote> tour_quotes(const Setup& setup, const Report& report);

/// The template with each {name} replaced by its value; "{{" stands for a brace. Error bad_input: an unknown name,
/// with the nearest known one, or a brace that is not closed.
Result<std::string> filled_caption(std::string_view caption, std::span<const TourQuote> quotes);

/// The darker of the two eyes at the edge of its field, as the captions tell it.
const EyeClipping& darker_at_edge(const Report& report);

}  // namespace beamfork
