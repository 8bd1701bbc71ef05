// The best few trains for each purpose, each tried in full as a setup of its own. One of which any finding fails is not
// told.
#pragma once

#include <string>
#include <vector>

#include "document/document.hpp"
#include "plan/purposes.hpp"

namespace beamfork {

struct TriedTrain {
    Candidate candidate;
    PlannedTrain train;
    Document document{};
    QuickFocus focus{};               ///< for the use that is looked at
    std::vector<double> results{};    ///< in the order of all_results()
    std::vector<std::string> poor{};  ///< sentences of what is poor in it
    std::string unsure_of{};  ///< the length that focus hangs on most: "Club refractor: Back focus"
    double score = 0;         ///< after light or sharpness, and the chance that it comes to focus
    std::string words{};      ///< its parts (planned_setup.hpp)
    [[nodiscard]] double result(ResultId id) const;
};

struct BestForPurpose {
    Purpose purpose;
    std::vector<TriedTrain> trains{};  ///< best first
    std::size_t serving = 0;           ///< trains that reach for everybody
    std::size_t outdone = 0;           ///< of them: worse than another in every respect
    std::size_t failing = 0;           ///< of those tried: something fails in them
    std::string why_failing{};         ///< the first such sentence
};

/// The train as a setup, studied; nothing where something fails in it, and why not in `why_not`. Of a use that the
/// telescope can see.
std::optional<TriedTrain>
tried(const Plan& plan, const Candidate& candidate, const Purpose& purpose, std::string& why_not);

/// At most `most` trains of each purpose, none less than half as good as the best; of those that differ in spacers alone
/// the best.
std::vector<BestForPurpose>
best_trains(const Plan& plan, std::span<const Purpose> purposes, std::size_t most = 3);

}  // namespace beamfork
