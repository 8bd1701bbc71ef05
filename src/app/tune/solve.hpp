// `beamfork solve`: which value of one number of a setup gives a wanted result.
#pragma once

#include <string>

#include "app/commands/tasks.hpp"
#include "base/error.hpp"
#include "study/tune/tune_study.hpp"

namespace beamfork {

struct Solved {
    std::string text;      ///< to print: for people, or JSON
    bool is_found = true;  ///< the wanted result can be had
};

/// Errors are bad_input or not_found: names that are unknown, with the nearest one, or a number that cannot be read.
Result<Solved> solve(const Setup& setup, const SolveFor& asked);

/// What can be varied in that setup and what can be watched, by the names that solve takes.
std::string solvable_text(const Setup& setup);
std::string solvable_json(const Setup& setup);

}  // namespace beamfork
