#include "plan/purposes.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <map>

#include "base/text.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "plan/planned_setup.hpp"
#include "study/two_eyes/orientation.hpp"
#include "study/ways_to_focus/ways_to_focus.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

// Field times the brightness of what is extended, by the diameter of the beam that enters the eye.
std::optional<double> bright_field(const Sight& sight) {
    return sight.true_field.value * std::min(1.0, sight.exit_pupil / sight.eye_pupil);
}

// An exit pupil of 0.8 mm, but no more than 250 times: the air seldom bears more.
std::optional<double> power_for_planets(const Sight& sight) {
    constexpr Millimetres wanted_pupil{0.8};
    constexpr double most = 250;
    const double wanted = std::min(sight.aperture / wanted_pupil, most);
    return std::min(sight.magnification / wanted, wanted / sight.magnification);
}

// The Moon is 0.52 degrees wide on average (mean apparent diameter 31.1 arcminutes; from memory); a little sky about it.
std::optional<double> power_for_the_moon(const Sight& sight) {
    constexpr Degrees wanted{0.6};
    if (sight.true_field < wanted) return std::nullopt;
    return sight.magnification;
}

// By day the eye's pupil is about 2.5 mm wide; an image that is turned or mirrored is worth a quarter.
std::optional<double> field_by_day(const Sight& sight) {
    constexpr Millimetres eye_by_day{2.5};
    constexpr double turned = 0.25;
    return sight.true_field.value * std::min(1.0, sight.exit_pupil / eye_by_day)
           * (sight.is_erect ? 1 : turned);
}

// Easy to look through: eye relief, wide beams, a field in which things are found, and little to refocus between visitors.
std::optional<double> ease_for_visitors(const Sight& sight) {
    constexpr Millimetres enough_relief{20};
    constexpr Millimetres easy_pupil{2};
    constexpr Millimetres much_refocus{20};
    constexpr Degrees easy_field{1};
    const double relief = std::min(1.0, sight.eye_relief / enough_relief);
    const double pupil = std::min(1.0, sight.exit_pupil / easy_pupil);
    const double stays = 1 - std::min(0.9, sight.refocus / much_refocus);
    const double found = std::min(1.0, sight.true_field / easy_field);
    return relief * pupil * stays * found * sight.apparent_field.value;
}

constexpr std::array all_purposes{
    Purpose{"widest_bright_field", "Widest bright field",
            "the most sky at once, by beams as wide as the eye's pupil", false, bright_field,
            ResultId::edge_light},
    Purpose{"planets", "Planets", "an exit pupil of about 0.8 mm, at most 250 times, and sharp",
            false, power_for_planets, ResultId::sharpness, 100},
    Purpose{"moon", "The Moon at a glance", "the most power at which the whole Moon is seen", false,
            power_for_the_moon, ResultId::edge_light},
    Purpose{"daytime", "Daytime", "near targets in focus, an upright image, much of it at once",
            true, field_by_day, ResultId::edge_light},
    Purpose{"visitors", "A queue of visitors",
            "eye relief, wide beams, a field in which things are found, little to refocus", false,
            ease_for_visitors, ResultId::edge_light},
};

// How the image stands behind each telescope, diagonal and head, traced once.
class Erectness {
public:
    explicit Erectness(const Plan& plan) : plan_(plan) {}

    bool of(const PlannedTrain& train, std::size_t use) {
        std::vector<std::size_t> key{plan_.tube_of(train).telescope, plan_.head_of(train).part};
        for (const std::size_t one : plan_.chain_of(train).parts) {
            if (plan_.parts.chain[one].turns_light) key.push_back(plan_.parts.chain[one].part);
        }
        const auto known = known_.find(key);
        if (known != known_.end()) return known->second;
        const Setup setup = planned_document(plan_, train, use).setup;
        const auto built = build_train(setup, setup.chosen, Millimetres{0});
        const bool erect = built && beamfork::is_erect(orientation(*built)[0]);
        known_.emplace(std::move(key), erect);
        return erect;
    }

private:
    const Plan& plan_;
    std::map<std::vector<std::size_t>, bool> known_;
};

// Finds the candidates of one purpose among the trains.
class CandidateSearch {
public:
    CandidateSearch(const Plan& plan, const Purpose& purpose)
        : plan_(plan),
          purpose_(purpose),
          asked_(purpose.is_near ? plan.near_uses() : plan.sky_uses()),
          first_(static_cast<std::size_t>(std::countr_zero(asked_))),
          erectness_(plan) {
        for (const Sighting& use : plan.parts.uses) {
            const auto& observer = plan.part(use.observer).body.get<Observer>();
            eye_pupil_ = std::min(eye_pupil_, observer.eye_pupil);
        }
    }

    [[nodiscard]] bool asks_for_something() const { return asked_ != 0; }

    std::optional<Candidate> candidate(std::size_t index) {
        const PlannedTrain& train = plan_.trains[index];
        const Chain& chain = plan_.chain_of(train);
        if ((train.reached & asked_) != asked_ || chain.lens_in_glass || !fits_all(train))
            return std::nullopt;
        Candidate found{.train = index, .use = first_};
        found.margin = thin_margin.value;
        look_through(found, train);
        const auto score = purpose_.score(found.sight);
        if (!score || !(*score > 0)) return std::nullopt;
        constexpr double straight_through = 0.75;
        found.looks_down = looks_down(train);
        found.score = *score * (found.looks_down || purpose_.is_near ? 1 : straight_through);
        found.pieces = chain.parts.size();
        found.mass = chain.mass + plan_.pair_of(train).mass;
        found.unstated_joints = chain.unstated_joints;
        return found;
    }

private:
    [[nodiscard]] bool is_asked(std::size_t use) const { return (asked_ >> use & 1U) != 0; }

    [[nodiscard]] bool fits_all(const PlannedTrain& train) const {
        const auto& fits = plan_.head_of(train).fits_eyes;
        for (std::size_t use = 0; use < fits.size(); ++use) {
            if (is_asked(use) && !fits[use]) return false;
        }
        return true;
    }

    // A Newtonian's focuser stands aside.
    [[nodiscard]] bool looks_down(const PlannedTrain& train) const {
        const auto& chain = plan_.chain_of(train).parts;
        return plan_.part(plan_.tube_of(train).telescope).body.is<Newtonian>()
               || std::any_of(chain.begin(), chain.end(),
                              [&](std::size_t one) { return plan_.parts.chain[one].turns_light; });
    }

    void look_through(Candidate& into, const PlannedTrain& train) {
        Sight& sight = into.sight;
        double innermost = std::numeric_limits<double>::infinity();
        double outermost = -innermost;
        QuickFocus first;
        for (std::size_t use = 0; use < plan_.parts.uses.size(); ++use) {
            if (!is_asked(use)) continue;
            const QuickFocus focus = *plan_.focus(train, use);
            if (use == first_) first = focus;
            into.margin = std::min(into.margin, focus.margin());
            innermost = std::min(innermost, focus.drawtube + focus.primary_moved.value);
            outermost = std::max(outermost, focus.drawtube + focus.primary_moved.value);
        }
        const Tube& tube = plan_.tube_of(train);
        const TelescopeFacts facts =
            telescope_of(tube.alone, first.primary_moved, tube.distance[first_]);
        const auto& pair = plan_.part(plan_.pair_of(train).part).body.get<EyepiecePair>();
        const Millimetres focal_length = facts.working_focal_length * std::abs(first.factor);
        sight.aperture = facts.aperture;
        sight.magnification = focal_length / pair.focal_length;
        sight.exit_pupil = facts.aperture / sight.magnification;
        sight.true_field = to_degrees(Radians{2 * std::atan(pair.field_stop / (2 * focal_length))});
        sight.eye_pupil = eye_pupil_;
        sight.eye_relief = pair.eye_relief;
        sight.apparent_field = pair.apparent_field;
        sight.refocus = Millimetres{outermost - innermost};
        sight.is_erect = purpose_.is_near && erectness_.of(train, first_);
    }

    const Plan& plan_;
    const Purpose& purpose_;
    std::uint64_t asked_;
    std::size_t first_;
    Millimetres eye_pupil_{std::numeric_limits<double>::infinity()};
    Erectness erectness_;
};

// As good in every respect.
bool is_no_better(const Candidate& one, const Candidate& other) {
    return one.score <= other.score && one.margin <= other.margin && one.pieces >= other.pieces
           && one.mass >= other.mass && one.looks_down <= other.looks_down
           && one.unstated_joints >= other.unstated_joints;
}

}  // namespace

std::span<const Purpose> purposes() { return all_purposes; }

Result<Purpose> find_purpose(std::string_view key) {
    std::vector<std::string> known;
    for (const Purpose& purpose : all_purposes) {
        if (purpose.key == key) return purpose;
        known.emplace_back(purpose.key);
    }
    return fail(ErrorCode::bad_input,
                fmt::format("no purpose is called '{}'; expected one of: {}{}", key,
                            fmt::join(known, ", "), did_you_mean(key, known)));
}

std::vector<Candidate> candidates(const Plan& plan, const Purpose& purpose) {
    CandidateSearch search(plan, purpose);
    std::vector<Candidate> found;
    if (!search.asks_for_something()) return found;
    for (std::size_t i = 0; i < plan.trains.size(); ++i) {
        if (auto one = search.candidate(i)) found.push_back(*one);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Candidate& a, const Candidate& b) { return a.score > b.score; });
    return found;
}

std::vector<Candidate> not_outdone(const std::vector<Candidate>& candidates) {
    std::vector<Candidate> best;
    for (const Candidate& one : candidates) {
        const bool is_outdone = std::any_of(best.begin(), best.end(), [&](const Candidate& other) {
            return is_no_better(one, other);
        });
        if (is_outdone) continue;
        std::erase_if(best, [&](const Candidate& other) { return is_no_better(other, one); });
        best.push_back(one);
    }
    return best;
}

}  // namespace beamfork
