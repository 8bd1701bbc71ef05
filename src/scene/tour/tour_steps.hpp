// Steps of built-in tours put together: what is lit, what the room is asked.
#pragma once

#include <array>
#include <set>
#include <string>
#include <vector>

#include "document/tour.hpp"

namespace beamfork {

TourStep lit_by(std::vector<std::string> lit, TourStep step);
TourStep asking(TourQuestion asks, TourStep step);
TourStep showing(std::set<TourShow> show, TourStep step);

/// A number to be guessed, from three of which one is near it whatever it is now.
struct NumberQuestion {
    std::string question;
    std::string quote;                          ///< that decides: "{head.path}"
    double value = 0;                           ///< of that quote
    std::string unit;                           ///< behind the numbers, as the quote has it
    std::array<double, 3> shares{0.1, 0.5, 1};  ///< of the value: rising, one of them 1
    double rounded_to = 1;
};

/// The step without a question where rounding would leave two answers alike, or nothing to guess.
TourStep asking_number(const NumberQuestion& number, TourStep step);

}  // namespace beamfork
