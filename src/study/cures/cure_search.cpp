#include "study/cures/cure_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <mutex>
#include <set>
#include <string_view>
#include <tuple>

#include "base/two_at_a_time.hpp"
#include "study/cures/cure_effect.hpp"
#include "study/cures/cure_ideas.hpp"
#include "study/results/results.hpp"

namespace beamfork {

namespace {

// Enough to tell whether a finding is there; light to about 0.1 %.
constexpr ClippingEffort trial_rays{256, LightForm::few_rays};

// Findings that are degrees of one complaint share a name here.
std::string_view complaint_of(std::string_view id) {
    using Family = std::array<std::string_view, 3>;
    static constexpr std::array families{
        Family{"focus_short", "focus_far", "focus_margin_thin"},
        Family{"image_soft", "image_fair", "image_soft_later"},
        Family{"focuser_overloaded", "focuser_nearly_full", ""},
        Family{"eyepieces_touch", "nose_gap_narrow", ""},
        Family{"images_do_not_merge", "images_hard_to_merge", "images_slightly_apart"},
    };
    for (const Family& family : families) {
        if (std::find(family.begin(), family.end(), id) != family.end()) return family.front();
    }
    return id;
}

// The gravest finding of one complaint, and how many there are.
struct ComplaintState {
    Severity worst = Severity::good;
    std::size_t count = 0;
};
ComplaintState complaint_state(const std::vector<Finding>& findings, std::string_view complaint) {
    ComplaintState state;
    for (const Finding& finding : findings) {
        if (finding.severity == Severity::good || complaint_of(finding.id) != complaint) continue;
        state.worst = std::min(state.worst, finding.severity);
        ++state.count;
    }
    return state;
}

// What the change newly makes fail or poor: complaints that were not so grave before.
std::vector<const Finding*> spoilt(const std::vector<Finding>& before,
                                   const std::vector<Finding>& after) {
    std::vector<const Finding*> found;
    for (const Finding& finding : after) {
        if (finding.severity > Severity::poor) continue;
        const ComplaintState old = complaint_state(before, complaint_of(finding.id));
        if (old.count == 0 || finding.severity < old.worst) found.push_back(&finding);
    }
    return found;
}

// Which must not become worse for anything: how many findings fail, then how many are poor; and where focus is missed or
// its margin thin, by how much.
bool is_worse_in_headline(const Report& before, const Report& after) {
    const auto told = [](const Report& report, ResultId id) { return info_of(id).value(report); };
    const auto gravest = [&](const Report& report) {
        return std::pair(told(report, ResultId::failures), told(report, ResultId::poor));
    };
    constexpr double rounding_mm = 0.05;  // of what is told
    const double margin = told(before, ResultId::focus_margin);
    const bool costs_focus =
        margin < thin_margin.value && told(after, ResultId::focus_margin) < margin - rounding_mm;
    return costs_focus || gravest(after) > gravest(before);
}

struct RankedCure {
    Cure cure;
    std::size_t spoils = 0;
    double magnification_change = 0;
    std::string sort{};
    [[nodiscard]] auto rank() const {
        return std::tuple(!cure.removes, spoils, cure.reversibility, magnification_change);
    }
};

// Asks on behalf of several threads, one at a time and no more once the answer was yes.
class GivingUp {
public:
    explicit GivingUp(const std::function<bool()>& is_given_up) : is_given_up_(is_given_up) {}
    bool is_decided() {
        const std::lock_guard lock(mutex_);
        if (!decided_ && is_given_up_) decided_ = is_given_up_();
        return decided_;
    }

private:
    const std::function<bool()>& is_given_up_;
    std::mutex mutex_;
    bool decided_ = false;
};

class CureSearch {
public:
    explicit CureSearch(const Report& report) : report_(report), found_(report.findings.size()) {}

    void weigh(const CureIdea& idea, const Result<Report>& after) {
        if (!after || is_worse_in_headline(report_, *after)) return;
        const auto bad = spoilt(report_.findings, after->findings);
        const bool breaks = std::any_of(bad.begin(), bad.end(), [](const Finding* one) {
            return one->severity == Severity::fails;
        });
        if (breaks) return;
        for (std::size_t i = 0; i < found_.size(); ++i) {
            const Finding& finding = report_.findings[i];
            if (!wants_cure(finding)) continue;
            const std::string_view complaint = complaint_of(finding.id);
            const ComplaintState old = complaint_state(report_.findings, complaint);
            const ComplaintState now = complaint_state(after->findings, complaint);
            const bool removes = now.count < old.count && is_gone(finding, after->findings);
            const bool lessens = now.count > 0 && now.worst > finding.severity;
            if (!removes && !lessens) continue;
            if (finding.is_of_sharpness && halves_field(*after)) continue;
            RankedCure ranked{cure_of(idea, *after, bad), bad.size(), magnification_change(*after),
                              idea.sort};
            ranked.cure.removes = removes;
            found_[i].push_back(std::move(ranked));
        }
    }

    std::vector<std::vector<Cure>> take() {
        std::vector<std::vector<Cure>> cures(found_.size());
        for (std::size_t i = 0; i < found_.size(); ++i) {
            std::stable_sort(
                found_[i].begin(), found_[i].end(),
                [](const RankedCure& a, const RankedCure& b) { return a.rank() < b.rank(); });
            std::set<std::string> sorts;
            for (RankedCure& one : found_[i]) {
                if (cures[i].size() == most_cures) break;
                if (one.sort.empty() || sorts.insert(one.sort).second)
                    cures[i].push_back(std::move(one.cure));
            }
        }
        return cures;
    }

private:
    // One of several joints that do not fit may be mended alone: the sentence names its parts.
    static bool is_gone(const Finding& finding, const std::vector<Finding>& after) {
        return std::none_of(after.begin(), after.end(),
                            [&](const Finding& one) { return one.sentence == finding.sentence; });
    }

    // Nobody gives that much sky for sharpness.
    [[nodiscard]] bool halves_field(const Report& after) const {
        constexpr double about_half = 0.6;
        return after.magnification.true_field < about_half * report_.magnification.true_field;
    }

    [[nodiscard]] double magnification_change(const Report& after) const {
        return std::abs(
            std::log(after.magnification.magnification / report_.magnification.magnification));
    }

    [[nodiscard]] Cure cure_of(const CureIdea& idea,
                               const Report& after,
                               const std::vector<const Finding*>& bad) const {
        Cure cure{.what = idea.what,
                  .effect = effect_of_cure(report_, after),
                  .cost = idea.cost,
                  .reversibility = idea.reversibility,
                  .setup = idea.setup};
        const auto say = [&](const std::string& sentence) {
            cure.cost += (cure.cost.empty() ? "" : " ") + sentence;
        };
        for (const Finding* one : bad)
            say("Then: " + one->sentence);
        return cure;
    }

    const Report& report_;
    std::vector<std::vector<RankedCure>> found_;
};

}  // namespace

bool wants_cure(const Finding& finding) {
    if (finding.is_of_sharpness) return finding.severity <= Severity::poor;
    return finding.severity != Severity::good;
}

std::vector<std::vector<Cure>>
find_cures(const Setup& setup, const Report& report, const std::function<bool()>& is_given_up) {
    CureSearch search(report);
    if (std::any_of(report.findings.begin(), report.findings.end(), wants_cure)) {
        Setup chosen = setup;
        chosen.chosen = report.train.choice;
        CureIdeas ideas{chosen, report};
        add_focus_ideas(ideas);
        add_light_ideas(ideas);
        add_fit_ideas(ideas);
        add_sight_ideas(ideas);
        add_corrector_ideas(ideas);
        // Tried two at a time, weighed in their order.
        std::vector<std::optional<Result<Report>>> after(ideas.ideas.size());
        GivingUp giving_up(is_given_up);
        two_at_a_time(after.size(), [&](std::size_t i) {
            if (!giving_up.is_decided()) after[i] = make_trial(ideas.ideas[i].setup, trial_rays);
        });
        for (std::size_t i = 0; i < after.size() && after[i]; ++i)
            search.weigh(ideas.ideas[i], *after[i]);
    }
    return search.take();
}

void add_cures(const Setup& setup, Report& report) {
    auto cures = find_cures(setup, report);
    for (std::size_t i = 0; i < cures.size(); ++i)
        report.findings[i].cures = std::move(cures[i]);
    report.cures_are_sought = true;
}

}  // namespace beamfork
