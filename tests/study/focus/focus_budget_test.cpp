#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "reference/negative_lens.hpp"
#include "study/focus/focus_budget.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

FocusBudget solved(const Setup& setup) {
    auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    return *std::move(budget);
}

Train built(const Setup& setup, double drawtube) {
    auto train = build_train(setup, setup.chosen, Millimetres{drawtube});
    REQUIRE(train.has_value());
    return *std::move(train);
}

Part shifter_of_pair(double factor, double gain, double lens_offset) {
    Shifter shifter;
    shifter.stated_factor = factor;
    shifter.stated_gain = {gain};
    shifter.lens_offset = {lens_offset};
    return {"Shifter", shifter, {}};
}

// Back focus 116, adapter 1, prism diagonal 35, head 110: figures as their makers state them.
// Common practice, no source.
Setup worked_example(const std::vector<Part>& shifters) {
    PrismDiagonal diagonal;
    diagonal.stated_light_path = Millimetres{35};
    std::vector<Part> chain{{"Adapter", Spacer{Millimetres{1}, Millimetres{42}}, {}},
                            {"Diagonal", diagonal, {}}};
    chain.insert(chain.end(), shifters.begin(), shifters.end());
    Setup setup = plain_setup(chain);
    the<Refractor>(setup).back_focus = Millimetres{116};
    auto& head = the<SplitterHead>(setup);
    head.stated_light_path = Millimetres{110};
    head.nose_length = Millimetres{5};
    head.entry_air = Millimetres{30};  // room for a lens inside the nose
    head.seat_height = Millimetres{13};
    the<EyepiecePair>(setup).barrel_length = Millimetres{10};
    return setup;
}

}  // namespace

TEST_CASE("worked budget without a shifter: the setup is 30 mm short of focus") {
    const FocusBudget budget = solved(worked_example({}));
    CHECK(near(budget.wanted_drawtube.value, -30, rounding));
    CHECK(near(budget.shortfall.value, 30, rounding));
    CHECK_FALSE(budget.reaches);
    CHECK(budget.shortfall_is_inward);
    CHECK(budget.drawtube == Millimetres{});  // it stands as near as it can
    CHECK(budget.factor() == 1);
}

TEST_CASE("worked budget with a shifter that gives back 65 mm: 35 mm of travel are left inward") {
    // The lens of the pair (2.6x, 65 mm) works as stated 105.625 mm before the field stop: 4.375 mm inside the head.
    const FocusBudget budget = solved(worked_example({shifter_of_pair(2.6, 65, 110 - 105.625)}));
    CHECK(near(budget.wanted_drawtube.value, 35, rounding));
    CHECK(near(budget.margin_in.value, 35, rounding));
    CHECK(near(budget.margin_out.value, 80 - 35, rounding));
    CHECK(budget.reaches);
    CHECK(budget.shortfall == Millimetres{});
    CHECK(near(budget.factor(), 2.6, rounding));
}

TEST_CASE("worked budget with a shifter that gives back 35 mm: 5 mm of travel are left inward") {
    // The lens of the pair (1.7x, 35 mm) works as stated 85 mm before the field stop.
    const FocusBudget budget = solved(worked_example({shifter_of_pair(1.7, 35, 110 - 85)}));
    CHECK(near(budget.wanted_drawtube.value, 5, rounding));
    CHECK(near(budget.margin_in.value, 5, rounding));
    CHECK(budget.reaches);
    CHECK(near(budget.factor(), 1.7, rounding));
}

TEST_CASE("the waterfall of the worked budget tells each part's share in order") {
    const FocusBudget budget = solved(worked_example({shifter_of_pair(2.6, 65, 110 - 105.625)}));
    struct Row {
        BudgetEntry entry;
        double change;
        double left;
    };
    const std::vector<Row> expected{
        {BudgetEntry::available, 116, 116}, {BudgetEntry::spends, -1, 115},
        {BudgetEntry::spends, -35, 80},     {BudgetEntry::gives_back, 65, 145},
        {BudgetEntry::spends, -110, 35},    {BudgetEntry::left_over, 0, 35}};
    REQUIRE(budget.rows.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CAPTURE(budget.rows[i].label);
        CHECK(budget.rows[i].entry == expected[i].entry);
        CHECK(near(budget.rows[i].change, expected[i].change, rounding));
        CHECK(near(budget.rows[i].left, expected[i].left, rounding));
    }
    CHECK(budget.rows[2].part == 3);
    CHECK(budget.rows.back().label == "Drawtube out by");
    CHECK(solved(worked_example({})).rows.back().label == "Short by");
}

TEST_CASE(
    "a lens's factor and gain, and the back focus that is needed, follow from where it stands") {
    MirrorDiagonal diagonal;
    diagonal.entry_leg = diagonal.exit_leg = Millimetres{reference::diagonal_air / 2};
    const double head_path =
        reference::splitter_glass / reference::splitter_index + reference::splitter_air;
    const auto needed = [&](const std::vector<Part>& chain, std::vector<ShifterAtWork>& shifters) {
        Setup setup = plain_setup(chain);
        the<SplitterHead>(setup).stated_light_path = Millimetres{head_path};
        const FocusBudget budget = solved(setup);
        shifters = budget.shifters;
        return the<Refractor>(setup).back_focus.value - budget.wanted_drawtube.value;
    };
    const Part mirror{"Diagonal", diagonal, {}};
    const Part lens = bare_lens(-reference::moved_lens_focal_length, 0);
    std::vector<ShifterAtWork> shifters;
    CHECK(near(needed({mirror}, shifters), reference::needed_without_lens,
               1e-5));  // last printed digit
    CHECK(shifters.empty());
    const auto check = [&](const std::vector<Part>& chain, const reference::LensedBudget& row) {
        CHECK(near(needed(chain, shifters), row.needed, 1e-5));
        REQUIRE(shifters.size() == 1);
        CHECK(near(shifters[0].image_distance.value, row.image_distance, 1e-5));
        CHECK(near(shifters[0].factor, row.factor, 1e-5));
        CHECK(near(shifters[0].gain, row.gain, 1e-5));
    };
    check({mirror, lens}, reference::lens_at_nose);
    check({lens, mirror}, reference::lens_before_diagonal);
}

TEST_CASE("every waterfall ends at the drawtube's extension and adds up on the way") {
    for (const Setup& setup :
         {plain_setup(), worked_example({shifter_of_pair(2.6, 65, 0)}),
          wide_setup({{"Filter", FilterPlate{}, {}}, bare_lens(300, 2), bare_lens(-200, 2)})}) {
        Setup other = setup;
        the<Observer>(other).left = prescribed(-2);
        the<Observer>(other).right = prescribed(-5);
        the<Target>(other).distance = Metres{40};
        the<EyepiecePair>(other).field_stop_depth = Millimetres{6};
        for (const Setup& each : {setup, other}) {
            const FocusBudget budget = solved(each);
            Millimetres left;
            for (const BudgetRow& row : budget.rows) {
                left += row.change;
                CAPTURE(row.label);
                CHECK(near(row.left, left, rounding));
            }
            CHECK(near(left, budget.wanted_drawtube, rounding));
        }
    }
}

TEST_CASE(
    "with the drawtube where the budget wants it, each eye's image falls where that eye wants it") {
    Setup setup = wide_setup({bare_lens(-200, 2)});
    the<Observer>(setup).left = prescribed(-4);
    the<Observer>(setup).right = prescribed(-1);
    const FocusBudget budget = solved(setup);
    const Train train = built(setup, budget.wanted_drawtube.value);
    for (const Eye eye : both_eyes) {
        CHECK(near(image_behind_stop(train, eye), train.path(eye).wanted_image, rounding));
    }
}

TEST_CASE(
    "a millimetre of drawtube moves the image a millimetre, behind a lens by its factor squared") {
    const Setup straight = plain_setup();
    CHECK(near(image_behind_stop(built(straight, 10), Eye::left)
                   - image_behind_stop(built(straight, 11), Eye::left),
               1, rounding));
    const Setup shifted = wide_setup({bare_lens(-150, 2)});
    const FocusBudget budget = solved(shifted);
    const double step = 1e-4;
    const Millimetres moved =
        image_behind_stop(built(shifted, budget.wanted_drawtube.value - step), Eye::left)
        - image_behind_stop(built(shifted, budget.wanted_drawtube.value + step), Eye::left);
    const double factor = budget.factor();
    CHECK(near(moved.value / (2 * step), factor * factor,
               1e-5));  // longitudinal magnification; second order in the step
}

TEST_CASE("short-sighted eyes draw the tube in by their dioptres times f squared over a metre") {
    Setup setup = plain_setup();
    const double before = solved(setup).wanted_drawtube.value;
    the<Observer>(setup).left = the<Observer>(setup).right = prescribed(-4);
    // f = 25: 0.625 mm per dioptre (Smith, Modern Optical Engineering, 4th ed., p. 290).
    CHECK(near(solved(setup).wanted_drawtube.value, before - 4 * 0.625, rounding));
    the<Observer>(setup).spectacles = Spectacles::kept_on;
    CHECK(near(solved(setup).wanted_drawtube.value, before, rounding));
}

TEST_CASE("a near target brings the drawtube out by Newton's rule") {
    Setup setup = plain_setup();
    const double sky = solved(setup).wanted_drawtube.value;
    the<Target>(setup).distance = Metres{25};
    CHECK(near(solved(setup).wanted_drawtube.value, sky + 480.0 * 480 / (25000 - 480), rounding));
}

TEST_CASE(
    "focus beyond either end of the travel is short by what is missing, and an exact fit reaches") {
    Setup setup = plain_setup();
    the<SplitterHead>(setup).seat_travel = {0};  // which would take up a little
    const double needed =
        the<Refractor>(setup).back_focus.value - solved(setup).wanted_drawtube.value;
    const auto at = [&](double drawtube) {
        the<Refractor>(setup).back_focus = Millimetres{needed + drawtube};
        return solved(setup);
    };
    const FocusBudget far = at(80 + 12.5);
    CHECK_FALSE(far.reaches);
    CHECK_FALSE(far.shortfall_is_inward);
    CHECK(near(far.shortfall.value, 12.5, rounding));
    CHECK(far.drawtube.value == 80);
    CHECK(at(0).reaches);
    CHECK(at(80).reaches);
    CHECK_FALSE(at(-0.001).reaches);
    CHECK_FALSE(at(80.001).reaches);
    CHECK(near(at(30).margin_in.value, 30, rounding));
    CHECK(near(at(30).margin_out.value, 50, rounding));
}

TEST_CASE("what the seats have left takes up what the drawtube lacks, and no more") {
    Setup setup = plain_setup();
    the<SplitterHead>(setup).seat_travel = {3};
    const double needed =
        the<Refractor>(setup).back_focus.value - solved(setup).wanted_drawtube.value;
    const auto at = [&](double drawtube) {
        the<Refractor>(setup).back_focus = Millimetres{needed + drawtube};
        return solved(setup);
    };
    // Nothing but air and plates behind the drawtube: a mm of seat for a mm of drawtube.
    const FocusBudget hair = at(-0.1);
    CHECK(hair.reaches);
    CHECK(hair.shortfall == Millimetres{});
    CHECK(hair.drawtube == Millimetres{});
    CHECK(near(hair.margin_in.value, -0.1, rounding));
    CHECK(near(hair.seats_take_up.value, -0.1, rounding));  // both eyepieces in
    CHECK(at(-2.999).reaches);
    CHECK_FALSE(at(-3.001).reaches);
    CHECK(near(at(-3.001).shortfall.value, 3.001, rounding));
    CHECK(near(at(81).seats_take_up.value, 1, rounding));
    CHECK(at(0).seats_take_up == Millimetres{});
    // The image then falls on both stops.
    const FocusBudget budget = at(-2);
    const auto train = focused_train(setup, setup.chosen, budget);
    REQUIRE(train.has_value());
    for (const Eye eye : both_eyes)
        CHECK(near(image_behind_stop(*train, eye), train->path(eye).wanted_image, rounding));
    // Eyes that differ by 4 D ask 1.25 mm of each seat: 1.75 are left.
    the<Observer>(setup).left = prescribed(-2);
    the<Observer>(setup).right = prescribed(2);
    CHECK(at(-1.74).reaches);
    CHECK_FALSE(at(-1.76).reaches);
}

TEST_CASE("the drawtube serves the mean of unequal arms, the seats the rest") {
    // 17 mm less of N-BAK4, n_e = 1.57125 (catalogue): the arms differ by 17 / n = 10.82 mm.
    Setup setup = plain_setup();
    const double equal = solved(setup).wanted_drawtube.value;
    auto& head = the<SplitterHead>(setup);
    const auto glass = standard_catalogue().find(head.glass).value();
    const double n = refractive_index(glass, spectral_line::e).value();
    const auto shortened = [&](double by) {
        head.compensator = head.arm_offset - Millimetres{by};
        return solved(setup);
    };
    const FocusBudget apart = shortened(17);
    CHECK(near(abs(apart.arm_difference).value, 17 / n, rounding));
    // One arm keeps its length: the mean of both goes by half.
    CHECK(near(apart.wanted_drawtube.value, equal + 17 / n / 2, rounding));
    CHECK_FALSE(apart.reaches);
    CHECK(near(apart.seats_lack.value, 17 / n / 2 - 3, rounding));
    const FocusBudget close = shortened(1);
    CHECK(close.reaches);
    CHECK(close.seats_lack == Millimetres{});
    const auto train = focused_train(setup, setup.chosen, close);
    REQUIRE(train.has_value());
    for (const Eye eye : both_eyes) {
        CHECK(near(std::abs(train->path(eye).seat_shift), 1 / n / 2, rounding));
        CHECK(near(image_behind_stop(*train, eye), train->path(eye).wanted_image, rounding));
    }
    Millimetres left;
    for (const BudgetRow& row : close.rows)
        left += row.change;
    CHECK(near(left, close.wanted_drawtube, rounding));
}

TEST_CASE("where a moving mirror cannot go on, the drawtube takes the image up") {
    CassegrainMovingMirror mirrors;
    mirrors.back_focus = {160};
    mirrors.travel_up = mirrors.travel_down = {1};
    Setup setup = plain_setup();
    setup.parts.front().body = mirrors;
    auto& focuser = the<Focuser>(setup);
    focuser.travel = {30};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    the<EyepiecePair>(setup).field_stop_depth = {0};
    // By the two-mirror formula the image lies so far out with the mirror down; 110 mm of it are spent.
    const double farthest_in = mirrors.focus_at({-1}, {}).back_focus.value;
    REQUIRE(farthest_in - 110 > 5);
    const FocusBudget budget = solved(setup);
    CHECK(budget.reaches);
    CHECK(near(budget.drawtube.value, farthest_in - 110, rounding));
    CHECK(near(budget.primary->moved.value, -1, rounding));
    CHECK(near(budget.margin_out.value, 30 - budget.drawtube.value, rounding));
    CHECK(near(budget.margin_in.value, mirrors.focus_at({1}, {}).back_focus.value - 110, rounding));
    const auto train = focused_train(setup, setup.chosen, budget);
    REQUIRE(train.has_value());
    CHECK(near(image_behind_stop(*train, Eye::left), 0, 1e-8));  // through 1 / (f2 - p)
    // Held, it cannot; shorter than that, it stops 3 mm of seats too early.
    focuser.held_at = Millimetres{0};
    CHECK_FALSE(solved(setup).reaches);
    focuser.held_at.reset();
    focuser.travel = {farthest_in - 110 - 4};
    const FocusBudget far = solved(setup);
    CHECK_FALSE(far.reaches);
    CHECK(near(far.shortfall.value, 4, rounding));
}

TEST_CASE("a drawtube that is held stays where it is held, whatever focus wants") {
    Setup setup = plain_setup();
    const double wanted = solved(setup).wanted_drawtube.value;
    the<Focuser>(setup).held_at = Millimetres{60};
    const FocusBudget held = solved(setup);
    CHECK(held.is_held);
    CHECK(held.drawtube.value == 60);
    CHECK(near(held.wanted_drawtube.value, wanted, rounding));
}

TEST_CASE("arms of unequal glass differ by that glass over its index") {
    Setup setup = plain_setup();
    CHECK(near(solved(setup).arm_difference.value, 0, rounding));
    the<SplitterHead>(setup).compensator = Millimetres{30};
    const auto glass = standard_catalogue().find("N-BAK4").value();
    const double n = refractive_index(glass, spectral_line::e).value();
    CHECK(near(solved(setup).arm_difference.value, -7 / n,
               rounding));  // the left arm is 7 mm short of glass
}

TEST_CASE("a place before the field stop in air-equivalent millimetres lies deeper where the axis "
          "runs in glass") {
    const Setup setup = plain_setup();
    const Train train = built(setup, 0);
    const auto glass = standard_catalogue().find("N-BAK4").value();
    const double n = refractive_index(glass, spectral_line::e).value();
    for (const EyePath& path : train.paths) {
        const Pose& stop = path.world_from_field_stop;
        CHECK(glm::distance(point_near_stop(path, {12}), stop.point_out({0, 0, 12})) < rounding);
        CHECK(glm::distance(point_near_stop(path, {-20}), stop.point_out({0, 0, -20})) < rounding);
        // The seat is 30 mm behind the glass: 30 mm of air, then 10 mm of glass are 10/n more.
        CHECK(glm::distance(point_near_stop(path, {-30 - 10 / n}), stop.point_out({0, 0, -40}))
              < rounding);
    }
}

TEST_CASE("a setup that cannot be a train has no budget but an error") {
    Setup setup = plain_setup();
    setup.parts.erase(setup.parts.begin());
    CHECK_FALSE(focus_budget(with_valid_choice(setup), setup.chosen).has_value());
}
