// Two setups side by side, ready to show: results with the better one marked, and the parts that differ.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "study/comparison/comparison.hpp"

namespace beamfork {

struct Report;
struct Setup;

struct ComparisonRow {
    std::string label;
    std::string here;  ///< with its unit: "30.0 mm"
    std::string there;
    std::optional<Side> better;
    std::string help;
};

struct DifferenceRow {
    std::optional<std::size_t> part;  ///< of the setup that is open
    std::string label;                ///< "Adapter: Length", or a part's name
    std::string here;                 ///< "–": it does not have that part
    std::string there;
};

struct ComparisonRows {
    std::string summary;  ///< "This setup is better in 3 results, the other in 2."
    int better_here = 0;  ///< number of results
    int better_there = 0;
    std::vector<ComparisonRow> changed;
    std::vector<ComparisonRow> same;  ///< results that do not differ
    std::vector<DifferenceRow> parts;
};

ComparisonRows comparison_rows(const Setup& here,
                               const Report& report_here,
                               const Setup& there,
                               const Report& report_there);

}  // namespace beamfork
