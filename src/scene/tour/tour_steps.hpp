// Steps of built-in tours put together: what is lit, what the room is asked.
#pragma once

#include <array>
#include <set>
#include <string>
#include <vector>

#include "base/units.hpp"
#include "document/tour.hpp"
#include "geometry/pose.hpp"

namespace beamfork {

// What a step lights, as document/tour_lit.hpp has it.
inline constexpr const char* the_telescope = "telescope";
inline constexpr const char* the_focuser = "focuser";
inline constexpr const char* the_chain = "chain";
inline constexpr const char* the_head = "splitter_head";
inline constexpr const char* the_eyepieces = "eyepiece_pair";

TourStep lit_by(std::vector<std::string> lit, TourStep step);
TourStep asking(TourQuestion asks, TourStep step);
TourStep seen_from(const TourCamera& camera, TourStep step);
TourStep told_of(ToldInstead instead, TourStep step);
TourStep showing(std::set<TourShow> show, TourStep step);

/// A number to be guessed from three, of which one is it, as the caption tells it.
struct NumberQuestion {
    std::string question;
    std::string quote;                          ///< that decides: "{head.path}"
    double value = 0;                           ///< of that quote
    std::string unit;                           ///< behind the numbers, as the quote has it
    std::array<double, 3> shares{0.1, 0.5, 1};  ///< of the value: rising, one of them 1
    int decimals = 0;                           ///< as the quote has them
};

/// The step without a question where rounding would leave two answers alike, or nothing to guess.
TourStep asking_number(const NumberQuestion& number, TourStep step);

/// Of an opening `radius` wide at `at`, so near that the rays at its rim can be told apart; seen as StandardView::rear is.
TourCamera close_to(const Point& at, double radius);

/// Words that are none of a template's: a part's own name may have braces.
std::string plainly(const std::string& words);
/// "12.3 mm", its number and unit in one line.
std::string millimetres(Millimetres length);

}  // namespace beamfork
