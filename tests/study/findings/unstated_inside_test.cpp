// Heads known from outside only: what hangs on the places of their glass is told as a note with what to measure, and
// asserted as soon as those places are stated.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_search.hpp"
#include "support/near.hpp"
#include "support/random.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr ClippingEffort rays_for_heads{64};

Report report_on_head(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, rays_for_heads);
    REQUIRE(report.has_value());
    return *std::move(report);
}

const Finding* finding_in(const Report& report, const std::string& id) {
    const auto at = std::ranges::find(report.findings, id, &Finding::id);
    return at == report.findings.end() ? nullptr : &*at;
}

bool tells(const Finding& finding, const std::string& words) {
    return finding.sentence.find(words) != std::string::npos;
}

// A 100 mm f/7 telescope with room for every head, and a head of that light path of which no more is known.
Setup head_of(double path) {
    Setup setup = plain_setup();
    auto& telescope = the<Refractor>(setup);
    telescope.aperture = {100};
    telescope.focal_length = {700};
    telescope.back_focus = {160};
    auto& head = the<SplitterHead>(setup);
    head.prism_width = {25};
    head.arm_offset = {37};
    head.stated_light_path = Millimetres{path};
    return setup;
}

double head_path(const Setup& setup) {
    const auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE(train.has_value());
    return train->light_paths.front().counted();
}

}  // namespace

TEST_CASE("no head from 95 to 140 mm with usual prisms fails or is poor by its own light path") {
    // Usual barrels reach 20 to 30 mm below the shoulder (common practice, no source).
    Random random(1302);
    for (int i = 0; i < 40; ++i) {
        Setup setup = head_of(random.between(95, 140));
        auto& head = the<SplitterHead>(setup);
        head.prism_width = {random.between(20, 30)};
        head.arm_offset = {std::max(35.0, head.prism_width.value + random.between(7, 13))};
        head.hinge_low = {0};
        head.hinge_high = {60};
        head.entry_clear = head.prism_width;
        the<EyepiecePair>(setup).barrel_length = {random.between(20, 30)};
        CAPTURE(head.stated_light_path->value);
        CAPTURE(head.prism_width.value);
        for (const Finding& one : report_on_head(setup).findings) {
            CAPTURE(one.sentence);
            const bool is_of_length = one.id.starts_with("parts_") || one.id.starts_with("lens_")
                                      || one.id.starts_with("stated_path");
            CHECK_FALSE((one.severity == Severity::fails));
            CHECK_FALSE((one.severity == Severity::poor && is_of_length));
        }
    }
}

TEST_CASE("a barrel that is longer than the derived seat is deep is a note that says what to "
          "measure; no cure lengthens the head for it") {
    // 98 mm leave 20.884 mm below the seat (parts/splitter_head_inside_test.cpp): a barrel of 25 mm is 4.1 too long.
    const Setup setup = head_of(98);
    Report report = report_on_head(setup);
    const Finding* note = finding_in(report, "parts_may_collide");
    REQUIRE(note != nullptr);
    CHECK(note->severity == Severity::note);
    CHECK(tells(*note, "its barrel would reach 4.1 mm into the compensator exit face of Head"));
    CHECK(tells(*note, "where the stated light path puts it"));
    CHECK(note->advice.find("depth from the seat to the first glass") != std::string::npos);
    CHECK(finding_in(report, "parts_collide") == nullptr);
    add_cures(setup, report);
    for (const Finding& finding : report.findings) {
        for (const Cure& cure : finding.cures) {
            CAPTURE(cure.what);
            CHECK(head_path(cure.setup) <= 98 + rounding);
        }
    }
}

TEST_CASE("the same barrel fails once the seat is stated to be too low, and fits one that is high "
          "enough") {
    Setup setup = head_of(98);
    the<SplitterHead>(setup).seat_height = Millimetres{20};
    const Report low = report_on_head(setup);
    REQUIRE(finding_in(low, "parts_collide") != nullptr);
    CHECK(finding_in(low, "parts_collide")->severity == Severity::fails);
    CHECK(tells(*finding_in(low, "parts_collide"), "its barrel would reach 5.0 mm into"));
    CHECK(finding_in(low, "parts_may_collide") == nullptr);
    the<SplitterHead>(setup).seat_height = Millimetres{26};
    const Report high = report_on_head(setup);
    CHECK(finding_in(high, "parts_collide") == nullptr);
    CHECK(finding_in(high, "parts_may_collide") == nullptr);
}

TEST_CASE("without a stated light path the usual seat is a guess, and said to be one") {
    Setup setup = head_of(98);
    the<SplitterHead>(setup).stated_light_path.reset();
    the<EyepiecePair>(setup).barrel_length = {33};  // 3 mm more than the usual 30 below the seat
    const Report report = report_on_head(setup);
    const Finding* note = finding_in(report, "parts_may_collide");
    REQUIRE(note != nullptr);
    CHECK(tells(*note, "reach 3.0 mm"));
    CHECK(tells(*note, "where it usually does"));
}

TEST_CASE("a path that no inside can have contradicts the numbers that it is told with") {
    // Glass 87 / 1.571249 = 55.370, 12 between the prisms, at least 2 and 5 mm of air: 74.4 mm.
    const Report report = report_on_head(head_of(70));
    const Finding* contradiction = finding_in(report, "stated_path_contradicts");
    REQUIRE(contradiction != nullptr);
    CHECK(contradiction->severity == Severity::poor);
    CHECK(tells(*contradiction, "a light path of 70.0 mm contradicts prism width 25 mm, arm offset "
                                "37 mm, glass N-BAK4"));
    CHECK(tells(*contradiction, "take 74.4 mm"));
    CHECK(finding_in(report_on_head(head_of(75)), "stated_path_contradicts") == nullptr);
    CHECK(finding_in(report_on_head(head_of(75)), "stated_path_differs") == nullptr);
}

TEST_CASE("light that leaks inside such a head is a note until its inside is stated") {
    // f/3 in glass of n = 1.5187 with bare faces: held up to f/4.92 only (study/findings/findings_test.cpp).
    Setup setup = wide_setup();
    the<Refractor>(setup).focal_length = {300};
    the<Refractor>(setup).back_focus = {250};
    auto& head = the<SplitterHead>(setup);
    head.glass = "N-BK7";
    head.reflecting_faces = FaceCoating::bare;
    head.entry_air = Millimetres{14};
    head.seat_height = Millimetres{30};
    const Report known = report_on_head(setup);
    REQUIRE(finding_in(known, "light_leaks") != nullptr);
    CHECK(finding_in(known, "light_leaks")->severity == Severity::poor);
    the<SplitterHead>(setup).seat_height.reset();
    const Report open = report_on_head(setup);
    REQUIRE(finding_in(open, "light_leaks") != nullptr);
    CHECK(finding_in(open, "light_leaks")->severity == Severity::note);
    CHECK(finding_in(open, "light_leaks")->advice.find("Measure the depths") != std::string::npos);
}

TEST_CASE("images that a prism's error throws apart are a note until the prisms' places are "
          "stated") {
    Setup setup = head_of(110);
    auto& head = the<SplitterHead>(setup);
    head.prisms_stand = PrismsStand::slightly_off;
    head.arm_prism_errors.roll = 120;  // arcminutes
    const Report open = report_on_head(setup);
    REQUIRE(finding_in(open, "images_do_not_merge") != nullptr);
    CHECK(finding_in(open, "images_do_not_merge")->severity == Severity::note);
    the<SplitterHead>(setup).entry_air = Millimetres{13};
    the<SplitterHead>(setup).seat_height = Millimetres{29};
    const Report known = report_on_head(setup);
    REQUIRE(finding_in(known, "images_do_not_merge") != nullptr);
    CHECK(finding_in(known, "images_do_not_merge")->severity == Severity::fails);
}
