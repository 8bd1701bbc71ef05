// What the study "tune" is asked, from the names and the text that the session keeps.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "study/tune/tune_study.hpp"

namespace beamfork {

/// "Adapter: Length"
std::string tunable_label(const Setup& setup, const Tunable& tunable);

/// What the window asks: the names as the session keeps them; what they do not name falls back to the first adapter's
/// length, else the telescope's back focus, and to the focus margin. `wanted` is text as typed.
struct TuneChoice {
    std::vector<Tunable> tunables;
    std::size_t chosen = 0;  ///< index into them
    TuneQuestion question;
    std::string problem;  ///< what is wrong with the wanted result; empty: nothing
};
TuneChoice tune_choice(const Setup& setup,
                       std::string_view varied,
                       std::string_view watched,
                       std::string_view wanted);

}  // namespace beamfork
