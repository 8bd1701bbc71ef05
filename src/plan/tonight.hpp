// Tonight's row: with one telescope and one head a row of powers from the widest field up, in sensible steps and with the
// fewest exchanges between, as instructions for the dark.
#pragma once

#include <string>
#include <vector>

#include "plan/best_trains.hpp"

namespace beamfork {

struct RowStep {
    TriedTrain train;
    /// From the train before: "put the 18 mm, 60° pair in place of the 25 mm, 50° pair"; of the first: what to join.
    std::vector<std::string> orders;
    std::size_t exchanges =
        0;  ///< pieces put in, taken out or moved; one in place of another counts once
};

struct TonightsRow {
    std::string telescope;
    std::vector<RowStep> steps;  ///< by growing power
    [[nodiscard]] std::size_t exchanges() const;
};

/// Pieces that are put in, taken out or moved between two trains, indices into Drawer::parts in the order of the light.
std::size_t exchanges_between(const std::vector<std::size_t>& before,
                              const std::vector<std::size_t>& after);

/// One for each telescope that comes to focus under the sky for everybody, tried step by step as setups. Powers stay
/// between an exit pupil as wide as the eye's and 0.5 mm, up to 300 times, and lie 1.25 to 2.2 times apart where the drawer allows it
/// (common practice, no source).
std::vector<TonightsRow> tonights_rows(const Plan& plan);

}  // namespace beamfork
