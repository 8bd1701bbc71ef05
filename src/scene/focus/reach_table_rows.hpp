// The reach table in words and numbers, ready to draw: one line for each combination of eyepieces, observer
// and target, and the sentences that sum it up.
#pragma once

#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "train/setup.hpp"

namespace beamfork {

struct Report;

struct ReachColumn {
    std::string heading;
    std::string unit;
    std::string help;        ///< what it is, its formula in words and the source
    bool is_number = true;   ///< aligned at its right
    bool is_printed = true;  ///< also told on a page of text
};

/// One combination; `cells` stand under the columns in their order.
struct ReachRow {
    Choice choice;
    bool is_chosen = false;
    bool reaches = false;
    bool is_well = false;  ///< reaches, both seats travel far enough, and the pupil distance fits
    ColourRole role = ColourRole::good;
    std::vector<std::string> cells;
    /// The one part by which it differs from what is chosen, "As chosen" for that itself; empty when more than
    /// one differs: where there is little room, only one change at a time is shown.
    std::string change;
    std::string sentence;  ///< all of it in words
};

/// Which column says whether it reaches.
constexpr std::size_t reach_column = 4;

struct ReachRows {
    std::vector<ReachColumn> columns;
    std::vector<ReachRow> rows;
    std::string
        summary;  ///< "14 of 18 combinations reach focus.", whom the head does not fit, and which are not studied
    std::string one_place;  ///< the drawtube position that serves all, or what prevents it
};

ReachRows reach_table_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
