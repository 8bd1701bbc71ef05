// Fit against the law of the lever and plane geometry, on bodies whose middles are known by hand.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Report report_of(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, {64});
    REQUIRE(report.has_value());
    return *std::move(report);
}

// A ring that weighs 1 kg, 100 mm long, right behind the drawtube; nothing else has a stated mass.
Setup with_weight(double turned_deg) {
    Spacer weight;
    weight.length = {100};
    weight.mount.mass = Grams{1000};
    std::vector<Part> chain{{"Weight", weight, {}}};
    if (turned_deg != 0) {
        MirrorDiagonal diagonal;
        diagonal.turned = {turned_deg};
        chain.insert(chain.begin(), Part{"Diagonal", diagonal, {}});
    }
    Setup setup = wide_setup(chain);
    the<Focuser>(setup).held_at = Millimetres{30};
    return setup;
}

}  // namespace

TEST_CASE("a weight behind the drawtube bends it with mass times gravity times lever") {
    const Report report = report_of(with_weight(0));
    const Load& load = report.fit.load;
    CHECK(load.mass == Grams{1000});
    CHECK(near(load.lever, 30 + 50, rounding));  // out by 30 mm, and to the ring's middle
    CHECK(near(load.sideways, 0, rounding));
    // 1 kg x 9.80665 m/s2 x 0.08 m, by hand.
    CHECK(near(load.bending, 0.784532, 1e-9));
    CHECK(near(load.twisting, 0, rounding));
}

TEST_CASE("behind a diagonal that looks up the weight adds no lever, leaning aside it twists") {
    const MirrorDiagonal diagonal;
    const double leg = diagonal.entry_leg.value;
    const double out = diagonal.exit_leg.value + 50;
    for (const double turned : {1e-9, 40.0, 90.0, -90.0}) {
        CAPTURE(turned);
        const Load load = report_of(with_weight(turned)).fit.load;
        CHECK(near(load.lever, 30 + leg, 1e-6));
        // Looking up it stands above the axis; positive turns lean to the left, which is -x.
        const double aside = -out * std::sin(turned * std::numbers::pi / 180);
        CHECK(near(load.sideways, aside, 1e-6));
        CHECK(near(load.twisting, 9.80665 * std::abs(aside) / 1000, 1e-8));
    }
}

TEST_CASE("masses add up, eyepieces count twice, and what is not stated is named") {
    Setup setup = with_weight(0);
    the<EyepiecePair>(setup).mount.mass = Grams{150};
    const Load load = report_of(setup).fit.load;
    CHECK(load.mass == Grams{1300});
    REQUIRE(load.unstated.size() == 1);
    CHECK(load.unstated.front() == index_of<SplitterHead>(setup));
}

TEST_CASE("the balance point moves by m a / (m + M) and m a / b restores it") {
    Setup setup = with_weight(0);
    auto& telescope = the<Refractor>(setup);  // 700 mm, back focus 300: rear face at 400 mm
    telescope.balance = {Grams{4000}, Millimetres{230}, Millimetres{200}};
    const auto balance = report_of(setup).fit.balance;
    REQUIRE(balance.has_value());
    CHECK(near(balance->lever, 400 + 80 - 230, rounding));
    CHECK(near(balance->shift, 1000 * 250.0 / 5000, rounding));
    CHECK(near(*balance->counterweight, 1000 * 250.0 / 200, rounding));
    // Moments about the moved balance point vanish.
    CHECK(near(1000 * (balance->lever - balance->shift), 4000 * balance->shift, 1e-6));
    telescope.balance.tube_mass.reset();
    CHECK_FALSE(report_of(setup).fit.balance.has_value());
}

TEST_CASE("the middle of a head's mass lies between its arms") {
    Setup setup = wide_setup();
    const Report report = report_of(setup);
    const Point centre = centre_of_mass(report.train, index_of<EyepiecePair>(setup));
    const auto& left = report.train.paths[0].world_from_field_stop;
    const auto& right = report.train.paths[1].world_from_field_stop;
    CHECK(near(centre.x, (left.origin.x + right.origin.x) / 2, 1e-9));
    CHECK(near(centre.y, (left.origin.y + right.origin.y) / 2, 1e-9));
}

TEST_CASE("between the housings lies what the axes leave, and the nose wants 15 mm of it") {
    Setup setup = wide_setup();
    the<EyepiecePair>(setup).outer_diameter = {42};
    the<Observer>(setup).pupil_distance = {58};
    const EyepieceSpacing spacing = report_of(setup).fit.spacing;
    CHECK(near(spacing.axis_distance, 58, rounding));
    CHECK(near(spacing.gap, 16, rounding));
    CHECK(near(spacing.widest_housing, 58 - 15, rounding));  // common practice, no source
    CHECK(spacing.is_in_range);
}

TEST_CASE("seats set apart for two eyes do not move the housings apart") {
    Setup setup = wide_setup();
    the<Observer>(setup).left = {-2};
    the<Observer>(setup).right = {2};
    CHECK(near(report_of(setup).fit.spacing.axis_distance, 63, rounding));
}

TEST_CASE(
    "an eye at the exit pupil sees the whole field; behind it, the field that its pupil takes "
    "in") {
    CHECK(seen_field({18}, {17}, {6}, {4}, {68}).full_light_share == 1);
    CHECK(seen_field({18}, {0}, {6}, {4}, {68}).half_light_share == 1);
    // 5 mm behind, pupil 6 mm, exit pupil 2 mm: beams of half angle atan(3/5) = 30.9638 deg enter by
    // half, of atan(2/5) = 21.8014 deg whole; of a half field of 34 deg.
    const SeenField seen = seen_field({12}, {17}, {6}, {2}, {68});
    CHECK(near(seen.too_far, 5, rounding));
    CHECK(near(seen.half_light_share, 30.963757 / 34, 1e-7));
    CHECK(near(seen.full_light_share, 21.801409 / 34, 1e-7));
    // An exit pupil wider than the eye's never enters whole.
    CHECK(seen_field({12}, {17}, {3}, {4}, {68}).full_light_share == 0);
}

TEST_CASE("a nose before a mirror at 45 degrees has its own radius less room than its axis") {
    MirrorDiagonal diagonal;
    diagonal.entry_leg = {60};
    diagonal.exit_leg = {60};
    diagonal.clear_diameter = {80};
    Setup setup = wide_setup({{"Diagonal", diagonal, {}}});
    auto& head = the<SplitterHead>(setup);
    head.entry_clear = {30};
    head.nose_length = {20};
    const auto room = [&] {
        for (const Clearance& one : clearances(report_of(setup).train.path(Eye::left))) {
            if (one.part == index_of<SplitterHead>(setup)) return one.room;
        }
        return Millimetres{std::nan("")};
    };
    // 60 - 20 mm along the axis, less the nose's radius: 15 mm clear and 2 mm of wall.
    CHECK(near(room(), 40 - 17, 1e-9));
    head.nose_length = {45};
    CHECK(near(room(), 15 - 17, 1e-9));
}

TEST_CASE("a lens cell wider than the nose behind it stands in its way") {
    Setup setup = wide_setup({bare_lens(-100, -10)});
    auto& head = the<SplitterHead>(setup);
    head.nose_length = {30};
    std::optional<Clearance> found;
    for (const Clearance& one : clearances(report_of(setup).train.path(Eye::left))) {
        if (one.part == index_of<SplitterHead>(setup)) found = one;
    }
    REQUIRE(found.has_value());
    CHECK(found->other == index_of<Shifter>(setup));
    CHECK(near(found->room, -30 + 10 - 2, 1e-9));  // half of a cell of 4 mm
    the<Shifter>(setup).clear_diameter = {40};     // now it slides into the nose of 80 mm
    for (const Clearance& one : clearances(report_of(setup).train.path(Eye::left)))
        CHECK_FALSE(one.part == index_of<SplitterHead>(setup));
}

TEST_CASE(
    "at the zenith the farthest point of the train hangs as far below the focuser as parts before "
    "it add up") {
    MirrorDiagonal diagonal;
    Spacer ring;
    ring.length = {20};
    Setup setup = wide_setup({{"Ring", ring, {}}, {"Diagonal", diagonal, {}}});
    the<Focuser>(setup).held_at = Millimetres{30};
    const Millimetres before = report_of(setup).fit.zenith.wanted;
    // The axis itself meets the mirror there: less can never be enough.
    CHECK(before > Millimetres{30 + 20} + diagonal.entry_leg);
    CHECK_FALSE(report_of(setup).fit.zenith.is_straight);
    the<Spacer>(setup).length = {33};
    CHECK(near(report_of(setup).fit.zenith.wanted, before + Millimetres{13}, rounding));
    the<Focuser>(setup).held_at = Millimetres{10};
    CHECK(near(report_of(setup).fit.zenith.wanted, before + Millimetres{13 - 20}, rounding));
}

TEST_CASE(
    "looked through straight, the eyepieces hang lowest; the mount's room is held against them") {
    Setup setup = wide_setup();
    the<Focuser>(setup).held_at = Millimetres{0};
    const ZenithRoom room = report_of(setup).fit.zenith;
    CHECK(room.part == index_of<EyepiecePair>(setup));
    CHECK(room.is_straight);
    CHECK_FALSE(room.is_sideways);
    CHECK_FALSE(room.hits());
    the<Refractor>(setup).balance.free_behind = room.wanted - Millimetres{25};
    const Report report = report_of(setup);
    const auto found =
        std::find_if(report.findings.begin(), report.findings.end(),
                     [](const Finding& one) { return one.id == "zenith_room_short"; });
    REQUIRE(found != report.findings.end());
    CHECK(found->sentence.find("25 mm are missing") != std::string::npos);
    the<Refractor>(setup).balance.free_behind = room.wanted + Millimetres{1};
    CHECK_FALSE(report_of(setup).fit.zenith.hits());
}

TEST_CASE("a Newtonian's train stands out beside its tube") {
    Setup setup = wide_setup();
    setup.parts[0].body = Newtonian{};
    CHECK(report_of(setup).fit.zenith.is_sideways);
}

TEST_CASE("as the tube tips about its balance point the eyes go round it, and their gaze with it") {
    // Plane geometry: what stands y above and z behind the axis stands y cos a - z sin a above it at altitude a.
    Setup straight = wide_setup();
    the<Refractor>(straight).balance.balance_point = Millimetres{300};
    const Report report = report_of(straight);
    const Point stop = report.train.path(Eye::left).world_from_field_stop.origin;
    const EyeHeight& eyes = report.fit.eyes;
    REQUIRE(eyes.places.size() == 4);
    CHECK(eyes.pivot_is_stated);
    CHECK(near(eyes.places[3].height, -(stop.z - 300), 1e-9));
    for (const EyePlace& place : eyes.places)
        CHECK(near(place.gaze, place.altitude, 1e-9));  // straight through: along the tube
    the<Refractor>(straight).balance.balance_point = Millimetres{400};
    const EyeHeight farther = report_of(straight).fit.eyes;
    CHECK(near(farther.places[0].height, eyes.places[0].height, 1e-9));
    CHECK(near(farther.places[1].height, eyes.places[1].height + Millimetres{50},
               1e-9));  // 100 sin 30 degrees
    CHECK(near(farther.places[3].height, eyes.places[3].height + Millimetres{100}, 1e-9));
    the<Refractor>(straight).balance.balance_point.reset();
    CHECK_FALSE(report_of(straight).fit.eyes.pivot_is_stated);

    // A diagonal looks a right angle down from the tube: straight down at the horizon, level at the zenith.
    const EyeHeight bent = report_of(wide_setup({{"Diagonal", MirrorDiagonal{}, {}}})).fit.eyes;
    for (const EyePlace& place : bent.places)
        CHECK(near(place.gaze, place.altitude - Degrees{90}, 1e-9));
    CHECK(near(bent.range(), bent.highest - bent.lowest, 1e-12));
    CHECK(bent.places.front().height > Millimetres{});
}
