// A first setup from a few answers: what the user knows is taken as it is, what nobody knows gets a usual value with
// a wide +- so that the studies say how little is sure.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>

#include "base/typed_number.hpp"
#include "train/setup.hpp"

namespace beamfork {

enum class TelescopeAnswer { refractor, newtonian, moving_mirror };
enum class DiagonalAnswer { unknown, none, prism, small_mirror, large_mirror };

/// A question whose answer is a number.
struct SetupQuestion {
    const char* key;   ///< "back_focus"
    const char* ask;   ///< "Back focus"
    const char* help;  ///< what it is and how one finds it, for somebody who has not heard of it
    NumberUnit unit = NumberUnit::millimetre;
};
/// In the order in which light meets what they are about.
std::span<const SetupQuestion> setup_questions();

/// A number without an answer is unknown.
struct SetupAnswers {
    TelescopeAnswer telescope = TelescopeAnswer::refractor;
    DiagonalAnswer diagonal = DiagonalAnswer::unknown;
    std::map<std::string, double> numbers;  ///< by SetupQuestion::key, in that question's unit
};

/// What is taken where nobody knows, give or take; common practice, no source.
struct UsualValue {
    double value = 0;
    double plus_minus = 0;
};
/// The focal length follows from the aperture, known or not.
UsualValue usual_value(const SetupAnswers& answers, const std::string& key);

/// The train they describe, for the sky at night. Its story says what was assumed. An error says which answer
/// cannot be: out of range, or against another.
Result<Setup> described_setup(const SetupAnswers& answers);

}  // namespace beamfork
