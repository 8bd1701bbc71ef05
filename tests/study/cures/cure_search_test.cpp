// Cures do what they say: each is carried out and studied anew with more rays; sizes against geometry.
#include <algorithm>

#include "parts/balance.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/fitting.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_search.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr ClippingEffort few_rays{96};

Report cured_report(const Setup& setup) {
    Report report = make_report(setup, setup.chosen, few_rays).value();
    add_cures(setup, report);
    return report;
}

const Finding* finding_named(const Report& report, const std::string& id) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const Finding& one) { return one.id == id; });
    return found == report.findings.end() ? nullptr : &*found;
}

// The default train, with so little back focus that it cannot reach.
Setup too_short() {
    Setup setup = plain_setup({{"Diagonal", PrismDiagonal{}, {}}});
    the<Refractor>(setup).back_focus = {100};
    return setup;
}

}  // namespace

TEST_CASE("every cure of a missed focus brings the image within the drawtube's travel") {
    const Setup setup = too_short();
    const Report report = cured_report(setup);
    const Finding* missed = finding_named(report, "focus_short");
    REQUIRE(missed != nullptr);
    REQUIRE_FALSE(missed->cures.empty());
    for (const Cure& cure : missed->cures) {
        CAPTURE(cure.what);
        const auto budget = focus_budget(cure.setup, cure.setup.chosen);
        REQUIRE(budget.has_value());
        CHECK(budget->wanted_drawtube >= Millimetres{});
        CHECK(budget->wanted_drawtube.value <= part_as<Focuser>(cure.setup, 1).travel.value);
        CHECK_FALSE(cure.setup == setup);
    }
}

TEST_CASE("cures come best first: those that remove the finding before those that lessen it") {
    const Report report = cured_report(too_short());
    for (const Finding& finding : report.findings) {
        CHECK(finding.cures.size() <= most_cures);
        CHECK(std::is_sorted(finding.cures.begin(), finding.cures.end(),
                             [](const Cure& a, const Cure& b) { return a.removes && !b.removes; }));
        if (!wants_cure(finding)) CHECK(finding.cures.empty());
    }
}

TEST_CASE("no cure makes anything fail that did not fail before") {
    const Report report = cured_report(too_short());
    const auto fails = [](const Report& one, const std::string& id) {
        return std::any_of(one.findings.begin(), one.findings.end(), [&](const Finding& finding) {
            return finding.severity == Severity::fails && (id.empty() || finding.id == id);
        });
    };
    for (const Finding& finding : report.findings) {
        for (const Cure& cure : finding.cures) {
            const Report after = make_report(cure.setup, cure.setup.chosen, few_rays).value();
            for (const Finding& one : after.findings) {
                CAPTURE(cure.what);
                CAPTURE(one.sentence);
                if (one.severity == Severity::fails) CHECK(fails(report, one.id));
            }
        }
    }
}

TEST_CASE("without a lens, the parfocal ring is as long as the field stops lie apart") {
    Setup setup = wide_setup();
    EyepiecePair deeper;
    deeper.barrel_clear = {60};
    deeper.barrel_length = {10};
    deeper.field_stop_depth = {4};
    setup.parts.insert(setup.parts.begin() + 4, {"Deeper", deeper, {}});
    setup = with_valid_choice(std::move(setup));
    const Report report = cured_report(setup);
    const Finding* apart = finding_named(report, "not_parfocal");
    REQUIRE(apart != nullptr);
    REQUIRE_FALSE(apart->cures.empty());
    const Setup& ringed = apart->cures.front().setup;
    std::vector<double> depths;
    for (const std::size_t one : parts_with_role(ringed, Role::eyepiece))
        depths.push_back(part_as<EyepiecePair>(ringed, one).field_stop_depth.value);
    REQUIRE(depths.size() == 2);
    CHECK(near(depths[0], depths[1], rounding));
    CHECK(near(std::min(depths[0], depths[1]), 0, rounding));  // a ring lifts, it cannot sink
}

TEST_CASE("behind a shifter, too, the parfocal ring is as long as the field stops lie apart") {
    // Image, lens and seat stand alike for both pairs once both stops lie in one plane: 3 - (-2) = 5.0 mm of ring.
    Shifter shifter;
    shifter.clear_diameter = {60};
    Setup setup = wide_setup({{"Shifter", shifter, {}}});
    the<EyepiecePair>(setup).field_stop_depth = {3};
    Part other = setup.parts[index_of<EyepiecePair>(setup)];
    other.name = "Other";
    other.body.get<EyepiecePair>().field_stop_depth = {-2};
    setup.parts.insert(setup.parts.begin() + 5, other);
    setup = with_valid_choice(std::move(setup));
    const Report report = cured_report(setup);
    const Finding* apart = finding_named(report, "not_parfocal");
    REQUIRE(apart != nullptr);
    REQUIRE_FALSE(apart->cures.empty());
    CHECK(apart->cures.front().what == "Put rings on the barrels: 5.0 mm on “Eyepieces”");
}

TEST_CASE(
    "a drawtube in the light comes out by what is taken out behind it, and in by what is added") {
    // Geometry: axis_to_drawtube + drawtube - its length is how far its end stays off the axis.
    const auto with_spacer = [](double length) {
        Spacer spacer;
        spacer.length = {length};
        Setup setup = wide_setup({{"Ring", spacer, {}}});
        Newtonian newtonian;
        newtonian.back_focus = {400};
        setup.parts[0] = {"Newtonian", newtonian, {}};
        the<Focuser>(setup).travel = {400};
        return setup;
    };
    const Setup setup = with_spacer(30);
    const auto drawtube = [](const Setup& one) {
        return focus_budget(one, one.chosen)->drawtube.value;
    };
    REQUIRE(near(drawtube(setup) - drawtube(with_spacer(50)), 20, rounding));
    Setup in_light = setup;
    const auto& newtonian = part_as<Newtonian>(in_light, 0);
    // So long that it stands 10 mm in the light.
    the<Focuser>(in_light).drawtube_length = {newtonian.axis_to_drawtube.value + drawtube(setup)
                                              - newtonian.aperture.value / 2 + 10};
    const Report report = cured_report(in_light);
    const Finding* found = finding_named(report, "drawtube_in_light");
    REQUIRE(found != nullptr);
    CHECK(found->sentence.find("10 mm into the light") != std::string::npos);
    CHECK(found->advice.find("less light path behind it") != std::string::npos);
    for (const Cure& cure : found->cures) {
        CAPTURE(cure.what);
        CHECK(finding_named(make_report(cure.setup, cure.setup.chosen, few_rays).value(),
                            "drawtube_in_light")
              == nullptr);
    }
}

TEST_CASE("two threads that do not join are cured by an adapter that joins both") {
    Setup setup = wide_setup({{"Diagonal", MirrorDiagonal{}, {}}});
    the<MirrorDiagonal>(setup).mount.rear = Fitting::m42_female;
    the<SplitterHead>(setup).mount.front = Fitting::m48_male;
    const Report report = cured_report(setup);
    const Finding* joint = finding_named(report, "joint_does_not_fit");
    REQUIRE(joint != nullptr);
    REQUIRE_FALSE(joint->cures.empty());
    const Cure& cure = joint->cures.front();
    CHECK(cure.removes);
    const auto found = joints(cure.setup, cure.setup.chosen);
    CHECK(std::all_of(found.begin(), found.end(), [](const Joint& one) { return one.fits(); }));
}

TEST_CASE(
    "a mount in the way at the zenith is cured by as much room as is missing, and some more") {
    Setup setup = wide_setup();
    auto& telescope = the<Refractor>(setup);
    telescope.balance.free_behind = Millimetres{50};
    const Report report = cured_report(setup);
    const Finding* zenith = finding_named(report, "zenith_room_short");
    REQUIRE(zenith != nullptr);
    REQUIRE_FALSE(zenith->cures.empty());
    const auto balance = balance_of(zenith->cures.front().setup.parts[0].body);
    CHECK(*balance->free_behind > report.fit.zenith.wanted);
}

TEST_CASE("what lies in the telescope's nature has no cure, and that is known") {
    Setup setup = wide_setup();
    setup.parts[0] = {"Newtonian", Newtonian{}, {}};
    const Report report = cured_report(setup);
    const Finding* shadow = finding_named(report, "obstruction");
    REQUIRE(shadow != nullptr);
    CHECK(report.cures_are_sought);
    CHECK(shadow->cures.empty());
}

TEST_CASE("a search that is given up returns at once with what it has") {
    const Setup setup = too_short();
    const Report report = make_report(setup, setup.chosen, few_rays).value();
    int asked = 0;
    const auto cures = find_cures(setup, report, [&] { return ++asked > 1; });
    CHECK(asked == 2);
    CHECK(cures.size() == report.findings.size());
}
