#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "study/findings/report.hpp"
#include "study/focus/reach_table.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

ReachTable table_of(const Setup& setup) {
    auto table = reach_table(setup, setup.chosen);
    REQUIRE(table.has_value());
    return *std::move(table);
}

Part pair_of(const char* name, double focal_length, double stop_depth) {
    EyepiecePair pair;
    pair.focal_length = {focal_length};
    pair.field_stop_depth = {stop_depth};
    return {name, pair, {}};
}

// Back focus 150 behind a stated path of 110: a plain pair stands 40 mm out, by subtraction.
Setup forty_out() {
    Setup setup = plain_setup();
    the<Refractor>(setup).back_focus = {150};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    the<EyepiecePair>(setup).field_stop_depth = {0};
    return setup;
}

void add_behind(Setup& setup, std::size_t index, Part part) {
    setup.parts.insert(setup.parts.begin() + static_cast<std::ptrdiff_t>(index) + 1,
                       std::move(part));
    setup = with_valid_choice(std::move(setup));
}

}  // namespace

TEST_CASE(
    "a pair whose field stop lies 6 mm deeper in its barrel wants the drawtube 6 mm farther out") {
    Setup setup = forty_out();
    add_behind(setup, index_of<EyepiecePair>(setup), pair_of("Deep", 25, 6));
    const ReachTable table = table_of(setup);
    REQUIRE(table.entries.size() == 2);
    CHECK(near(table.entries[0].drawtube, 40, rounding));
    CHECK(near(table.entries[0].refocus, 0, rounding));
    CHECK(table.entries[0].is_parfocal);
    CHECK(near(table.entries[1].drawtube, 46, rounding));
    CHECK(near(table.entries[1].refocus, 6, rounding));
    CHECK_FALSE(table.entries[1].is_parfocal);
}

TEST_CASE("held against another pair the table counts refocus from that one") {
    Setup setup = forty_out();
    add_behind(setup, index_of<EyepiecePair>(setup), pair_of("Far out", 25, 50));
    const ReachTable table = table_of(setup);
    const ReachTable other = held_against(table, table.entries[1].choice.eyepiece);
    CHECK(near(table.entries[0].refocus, 0, rounding));
    CHECK(near(abs(table.entries[1].refocus), 50, rounding));  // the difference in depth
    CHECK(near(other.entries[0].refocus, -table.entries[1].refocus, rounding));
    CHECK(near(other.entries[1].refocus, 0, rounding));
    CHECK(other.reference_eyepiece == table.entries[1].choice.eyepiece);
}

TEST_CASE("pairs that differ by less than the quarter-wave depth of focus count as parfocal") {
    Setup setup = forty_out();
    the<Refractor>(setup).aperture = {100};
    the<Refractor>(setup).focal_length = {700};
    add_behind(setup, index_of<EyepiecePair>(setup), pair_of("Like it", 25, 0.05));
    add_behind(setup, index_of<EyepiecePair>(setup) + 1, pair_of("Unlike it", 25, 0.06));
    const ReachTable table = table_of(setup);
    // 2 lambda N^2 = 2 * 0.546074 um * 49 (derived: defocus z gives z / (8 N^2) of path difference).
    CHECK(near(table.depth_of_focus, 0.0535153, 1e-6));
    CHECK(table.entries[1].is_parfocal);
    CHECK_FALSE(table.entries[2].is_parfocal);
}

TEST_CASE("behind an M times shifter a seat's millimetre is M^-2 mm of drawtube to first order") {
    // Longitudinal magnification is the square of the lateral one (E. Hecht, Optics, 5th ed., eq. 5.27, from memory).
    Setup setup = plain_setup({bare_lens(-80, 4)});
    the<Refractor>(setup).back_focus = {150};
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE(train.has_value());
    const double seat = 0.01;
    const DrawtubeRange range = seat_range(*train, Eye::left, {seat});
    const double M = budget->factor();
    REQUIRE(M > 1.5);
    // The next term is of relative size seat / distance.
    CHECK(near((range.high - range.low).value / (2 * seat), 1 / (M * M), 1e-4));
}

TEST_CASE(
    "seats of 3 mm serve a short-sighted eye at the drawtube of a normal one, and no farther") {
    Setup setup = forty_out();
    the<SplitterHead>(setup).seat_travel = {3};
    Observer guest;
    guest.left = prescribed(-4);
    guest.right = prescribed(-4);
    add_behind(setup, index_of<Observer>(setup), {"Guest", guest, {}});
    const ReachTable table = table_of(setup);
    REQUIRE(table.entries.size() == 2);
    // f^2 / 1000 per dioptre (W. J. Smith, Modern Optical Engineering, 4th ed., p. 290): 2.5 mm for 25 mm and -4 D.
    CHECK(near(table.entries[1].drawtube, 40 - 2.5, rounding));
    CHECK(near(table.entries[0].served.low, 37, rounding));
    CHECK(near(table.entries[0].served.high, 43, rounding));
    CHECK(near(table.entries[1].served.low, 34.5, rounding));
    CHECK(near(table.entries[1].served.high, 40.5, rounding));
    CHECK_FALSE(table.conflict.has_value());
    CHECK(near(table.common.low, 37, rounding));
    CHECK(near(table.common.high, 40.5, rounding));
}

TEST_CASE("stiff seats serve two different observers at no one position, and the table says who") {
    Setup setup = forty_out();
    the<SplitterHead>(setup).seat_travel = {1};
    Observer guest;
    guest.left = prescribed(-4);
    guest.right = prescribed(-4);
    add_behind(setup, index_of<Observer>(setup), {"Guest", guest, {}});
    const ReachTable table = table_of(setup);
    REQUIRE(table.conflict.has_value());
    CHECK(table.conflict->innermost == 1);  // 36.5 to 38.5 against 39 to 41
    CHECK(table.conflict->outermost == 0);
    CHECK(near(table.conflict->gap, 0.5, rounding));
}

TEST_CASE("unequal eyes share the difference between the seats, in dioptres and in mm") {
    Setup setup = forty_out();
    Observer& observer = the<Observer>(setup);
    observer.left = prescribed(-3);
    observer.right = prescribed(1);
    the<EyepiecePair>(setup).focal_length = {20};  // 0.4 mm per dioptre
    the<SplitterHead>(setup).seat_travel = {0.7};
    const ReachTable table = table_of(setup);
    const ReachEntry& entry = table.entries.front();
    CHECK(near(entry.drawtube, 40 - 0.4, rounding));  // the mean eye has -1 D
    CHECK(near(entry.seats[0].dioptres.value, -2, rounding));
    CHECK(near(entry.seats[1].dioptres.value, 2, rounding));
    CHECK(near(entry.seats[0].shift, -0.8, rounding));  // short-sighted: eyepiece inward
    CHECK(near(entry.seats[1].shift, 0.8, rounding));
    CHECK_FALSE(entry.seats[0].is_in_travel);
    REQUIRE(table.conflict.has_value());
    CHECK(table.conflict->innermost == table.conflict->outermost);
    CHECK(near(table.conflict->gap, 0.2, rounding));  // 1.6 mm apart, 1.4 mm of travel between them
}

TEST_CASE("a near target focuses farther out by F^2 / (u - F), for every eyepiece alike") {
    Setup setup = forty_out();
    const double F = the<Refractor>(setup).focal_length.value;
    Target clock;
    clock.distance = Metres{50};
    add_behind(setup, index_of<Target>(setup), {"Clock", clock, {}});
    const ReachTable table = table_of(setup);
    REQUIRE(table.entries.size() == 2);
    // Newton's form of the lens equation.
    CHECK(
        near(table.entries[1].drawtube - table.entries[0].drawtube, F * F / (50000 - F), rounding));
}

TEST_CASE(
    "a drawtube put anywhere in the served range focuses both eyes with seats in their travel") {
    // Independent of the inversion: the image is followed forward through the train.
    Setup setup = plain_setup({bare_lens(-90, 5)});
    the<Refractor>(setup).back_focus = {150};
    the<Focuser>(setup).travel = {200};
    the<Observer>(setup).left = prescribed(-1);
    const ReachTable table = table_of(setup);
    const DrawtubeRange served = table.entries.front().served;
    REQUIRE_FALSE(served.is_empty());
    const double travel = the<SplitterHead>(setup).seat_travel.value;
    for (const double share : {0.0, 0.5, 1.0}) {
        const Millimetres drawtube = served.low + share * (served.high - served.low);
        const auto train = build_train(setup, setup.chosen, drawtube);
        REQUIRE(train.has_value());
        for (const Eye eye : both_eyes) {
            const EyePath& path = train->path(eye);
            const double seat =
                path.seat_shift + image_behind_stop(*train, eye).value - path.wanted_image;
            CHECK(std::abs(seat) <= travel + rounding);
        }
    }
}

TEST_CASE("findings tell who is left out and what changing eyepieces costs") {
    Setup setup = forty_out();
    add_behind(setup, index_of<EyepiecePair>(setup), pair_of("Far out", 25, 50));
    const auto report = make_report(setup, setup.chosen, ClippingEffort{64});
    REQUIRE(report.has_value());
    const auto finding = [&](const std::string& id) -> const Finding* {
        for (const Finding& one : report->findings)
            if (one.id == id) return &one;
        return nullptr;
    };
    REQUIRE(finding("reach_incomplete") != nullptr);
    CHECK(finding("reach_incomplete")->sentence.find("10.0 mm too far out") != std::string::npos);
    REQUIRE(finding("not_parfocal") != nullptr);
    CHECK(finding("not_parfocal")->sentence.find("50.0 mm of drawtube out") != std::string::npos);
    CHECK(finding("one_position_serves_all") == nullptr);
}
