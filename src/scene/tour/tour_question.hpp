// A question to the room as it is asked of one setup: texts filled, and which answer is right by its studies.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "document/tour.hpp"
#include "scene/tour/tour_quotes.hpp"

namespace beamfork {

struct AskedQuestion {
    std::string question;
    std::vector<std::string> answers;
    std::optional<std::size_t> right;  ///< none: none of them is, for this setup
    std::string
        truth{};  ///< the value that decides; empty where the tour itself says which is right
    bool operator==(const AskedQuestion&) const = default;
};

/// Errors as filled_caption.
Result<AskedQuestion> asked_question(const TourQuestion& asks, std::span<const TourQuote> quotes);

/// The answer that says the same as `truth`. Where all of them begin with a number of its unit ("100 mm" of "102.4 mm"):
/// the nearest, if it is off by no more than a quarter of the truth. Else none.
std::optional<std::size_t> right_answer(std::span<const std::string> answers,
                                        const std::string& truth);

/// What is told once it is answered: the caption, behind "None of these: 300.0 mm." where no answer was right.
std::string told_result(const AskedQuestion& asked, const std::string& caption);

}  // namespace beamfork
