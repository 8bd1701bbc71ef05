#include "plan/best_trains.hpp"

#include <algorithm>
#include <set>

#include "base/two_at_a_time.hpp"
#include "plan/planned_setup.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

double TriedTrain::result(ResultId id) const { return results.at(static_cast<std::size_t>(id)); }

namespace {

// The train without its spacers: two that have it in common are told once.
std::vector<std::size_t> kernel_of(const Plan& plan, const PlannedTrain& train) {
    std::vector<std::size_t> kernel{plan.tube_of(train).telescope, plan.tube_of(train).focuser,
                                    plan.head_of(train).part, plan.pair_of(train).part};
    for (const std::size_t one : plan.chain_of(train).parts) {
        if (!plan.parts.chain[one].is_spacer) kernel.push_back(plan.parts.chain[one].part);
    }
    return kernel;
}

std::vector<Candidate>
first_of_each_kernel(const Plan& plan, const std::vector<Candidate>& candidates, std::size_t most) {
    std::set<std::vector<std::size_t>> known;
    std::vector<Candidate> chosen;
    for (const Candidate& one : candidates) {
        if (chosen.size() == most) break;
        if (known.insert(kernel_of(plan, plan.trains[one.train])).second) chosen.push_back(one);
    }
    return chosen;
}

struct Trial {
    std::optional<TriedTrain> train;
    std::string why_not;
};

BestForPurpose best_for(const Plan& plan, const Purpose& purpose, std::size_t most) {
    constexpr std::size_t tried_for_each = 3;  // some fail, and light may turn the order
    BestForPurpose best{.purpose = purpose};
    const auto all = candidates(plan, purpose);
    const auto kept = not_outdone(all);
    best.serving = all.size();
    best.outdone = all.size() - kept.size();
    const auto chosen = first_of_each_kernel(plan, kept, tried_for_each * most);
    std::vector<Trial> trials(chosen.size());
    two_at_a_time(chosen.size(), [&](std::size_t i) {
        trials[i].train = tried(plan, chosen[i], purpose, trials[i].why_not);
    });
    for (Trial& trial : trials) {
        if (trial.train) {
            best.trains.push_back(*std::move(trial.train));
        } else if (++best.failing == 1) {
            best.why_failing = trial.why_not;
        }
    }
    std::stable_sort(best.trains.begin(), best.trains.end(),
                     [](const TriedTrain& a, const TriedTrain& b) { return a.score > b.score; });
    std::erase_if(best.trains,
                  [&](const TriedTrain& one) { return one.score < best.trains.front().score / 2; });
    if (best.trains.size() > most)
        best.trains.erase(best.trains.begin() + static_cast<long>(most), best.trains.end());
    return best;
}

}  // namespace

std::optional<TriedTrain>
tried(const Plan& plan, const Candidate& candidate, const Purpose& purpose, std::string& why_not) {
    TriedTrain train{.candidate = candidate, .train = plan.trains.at(candidate.train)};
    train.document = planned_document(plan, train.train, candidate.use);
    const auto focus = plan.focus(train.train, candidate.use);
    BEAMFORK_EXPECTS(focus.has_value());
    train.focus = *focus;
    const Setup& setup = train.document.setup;
    const auto report = make_trial(setup, {.form = LightForm::few_rays});
    if (!report) {
        why_not = report.error().what;
        return std::nullopt;
    }
    for (const Finding& finding : report->findings) {
        if (finding.severity == Severity::fails) {
            why_not = finding.sentence;
            return std::nullopt;
        }
        if (finding.severity == Severity::poor) train.poor.push_back(finding.sentence);
    }
    for (const ResultInfo& info : all_results())
        train.results.push_back(info.value(*report));
    if (!report->uncertainty.contributions.empty()) {
        const Contribution& most = report->uncertainty.contributions.front();
        train.unsure_of = setup.parts.at(most.part).name + ": " + most.label;
    }
    train.words = train_words(plan, train.train);
    constexpr double percent = 0.01;
    train.score = candidate.score * std::min(1.0, train.result(purpose.keeps) / purpose.enough)
                  * percent * train.result(ResultId::focus_chance);
    return train;
}

std::vector<BestForPurpose>
best_trains(const Plan& plan, std::span<const Purpose> purposes, std::size_t most) {
    std::vector<BestForPurpose> best;
    for (const Purpose& purpose : purposes)
        best.push_back(best_for(plan, purpose, most));
    return best;
}

}  // namespace beamfork
