// What the pupil distance does to focus. Sliding arms: half of what the eyepieces are drawn apart is added to the
// air of each arm (geometry of the head, parts/splitter_head.hpp); a hinge turns prisms about the beam and adds
// nothing.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "study/focus/pupil_distance.hpp"
#include "study/focus/reach_table.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// 60 to 104 mm with the wide setup's prisms of 30 mm.
Setup sliding_setup(const std::vector<Part>& chain = {}) {
    Setup setup = wide_setup(chain);
    auto& head = the<SplitterHead>(setup);
    head.mechanism = Mechanism::sliding;
    head.prism_width = {30};
    return setup;
}

Setup with_distance(Setup setup, double pupil_distance) {
    the<Observer>(setup).pupil_distance = {pupil_distance};
    return setup;
}

void add_observer(Setup& setup, const char* name, double pupil_distance) {
    Observer other;
    other.pupil_distance = {pupil_distance};
    const auto behind = static_cast<std::ptrdiff_t>(index_of<Observer>(setup)) + 1;
    setup.parts.insert(setup.parts.begin() + behind, Part{name, other, {}});
    setup = with_valid_choice(std::move(setup));
}

DistanceCoupling coupling_of(const Setup& setup) {
    auto coupling = distance_coupling(setup, setup.chosen);
    REQUIRE(coupling.has_value());
    return *std::move(coupling);
}

// Optical path of the ray along the axis from ahead of the telescope to the field stop, drawtube at 10 mm.
double traced_path(const Setup& setup, Eye eye) {
    const auto train = build_train(setup, setup.chosen, Millimetres{10});
    REQUIRE(train.has_value());
    const RayEnd end =
        trace_ray(train->path(eye), ray_into(*train, {0, 0}, {0, 0}, 10), primary_wavelength);
    REQUIRE(end.fate == RayFate::reached);
    return end.ray.path;
}

const Finding* finding_named(const std::vector<Finding>& findings, const std::string& id) {
    const auto found = std::ranges::find(findings, id, &Finding::id);
    return found == findings.end() ? nullptr : &*found;
}

std::vector<Finding> findings_of(const Setup& setup) {
    const auto report = make_report(setup, setup.chosen, {64});
    REQUIRE(report.has_value());
    return report->findings;
}

bool says(const Finding& finding, const char* words) {
    return finding.sentence.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "traced light takes half a mm longer in both sliding arms for each mm between the pupils") {
    const double narrowest = traced_path(with_distance(sliding_setup(), 60), Eye::left);
    for (const double distance : {60.0, 63.0, 71.5, 82.0, 99.0, 104.0}) {
        CAPTURE(distance);
        const Setup setup = with_distance(sliding_setup(), distance);
        const double longer = (distance - 60) / 2;
        CHECK(near(traced_path(setup, Eye::left) - narrowest, longer, rounding));
        CHECK(near(traced_path(setup, Eye::right) - narrowest, longer, rounding));
    }
}

TEST_CASE("traced light takes the same way through a hinged head at any pupil distance") {
    const double reference = traced_path(with_distance(wide_setup(), 60), Eye::left);
    for (const double distance : {40.0, 63.0, 71.5, 99.0}) {
        const Setup setup = with_distance(wide_setup(), distance);
        CHECK(near(traced_path(setup, Eye::left), reference, rounding));
        CHECK(near(traced_path(setup, Eye::right), reference, rounding));
    }
}

TEST_CASE("a hinge has no path per mm of distance, a slide has half a mm everywhere in its range") {
    for (const double distance : {30.0, 40.0, 63.0, 71.5, 99.0, 110.0}) {
        const DistanceCoupling hinged = coupling_of(with_distance(wide_setup(), distance));
        CHECK(hinged.path_per_mm == 0);
        CHECK(hinged.refocus_per_mm == 0);
        CHECK(hinged.observers.empty());
        CHECK(hinged.ends.empty());
        CHECK(hinged.whole_range() == Millimetres{});
        // Ends of the range and places beyond them included.
        const DistanceCoupling sliding = coupling_of(with_distance(sliding_setup(), distance));
        CHECK(near(sliding.path_per_mm, 0.5, rounding));
        CHECK(near(sliding.refocus_per_mm, -0.5,
                   rounding));  // nothing but air and glass: the drawtube
        CHECK(near(sliding.whole_range(), 22, rounding));  // (104 - 60) / 2
        CHECK(near(sliding.present, std::clamp(distance, 60.0, 104.0), rounding));
    }
}

TEST_CASE("prisms that stand off their place do not pass for a sliding mechanism") {
    Setup setup = wide_setup();
    auto& head = the<SplitterHead>(setup);
    head.prisms_stand = PrismsStand::slightly_off;
    head.rhomboid_errors = {20, -15, 30, 0.5, 0.4, 0.3};
    head.cube_errors = {5, 10, -20, 0.1, -0.2, 0.2};
    CHECK(coupling_of(setup).path_per_mm == 0);
}

TEST_CASE("a head that may slide but has no slide is as good as fixed") {
    Setup setup = sliding_setup();
    the<SplitterHead>(setup).slide = Millimetres{0};
    CHECK(coupling_of(setup).path_per_mm == 0);
    CHECK(near(the<SplitterHead>(setup).narrowest().value, 104, rounding));
}

TEST_CASE("budgets of two observers differ by the coupling times the difference of their eyes") {
    Setup setup = with_distance(sliding_setup(), 66);
    add_observer(setup, "Other", 80);
    Choice other = setup.chosen;
    other.observer = setup.chosen.observer + 1;
    const auto here = focus_budget(setup, setup.chosen);
    const auto there = focus_budget(setup, other);
    REQUIRE((here.has_value() && there.has_value()));
    CHECK(near(there->wanted_drawtube.value - here->wanted_drawtube.value, -7, rounding));
    CHECK(near(there->arm_difference.value, 0, rounding));
    const DistanceCoupling coupling = coupling_of(setup);
    REQUIRE(coupling.observers.size() == 1);
    const DistanceChange& change = coupling.observers.front();
    CHECK(change.observer == other.observer);
    CHECK(near(change.wider, 14, rounding));
    CHECK(near(change.path, 14 * coupling.path_per_mm, rounding));
    CHECK(near(change.refocus, -7, rounding));
    // The reach table of both agrees.
    const auto table = reach_table(setup, setup.chosen);
    REQUIRE(table.has_value());
    CHECK(near(table->of(other).drawtube - table->of(setup.chosen).drawtube, -7, rounding));
}

TEST_CASE("eyes that want another correction too: the change is told without it") {
    Setup setup = with_distance(sliding_setup(), 66);
    add_observer(setup, "Short-sighted", 80);
    auto& eyes = setup.parts[setup.chosen.observer + 1].body.get<Observer>();
    eyes.left = eyes.right = prescribed(-4);
    const DistanceCoupling coupling = coupling_of(setup);
    CHECK(near(coupling.observers.front().refocus, -7, rounding));
    // All in all: 7 mm in, and 4 D x 25^2 / 1000 mm (Smith, Modern Optical Engineering, 4th ed., p. 290) further in.
    const auto table = reach_table(setup, setup.chosen);
    Choice other = setup.chosen;
    ++other.observer;
    CHECK(near(abs(table->of(other).drawtube - table->of(setup.chosen).drawtube + Millimetres{7}),
               2.5, rounding));
}

TEST_CASE("a stated light path counts as stated in the middle of the range, and half a mm per mm "
          "off it") {
    Setup setup = sliding_setup();
    the<SplitterHead>(setup).stated_light_path = Millimetres{140};
    const double middle = the<SplitterHead>(setup).middle().value;
    CHECK(near(middle, 82, rounding));
    for (const double distance : {60.0, 70.0, 82.0, 100.0}) {
        const auto train = build_train(with_distance(setup, distance), setup.chosen, {});
        REQUIRE(train.has_value());
        const LightPath& path = train->light_paths.front();
        CHECK(near(path.counted(), 140 + (distance - middle) / 2, rounding));
        CHECK(near(path.derived_left, path.derived_right, rounding));
        // Back focus 300 less the head: where the drawtube stands for an eyepiece with its stop at the shoulder.
        Setup plain = with_distance(setup, distance);
        the<EyepiecePair>(plain).field_stop_depth = {0};
        const auto budget = focus_budget(plain, plain.chosen);
        REQUIRE(budget.has_value());
        CHECK(near(budget->wanted_drawtube.value, 160 - (distance - middle) / 2, rounding));
    }
}

TEST_CASE("the waterfall shows what the head takes at its middle, and apart from it what its "
          "setting adds") {
    Setup setup = with_distance(sliding_setup(), 90);
    the<SplitterHead>(setup).stated_light_path = Millimetres{140};
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    std::vector<double> of_head;
    for (const BudgetRow& row : budget->rows) {
        if (row.part == index_of<SplitterHead>(setup)) of_head.push_back(row.change.value);
    }
    REQUIRE(of_head.size() == 2);
    CHECK(near(of_head[0], -140, rounding));
    CHECK(near(of_head[1], -4, rounding));
}

TEST_CASE("behind a shifter the drawtube moves by less: a thin lens says by how much") {
    // Image distance d behind a lens of -|f|: the unshifted image lies s = d |f| / (d + |f|) behind it.
    constexpr double f = 100;
    Setup setup = with_distance(sliding_setup({bare_lens(-f, 0)}), 66);
    add_observer(setup, "Other", 86);
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const double d = budget->shifters.front().image_distance.value;
    const auto s = [&](double distance) { return distance * f / (distance + f); };
    const DistanceCoupling coupling = coupling_of(setup);
    CHECK(near(coupling.path_per_mm, 0.5, rounding));
    CHECK(near(coupling.observers.front().path, 10, rounding));
    CHECK(near(coupling.observers.front().refocus, s(d) - s(d + 10), rounding));
    // Half a mm of distance either way is a quarter of a mm of path.
    CHECK(near(coupling.refocus_per_mm, s(d - 0.25) - s(d + 0.25), rounding));
}

TEST_CASE("seats take a change of path as long as it fits into their travel beside the eyes' "
          "correction") {
    Setup setup = with_distance(sliding_setup(), 66);
    the<SplitterHead>(setup).seat_travel = {3};
    add_observer(setup, "Other", 71);  // 2.5 mm longer
    CHECK(coupling_of(setup).observers.front().seats_suffice);
    auto& eyes = setup.parts[setup.chosen.observer + 1].body.get<Observer>();
    eyes.left = prescribed(1);
    eyes.right = prescribed(-1);  // each seat 0.625 mm off by itself, one of them inward: 3.1 mm
    CHECK_FALSE(coupling_of(setup).observers.front().seats_suffice);
    eyes = Observer{};
    eyes.pupil_distance = {72.1};  // 3.05 mm
    CHECK_FALSE(coupling_of(setup).observers.front().seats_suffice);
}

TEST_CASE("findings say what a change of observer asks of the drawtube, and when it runs out") {
    Setup setup = with_distance(sliding_setup(), 66);
    add_observer(setup, "Wide eyes", 80);
    std::vector<Finding> findings = findings_of(setup);
    const Finding* refocus = finding_named(findings, "distance_refocus");
    REQUIRE(refocus != nullptr);
    CHECK(refocus->severity == Severity::note);
    CHECK(says(*refocus, "to Wide eyes the head is set 14.0 mm wider"));
    CHECK(says(*refocus, "each arm 7.0 mm longer"));
    CHECK(says(*refocus, "drawtube 7.0 mm farther in"));
    CHECK(refocus->advice.starts_with("Refocus with the drawtube after the change"));
    const Finding* range = finding_named(findings, "distance_moves_focus");
    REQUIRE(range != nullptr);
    CHECK(says(*range, "0.50 mm longer; from 60.0 to 104.0 mm that is 22.0 mm"));
    CHECK(range->advice.find("the drawtube goes in by 0.50 mm per mm wider") != std::string::npos);
    CHECK(finding_named(findings, "distance_out_of_travel") == nullptr);

    // So little back focus that the drawtube stands 2 mm out: 5 of the 7 mm are missing.
    const auto budget = focus_budget(setup, setup.chosen);
    the<Refractor>(setup).back_focus.value -= budget->wanted_drawtube.value - 2;
    findings = findings_of(setup);
    const Finding* out = finding_named(findings, "distance_out_of_travel");
    REQUIRE(out != nullptr);
    CHECK(out->severity == Severity::poor);
    CHECK(says(*out, "5.0 mm farther in than the drawtube"));
    CHECK(says(*out, "Wide eyes"));
    refocus = finding_named(findings, "distance_refocus");
    REQUIRE(refocus != nullptr);
    CHECK(refocus->advice.starts_with("The drawtube stops 5.0 mm short of that"));
    // Where the drawtube racks out too little for closer eyes, a spacer is the cure.
    setup.parts[setup.chosen.observer + 1].body.get<Observer>().pupil_distance = {60};
    the<Focuser>(setup).travel = {3};            // 2 mm out now, 5 mm for them
    the<SplitterHead>(setup).seat_travel = {1};  // too little to take up the 2 mm that are missing
    findings = findings_of(setup);
    out = finding_named(findings, "distance_out_of_travel");
    REQUIRE(out != nullptr);
    CHECK(says(*out, "2.0 mm farther out than the drawtube"));
}

TEST_CASE("a hinged head gives no such findings") {
    Setup setup = with_distance(wide_setup(), 66);
    add_observer(setup, "Wide eyes", 80);
    for (const Finding& finding : findings_of(setup))
        CHECK_FALSE(finding.id.starts_with("distance_"));
}
