#include <cmath>
#include <set>

#include "base/assets.hpp"
#include "document/drawer_file.hpp"
#include "plan/best_trains.hpp"
#include "plan/planned_setup.hpp"
#include "plan/purchases.hpp"
#include "plan/purposes.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Drawer club_drawer() {
    const auto text = asset("assets/drawers/harrier-hill.drawer.toml");
    return read_drawer(std::string(text.value()), "harrier-hill").value().drawer;
}

const Plan& club_plan() {
    static const Plan plan = plan_trains(club_drawer()).value();
    return plan;
}

// It reaches as a setup of its own, and what is to be bought stands in it.
void check_bought(const Purchase& purchase, const TriedTrain& train) {
    const Setup& setup = train.document.setup;
    CAPTURE(setup.title);
    for (const Offer& offer : purchase.parts) {
        CHECK(std::any_of(setup.parts.begin(), setup.parts.end(),
                          [&](const Part& part) { return part.body == offer.part.part.body; }));
    }
    const auto report = make_trial(setup, {.form = LightForm::few_rays});
    REQUIRE(report.has_value());
    CHECK(report->budget.reaches);
}

bool is_better_somewhere(const Candidate& one, const Candidate& other) {
    return one.score > other.score || one.margin > other.margin || one.pieces < other.pieces
           || one.mass < other.mass || one.looks_down > other.looks_down
           || one.unstated_joints < other.unstated_joints;
}

}  // namespace

TEST_CASE("what is hidden is worse than a kept train in every respect, and of the kept none is") {
    Random random(16);
    for (int round = 0; round < 50; ++round) {
        std::vector<Candidate> all(60);
        for (std::size_t i = 0; i < all.size(); ++i) {
            all[i].train = i;
            all[i].score = static_cast<double>(random.below(6));
            all[i].margin = static_cast<double>(random.below(4));
            all[i].pieces = random.below(4);
            all[i].looks_down = random.chance(0.5);
            all[i].mass = 100 * static_cast<double>(random.below(4));
        }
        const auto kept = not_outdone(all);
        for (const Candidate& one : all) {
            const bool is_kept = std::any_of(kept.begin(), kept.end(), [&](const Candidate& other) {
                return other.train == one.train;
            });
            const bool is_best_somewhere =
                std::all_of(kept.begin(), kept.end(), [&](const Candidate& other) {
                    return other.train == one.train || is_better_somewhere(one, other);
                });
            CHECK(is_kept == is_best_somewhere);
        }
    }
}

TEST_CASE("what is seen through a candidate is what its setup's report says") {
    for (const Purpose& purpose : purposes()) {
        CAPTURE(std::string(purpose.key));
        const auto found = candidates(club_plan(), purpose);
        REQUIRE_FALSE(found.empty());
        for (std::size_t i = 0; i < found.size(); i += 1 + found.size() / 20) {
            const Candidate& one = found[i];
            const PlannedTrain& train = club_plan().trains[one.train];
            const Setup setup = planned_document(club_plan(), train, one.use).setup;
            CAPTURE(setup.title);
            const auto budget = solved_focus(setup, setup.chosen);
            REQUIRE(budget.has_value());
            const Magnification seen = magnification(setup, setup.chosen, *budget);
            CHECK(near(one.sight.magnification, seen.magnification, rounding * seen.magnification));
            CHECK(near(one.sight.true_field.value, seen.true_field.value, rounding));
            CHECK(near(one.sight.exit_pupil.value, seen.exit_pupil.value, rounding));
        }
    }
}

TEST_CASE(
    "the Moon at a glance shows the whole Moon, and planets are not magnified beyond 250 times") {
    const auto best = best_trains(club_plan(), purposes());
    for (const BestForPurpose& one : best) {
        CAPTURE(std::string(one.purpose.key));
        REQUIRE_FALSE(one.trains.empty());
        CHECK(one.outdone < one.serving);
        double before = one.trains.front().score;
        for (const TriedTrain& train : one.trains) {
            CHECK(train.score <= before);
            before = train.score;
            if (one.purpose.key == "moon") CHECK(train.result(ResultId::true_field) >= 0.6);
            if (one.purpose.key == "planets") CHECK(train.result(ResultId::magnification) < 300);
            CHECK(train.result(ResultId::failures) == 0);
            const auto report = make_trial(train.document.setup, {.form = LightForm::few_rays});
            REQUIRE(report.has_value());
            CHECK(report->budget.reaches);
        }
    }
}

TEST_CASE("an unknown purpose is told with the nearest one") {
    CHECK(find_purpose("planets").has_value());
    const auto wrong = find_purpose("planet");
    REQUIRE_FALSE(wrong.has_value());
    CHECK(wrong.error().what.find("did you mean 'planets'") != std::string::npos);
}

TEST_CASE(
    "what is to be bought serves a purpose better than anything owned, as a setup of its own") {
    const auto best = best_trains(club_plan(), purposes());
    const auto bought = purchases(club_plan(), best, {});
    REQUIRE(bought.has_value());
    REQUIRE_FALSE(bought->empty());
    for (const Purchase& one : *bought) {
        CAPTURE(one.parts.front().part.part.name);
        REQUIRE_FALSE((one.improvements.empty() && one.telescopes.empty()));
        for (const OpenedTelescope& opened : one.telescopes)
            check_bought(one, opened.with_it);
        for (const Improvement& better : one.improvements) {
            if (better.before) CHECK(better.with_it.score > better.before->score);
            check_bought(one, better.with_it);
        }
    }
}

TEST_CASE(
    "a Newtonian that no single part brings to focus is opened by a lower focuser and a shifter") {
    // A fast Newtonian with 25 mm of back focus and a head of 110 mm, as the fourth demo: 86 mm short.
    Drawer drawer = club_drawer();
    std::erase_if(drawer.parts, [](const DrawerPart& held) {
        const std::string& kind = kind_of(held.part.body).key;
        return kind == "shifter" || kind == "refractor" || kind == "cassegrain_moving_mirror"
               || held.sits_on == "Club refractor" || held.sits_on == "Club Cassegrain"
               || held.wanted || held.part.name == "Wide head";
    });
    const Plan plan = plan_trains(drawer).value();
    REQUIRE_FALSE(plan.trains.empty());
    const auto sky = plan.sky_uses();
    for (const PlannedTrain& train : plan.trains)
        CHECK((train.reached & sky) == 0);
    const auto bought = purchases(plan, best_trains(plan, purposes()), {});
    REQUIRE(bought.has_value());
    REQUIRE_FALSE(bought->empty());
    for (const Purchase& one : *bought) {
        REQUIRE(one.parts.size() == 2);
        CAPTURE(one.parts[0].part.part.name);
        CAPTURE(one.parts[1].part.part.name);
        std::set<std::string> kinds;
        for (const Offer& offer : one.parts)
            kinds.insert(kind_of(offer.part.part.body).key);
        CHECK(kinds == std::set<std::string>{"focuser", "shifter"});
        REQUIRE(one.telescopes.size() == 1);
        CHECK(one.telescopes[0].name == "Club Newtonian");
        check_bought(one, one.telescopes[0].with_it);
        CHECK(one.newly_reaching > 0);
    }
}
