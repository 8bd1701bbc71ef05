// Every train that a drawer allows, held to trains that are built and studied as setups.
#include <cmath>

#include "base/assets.hpp"
#include "document/drawer_file.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "plan/plan.hpp"
#include "plan/planned_setup.hpp"
#include "study/findings/report.hpp"
#include "study/fit/joints.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Drawer shipped_drawer() {
    const auto text = asset("assets/drawers/harrier-hill.drawer.toml");
    return read_drawer(std::string(text.value()), "harrier-hill").value().drawer;
}

// The shipped drawer with what the quick sum could get wrong: arms that differ and slide, unequal eyes, a lens that would
// stand in glass, a corrector, parts without a stated path.
Drawer awkward_drawer() {
    std::string text(asset("assets/drawers/harrier-hill.drawer.toml").value());
    text += R"(
[[observer]]
name = "Unequal eyes"
pupil_distance_mm = 68
left_dioptres = -4
right_dioptres = 1.5

[[part]]
kind = "splitter_head"
name = "Sliding head with a short block"
mechanism = "sliding"
compensator_mm = 20
stated_light_path_mm = 118
front_fitting = "M42x0.75 female"
rear_fitting = "1.25 in holder"

[[part]]
kind = "splitter_head"
name = "Head of faces alone"
front_fitting = "1.25 in barrel"
rear_fitting = "1.25 in holder"

[[part]]
kind = "shifter"
name = "Deep lens"
given_by = "focal length"
focal_length_mm = -90
lens_offset_mm = 30
length_mm = 3
front_fitting = "M42x0.75 female"
rear_fitting = "M42x0.75 male"

[[part]]
kind = "coma_corrector"
name = "Corrector"
front_fitting = "2 in barrel"
rear_fitting = "2 in holder"

[[part]]
kind = "shifter"
name = "Relay lens"
given_by = "focal length"
focal_length_mm = 40
lens_offset_mm = -20
length_mm = 0
)";
    return read_drawer(text, "awkward").value().drawer;
}

// The quick numbers of that train against those of the setup that it is.
void check_as_setup(const Plan& plan, const PlannedTrain& train) {
    for (std::size_t use = 0; use < plan.parts.uses.size(); ++use) {
        const auto quick = plan.focus(train, use);
        if (!quick) continue;
        const Setup setup = planned_document(plan, train, use).setup;
        const auto budget = solved_focus(setup, setup.chosen);
        CAPTURE(setup.title);
        CAPTURE(use);
        if (!budget) FAIL(to_text(budget.error()));
        // Lengths near a pole of a lens's image grow, and rounding with them.
        const double within = rounding * (1 + std::abs(quick->margin_in));
        CHECK(quick->reaches == budget->reaches);
        CHECK(((train.reached >> use & 1U) != 0) == budget->reaches);
        CHECK(near(quick->margin_in, budget->margin_in.value, within));
        CHECK(near(quick->margin_out, budget->margin_out.value, within));
        CHECK(near(quick->drawtube, budget->drawtube.value, within));
        CHECK(near(quick->primary_moved.value, budget->primary_moved().value, within));
        CHECK(near(quick->factor, budget->factor(), rounding * (1 + std::abs(quick->factor))));
        CHECK(plan.chain_of(train).lens_in_glass == budget->lens_in_glass);
        const auto& head = part_as<SplitterHead>(setup, setup.chosen.eyepiece - 1);
        const auto& observer = part_as<Observer>(setup, setup.chosen.observer);
        CHECK(plan.head_of(train).fits_eyes[use] == head.reaches(observer.pupil_distance));
    }
}

}  // namespace

TEST_CASE("the plain sum gives each train the focus that it has as a setup, for every observer and "
          "target") {
    for (const Drawer& drawer : {shipped_drawer(), awkward_drawer()}) {
        const auto plan = plan_trains(drawer, {.observers = {}, .with_wanted = true});
        REQUIRE(plan.has_value());
        REQUIRE(plan->trains.size() > 100);
        // A number that shares no factor with the count of pairs: every kind of train comes by.
        const std::size_t stride = 1 + plan->trains.size() / 400 * 2;
        for (std::size_t i = 0; i < plan->trains.size(); i += stride)
            check_as_setup(*plan, plan->trains[i]);
    }
}

TEST_CASE("no train is told that a joint forbids, and none twice") {
    const auto plan = plan_trains(awkward_drawer(), {.observers = {}, .with_wanted = true});
    REQUIRE(plan.has_value());
    std::set<std::vector<std::size_t>> known;
    for (const PlannedTrain& train : plan->trains) {
        CHECK(known.insert(plan->parts_of(train)).second);
        if (train.place != 0) continue;  // a head holds its pairs alike
        const Setup setup = planned_document(*plan, train, 0).setup;
        int unstated = 0;
        for (const Joint& joint : joints(setup, setup.chosen)) {
            CAPTURE(setup.title);
            CHECK(joint.fits());
            if (!joint.is_claimed() && joint.behind != setup.chosen.eyepiece) ++unstated;
        }
        CHECK(plan->chain_of(train).unstated_joints == unstated);
    }
}

TEST_CASE("a wanted part stands in no train until it is asked for, and then in all that are told "
          "with it") {
    const Drawer drawer = shipped_drawer();
    const auto owned = plan_trains(drawer);
    REQUIRE(owned.has_value());
    for (std::size_t part = 0; part < drawer.parts.size(); ++part) {
        if (!drawer.parts[part].wanted) continue;
        for (const PlannedTrain& train : owned->trains)
            CHECK_FALSE(owned->has_part(train, part));
        const auto with_it = plan_with(drawer, {}, {part});
        REQUIRE(with_it.has_value());
        CHECK_FALSE(with_it->trains.empty());
        for (const PlannedTrain& train : with_it->trains)
            CHECK(with_it->has_part(train, part));
    }
}

TEST_CASE("a lower focuser gives its light path back, millimetre by millimetre") {
    const auto plan = plan_trains(shipped_drawer(), {.observers = {}, .with_wanted = true});
    REQUIRE(plan.has_value());
    const Tube* high = nullptr;
    const Tube* low = nullptr;
    for (const Tube& tube : plan->parts.tubes) {
        if (plan->part(tube.focuser).name == "Newtonian's focuser") high = &tube;
        if (plan->part(tube.focuser).name == "Low focuser") low = &tube;
    }
    REQUIRE(high != nullptr);
    REQUIRE(low != nullptr);
    for (std::size_t use = 0; use < plan->parts.uses.size(); ++use)
        CHECK(near(*low->back_focus[use] - *high->back_focus[use], 35, rounding));
}

TEST_CASE("planning asks for observers by name, and says which there are") {
    const auto found = plan_trains(shipped_drawer(), {.observers = {"Youngster"}});
    REQUIRE(found.has_value());
    CHECK(found->parts.uses.size() == 2);
    const auto mistyped = plan_trains(shipped_drawer(), {.observers = {"Yungster"}});
    REQUIRE_FALSE(mistyped.has_value());
    CHECK(mistyped.error().what.find("did you mean 'Youngster'") != std::string::npos);
}
