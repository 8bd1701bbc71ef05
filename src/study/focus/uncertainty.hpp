// How sure it is that focus is reached, from the +- of the parts' values, stated or assumed; which value makes
// it unsure, and what measuring that one better would bring.
//
// The margin inward, which is the wanted drawtube position, or with a moving mirror the light path it has left, moves by
// c per unit of a value. Each value's own distribution is kept, anywhere within +- with equal chance or normal, and all
// are folded (chance_curve.hpp); the variance is the sum (c u)^2, u a value's standard deviation (JCGM 100:2008, GUM,
// eq. 10). The drawtube's travel bears on the margin outward alone. What the seats could take up is not counted: it is
// wanted for the eyes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "study/focus/chance_curve.hpp"
#include "study/focus/focus_budget.hpp"

namespace beamfork {

/// What one uncertain value does to the margin.
struct Contribution {
    std::size_t part = 0;
    std::string key;
    std::string label;  ///< of its field
    FieldUnit unit = FieldUnit::millimetre;
    Tolerance tolerance;      ///< always with a number
    bool is_assumed = false;  ///< nobody stated that number: it is the usual one
    double sensitivity = 0;   ///< mm of margin per unit of the value
    Millimetres standard{};   ///< what it adds to the margin, one standard deviation
    Millimetres shift{};  ///< of the margin from the stated value to the middle of where it can be
    double share = 0;     ///< of the smaller margin's variance, 0 to 1
};

/// The largest contribution, were it measured to `plus_minus` (one standard deviation).
struct BetterKnown {
    double plus_minus = 0;
    double probability = 0;  ///< that focus is reached then, if the value turns out as stated
};

struct Uncertainty {
    Millimetres
        drawtube;  ///< wanted extension as stated; with a moving mirror: what it has left to go up
    Millimetres travel;  ///< of the drawtube; with a moving mirror: of its back focus
    bool is_by_mirror = false;
    Millimetres margin;      ///< the smaller of both margins, negative when short
    Millimetres standard;    ///< standard deviation of that margin
    double probability = 1;  ///< that focus lies within the travel, whatever the seats could do
    double too_far_in = 0;   ///< probability that it lies inward of the travel
    double too_far_out = 0;
    std::vector<Contribution> contributions;  ///< largest first; those that change nothing left out
    std::size_t assumed = 0;                  ///< how many of them have a +- that nobody stated
    std::optional<BetterKnown> better;
};

/// `budget` is of that setup and choice. Errors as build_train.
Result<Uncertainty>
uncertainty(const Setup& setup, const Choice& choice, const FocusBudget& budget);

/// The same probability by drawing all values at random and solving the focus each time, for a second opinion.
/// The same seed gives the same answer. Errors as build_train.
Result<double>
sampled_probability(const Setup& setup, const Choice& choice, int samples, std::uint64_t seed = 1);

/// How the margin inward spreads about the stated one, without the drawtube's travel.
ChanceCurve margin_curve(const Setup& setup, const Uncertainty& found);

/// How to measure that value at home, as one sentence.
std::string home_measurement(const PartBody& body, const std::string& key);

}  // namespace beamfork
