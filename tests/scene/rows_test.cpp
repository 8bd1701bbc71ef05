#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "parts/eyepiece_pair.hpp"
#include "parts/fitting.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "sample_setups.hpp"
#include "scene/findings/finding_rows.hpp"
#include "scene/fit/fit_rows.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/focus/light_path_rows.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "scene/light/magnification_rows.hpp"
#include "scene/ways_to_focus/ways_to_focus_rows.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The worked budget of the trade (common practice, no source): back focus 116, adapter 1, diagonal 35, head 110.
Setup worked_budget() {
    Setup setup = short_setup();
    setup.parts[3].body.get<PrismDiagonal>().stated_light_path = Millimetres{35};
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{110};
    return setup;
}

const ValueRow& row_named(const std::vector<ValueRow>& rows, const std::string& label) {
    const auto found = std::find_if(rows.begin(), rows.end(),
                                    [&](const ValueRow& row) { return row.label == label; });
    REQUIRE(found != rows.end());
    return *found;
}

}  // namespace

TEST_CASE("the waterfall starts at the back focus, every bar where the last one ended, and ends at "
          "what is left") {
    const FocusBudgetRows rows = focus_budget_rows(report_of(worked_budget()));
    REQUIRE(rows.bars.size() == 5);
    const std::vector<double> ends{116, 115, 80, -30, -30};
    for (std::size_t i = 0; i < rows.bars.size(); ++i)
        CHECK(near(rows.bars[i].to, ends[i], 1e-9));
    for (std::size_t i = 1; i + 1 < rows.bars.size(); ++i)
        CHECK(near(rows.bars[i].from, ends[i - 1], 1e-9));
    CHECK(rows.bars.front().from == 0);
    CHECK(rows.bars.back().from == 0);
    CHECK(rows.bars[0].value == "116.0");
    CHECK(rows.bars[2].value == "-35.0");
    CHECK(rows.bars.back().label == "Short by");
    CHECK(rows.bars.back().value == "30.0");
    CHECK(rows.bars.back().role == ColourRole::shortfall);
    CHECK(near(rows.low, -30, 1e-9));
    CHECK(near(rows.high, 116, 1e-9));
}

TEST_CASE("a part's bar adds up all that the budget books for it, and the telescope's is its back "
          "focus") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm, stated for 62: half a mm per mm off it
    setup.parts[6].body.get<Observer>().pupil_distance = {70};
    const std::vector<BudgetBar> bars = budget_by_part(report_of(setup, 16));
    const auto value_of = [&](std::size_t part) {
        const auto bar = std::ranges::find(bars, part, &BudgetBar::part);
        REQUIRE(bar != bars.end());
        return bar->value;
    };
    CHECK(std::ranges::count(bars, 4, &BudgetBar::part) == 1);
    CHECK(value_of(0) == "116.0");
    CHECK(value_of(3) == "-35.0");
    CHECK(value_of(4) == "-114.0");
}

TEST_CASE("a drawtube that cannot follow is shown with its wanted place beyond the scale") {
    const TravelScale scale = focus_budget_rows(report_of(worked_budget())).travel;
    CHECK_FALSE(scale.reaches);
    CHECK(scale.role == ColourRole::shortfall);
    CHECK(near(scale.wanted, -30, 1e-9));
    CHECK(scale.present == 0);
    CHECK(scale.low < -30);
    CHECK(scale.high > scale.travel);
    CHECK(scale.margin_in == "30.0 mm too far in");
    CHECK(scale.margin_out == "110.0 mm left outward");
    CHECK(scale.sentence == "Focus lies 30.0 mm farther in than the drawtube goes.");
}

TEST_CASE("a setup in focus tells both margins, a held drawtube where focus is") {
    Setup setup = worked_budget();
    setup.parts[0].body.get<Refractor>().back_focus = {
        161};  // 45 mm more: 15 mm of travel are used
    TravelScale scale = focus_budget_rows(report_of(setup)).travel;
    CHECK(scale.reaches);
    CHECK(scale.role == ColourRole::good);
    CHECK(scale.margin_in == "15.0 mm left inward");
    CHECK(scale.margin_out == "65.0 mm left outward");
    CHECK(scale.sentence == "In focus with the drawtube 15.0 mm out of 80 mm.");
    setup.parts[1].body.get<Focuser>().held_at = Millimetres{40};
    scale = focus_budget_rows(report_of(setup)).travel;
    CHECK(scale.is_held);
    CHECK(scale.present == 40);
    CHECK(near(scale.wanted, 15, 1e-9));
    CHECK(scale.sentence == "The drawtube is held 40.0 mm out; focus is at 15.0 mm.");
}

TEST_CASE("what a shifter gives back is a bar upwards in the colour of what is good") {
    const FocusBudgetRows rows = focus_budget_rows(report_of(cured_setup()));
    const auto found = std::find_if(rows.bars.begin(), rows.bars.end(), [](const BudgetBar& bar) {
        return bar.entry == BudgetEntry::gives_back;
    });
    REQUIRE(found != rows.bars.end());
    CHECK(found->to > found->from);
    CHECK(found->value.front() == '+');
    CHECK(found->role == ColourRole::good);
    CHECK(rows.bars.back().role == ColourRole::good);
}

TEST_CASE("at every place of the field what arrives and what the openings take make up all of the "
          "light") {
    const Setup setup = clipping_setup();
    const LightRows rows = light_at_stops_rows(setup, report_of(setup));
    REQUIRE(rows.eyes.size() == 2);
    CHECK(rows.fractions.front() == 0);
    CHECK(rows.fractions.back() == 1);
    CHECK(near(rows.diameters.back(), 27, 1e-9));  // the field stop
    for (const EyeLightRows& eye : rows.eyes) {
        REQUIRE(eye.relative.size() == rows.fractions.size());
        CHECK_FALSE(eye.shares.empty());
        for (std::size_t ring = 0; ring < eye.relative.size(); ++ring) {
            double sum = eye.relative[ring];
            for (const StopShare& share : eye.shares)
                sum += share.share[ring];
            CHECK(near(sum, 1, 0.005));  // bands under a thousandth are left out
            CHECK(eye.lowest[ring] <= eye.relative[ring] + 1e-12);
        }
        CHECK(std::is_sorted(
            eye.shares.begin(), eye.shares.end(),
            [](const StopShare& a, const StopShare& b) { return a.largest > b.largest; }));
        std::set<std::string> names;
        for (const StopShare& share : eye.shares)
            names.insert(share.name);
        CHECK(names.size() == eye.shares.size());
        CHECK(eye.values.size() == 3);
    }
    CHECK(rows.eyes[0].role == ColourRole::left_arm);
    CHECK(rows.eyes[1].role == ColourRole::right_arm);
    CHECK(rows.sentence.find("aperture work on axis") != std::string::npos);
}

TEST_CASE("a setup that loses nothing says so") {
    Setup setup = cured_setup();
    setup.parts[6].body.get<EyepiecePair>().field_stop = {8};
    setup.parts[4].body.get<Shifter>().clear_diameter = {24};
    const LightRows rows = light_at_stops_rows(setup, report_of(setup));
    CHECK(rows.sentence == "All of the objective's light arrives everywhere in the field.");
    CHECK(rows.eyes[0].shares.empty());
    CHECK(rows.eyes[0].values[1].value == "100");
}

TEST_CASE("magnification, true field and exit pupil are those of 740 mm, 25 mm and 100 mm") {
    // W. J. Smith, Modern Optical Engineering, 4th ed., sec. 13.1: power is the ratio of focal lengths,
    // exit pupil the aperture over the power; the field stop seen from the objective is the true field.
    const auto rows = magnification_rows(report_of(short_setup()));
    CHECK(row_named(rows, "Magnification").value == "30");  // 29.6
    CHECK(row_named(rows, "Exit pupil").value == "3.38");   // 100 / 29.6 = 3.378
    CHECK(row_named(rows, "True field").value == "1.63");   // 2 atan(10.5 / 740) = 1.626 degrees
    CHECK(row_named(rows, "Shifter factor").value == "1.00");
    CHECK(row_named(rows, "Effective focal length").value == "740");
    CHECK(row_named(rows, "Focal ratio").value == "7.4");
    for (const ValueRow& row : rows) {
        CHECK_FALSE(row.help.empty());
        CHECK(row.help.back() == '.');
    }
}

TEST_CASE(
    "each severity has its own word, shape and colour, and the order of the findings is kept") {
    Report report;
    for (const Severity severity :
         {Severity::fails, Severity::poor, Severity::note, Severity::good}) {
        report.findings.push_back({severity, "id", "A sentence.", "Advice.", 3});
    }
    const auto rows = finding_rows(report);
    REQUIRE(rows.size() == 4);
    std::set<std::string> words;
    std::set<FindingSign> signs;
    std::set<ColourRole> roles;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        words.insert(rows[i].word);
        signs.insert(rows[i].sign);
        roles.insert(rows[i].role);
        CHECK(rows[i].severity == report.findings[i].severity);
        CHECK(rows[i].sentence == "A sentence.");
        CHECK(rows[i].part == 3);
    }
    CHECK(words.size() == 4);
    CHECK(signs.size() == 4);
    CHECK(roles.size() == 4);
}

TEST_CASE("the summary counts what fails and what is poor") {
    Report report;
    CHECK(finding_summary(report) == "All is well");
    report.findings = {{Severity::note, "", "", "", {}}};
    CHECK(finding_summary(report) == "All is well");
    report.findings.push_back({Severity::poor, "", "", "", {}});
    CHECK(finding_summary(report) == "1 poor");
    report.findings.push_back({Severity::fails, "", "", "", {}});
    CHECK(finding_summary(report) == "1 fails, 1 poor");
    report.findings.push_back({Severity::fails, "", "", "", {}});
    CHECK(finding_summary(report) == "2 fail, 1 poor");
}

TEST_CASE(
    "a stated light path stands beside the derived one, with what becomes of the difference") {
    Setup setup = worked_budget();
    auto& known = setup.parts[4].body.get<SplitterHead>();
    known.entry_air = Millimetres{14};
    known.seat_height = Millimetres{30};
    const Report report = report_of(setup);
    const auto rows = light_path_rows(setup, report);
    const auto row_of = [&](std::size_t part) {
        const auto found = std::find_if(rows.begin(), rows.end(),
                                        [&](const auto& row) { return row.part == part; });
        REQUIRE(found != rows.end());
        return *found;
    };
    const LightPathRow adapter = row_of(2);
    CHECK(adapter.derived == "1.0");
    CHECK(adapter.stated == "–");
    CHECK(adapter.difference == "–");
    CHECK_FALSE(adapter.differs);
    const LightPathRow head = row_of(4);
    CHECK(head.name == "Splitter head");
    CHECK(head.stated == "110.0");
    CHECK(head.differs);
    CHECK(head.fits);
    // Glass: cube 25, arm prism 25 and a compensator as long as the arm offset of 37 mm.
    CHECK(head.glass == "87.0");
    const double derived = std::stod(head.derived);
    CHECK(
        near(std::stod(head.difference), 110 - derived, 0.1));  // each is rounded to its last digit
    CHECK(head.note.find("taken away") != std::string::npos);
}

TEST_CASE("of a head known from outside only, nothing differs from its stated light path") {
    const Setup setup = worked_budget();
    for (const LightPathRow& row : light_path_rows(setup, report_of(setup))) {
        if (row.part != 4) continue;
        CHECK(row.derived == "110.0");
        CHECK_FALSE(row.differs);
        CHECK(row.note.empty());
    }
}

TEST_CASE("a stated light path that the part cannot have is told to be impossible") {
    Setup setup = worked_budget();
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{60};
    const auto rows = light_path_rows(setup, report_of(setup));
    const auto head =
        std::find_if(rows.begin(), rows.end(), [](const auto& row) { return row.part == 4; });
    REQUIRE(head != rows.end());
    CHECK_FALSE(head->fits);
    CHECK(head->note.find("shorter than its glass and air can be") != std::string::npos);
}

TEST_CASE("arms of unequal glass show both light paths") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.compensator = Millimetres{20};
    head.stated_light_path.reset();
    const auto rows = light_path_rows(setup, report_of(setup));
    const auto row =
        std::find_if(rows.begin(), rows.end(), [](const auto& r) { return r.part == 4; });
    REQUIRE(row != rows.end());
    CHECK(row->derived.find(" / ") != std::string::npos);
}

TEST_CASE("each way to focus says what it gives and costs, with a sign for whether it suffices") {
    const Report report = report_of(worked_budget(), 16);
    const auto rows = ways_to_focus_rows(report);
    REQUIRE(rows.size() == report.ways_to_focus.size());
    REQUIRE(rows.size() >= 3);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK((rows[i].sign == FindingSign::cross) == !report.ways_to_focus[i].reaches);
        CHECK(rows[i].effect.find(" mm") != std::string::npos);
        CHECK(rows[i].cost.find(". ") != std::string::npos);
    }
    CHECK(ways_to_focus_sentence(report).find("35.0 mm of light path") == 0);
    Setup well = worked_budget();
    well.parts[0].body.get<Refractor>().back_focus = Millimetres{170};
    CHECK(ways_to_focus_rows(report_of(well, 16)).empty());
    CHECK(ways_to_focus_sentence(report_of(well, 16)).find("24.0 mm to spare")
          != std::string::npos);
}

TEST_CASE("fit tells each joint in words, with what is missing or needed") {
    Setup setup = short_setup();
    setup.parts[1].body.get<Focuser>().mount.rear = Fitting::holder_2;
    setup.parts[2].body.get<Spacer>().mount = {Fitting::barrel_2, Fitting::m42_male, {}};
    setup.parts[3].body.get<PrismDiagonal>().mount.front = Fitting::barrel_125;
    const FitRows rows = fit_rows(setup, report_of(setup));
    REQUIRE(rows.joints.size() == 4);
    CHECK(rows.joints[0].verdict == "fits");
    CHECK(rows.joints[0].role == ColourRole::good);
    CHECK(rows.joints[1].verdict == "needs an adapter");
    CHECK(rows.joints[1].help.find("an M42x0.75 female in front and a 1.25 in holder behind")
          != std::string::npos);
    CHECK(rows.joints[2].verdict == "not stated");
    CHECK(row_named(rows.weight, "On the focuser").value == "–");
    CHECK(rows.weight_note.find("Mass not stated: Adapter") == 0);
    setup.parts[2].body.get<Spacer>().mount.mass = Grams{250};
    CHECK(row_named(fit_rows(setup, report_of(setup)).weight, "On the focuser").value == "250");
    for (const auto* group : {&rows.eyes, &rows.weight}) {
        for (const ValueRow& row : *group)
            CHECK(row.help.size() > 20);
    }
}

TEST_CASE(
    "what the pupil distance does to focus has rows for a sliding head and none for a hinge") {
    Setup setup = worked_budget();
    const auto labels = [](const Setup& one) {
        std::vector<std::string> all;
        for (const ValueRow& row : fit_rows(one, report_of(one, 16)).eyes)
            all.push_back(row.label + " " + row.value + " " + row.unit);
        return all;
    };
    const auto has = [](const std::vector<std::string>& all, const std::string& label) {
        return std::ranges::count(all, label) == 1;
    };
    for (const std::string& label : labels(setup))
        CHECK(label.find("Path") == std::string::npos);
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.mechanism = Mechanism::sliding;  // 25 mm prisms, 37 mm arms: 50 to 74 mm
    Observer wide;
    wide.pupil_distance = {setup.parts[6].body.get<Observer>().pupil_distance.value + 6};
    setup.parts.insert(setup.parts.begin() + 7, Part{"Wide", wide, {}});
    setup = with_valid_choice(setup);
    const auto sliding = labels(setup);
    CHECK(has(sliding, "Path per mm of distance +0.50 mm/mm"));
    CHECK(has(sliding, "Refocus per mm of distance -0.50 mm/mm"));
    CHECK(has(sliding, "Path over its whole range +12.0 mm"));
    CHECK(has(sliding, "Refocus for Wide -3.0 mm"));
}

TEST_CASE("a sliding head's light paths are told for the middle of its range and for now") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm, stated for 62
    head.stated_light_path = Millimetres{110};
    setup.parts[6].body.get<Observer>().pupil_distance = {70};
    const auto rows = light_path_rows(setup, report_of(setup, 16));
    const auto row =
        std::find_if(rows.begin(), rows.end(), [](const auto& r) { return r.part == 4; });
    REQUIRE(row != rows.end());
    CHECK(row->stated == "110.0");
    CHECK(row->now == "114.0");
    CHECK(row->derived.find(" / ") == std::string::npos);
    CHECK(row->glass == "75.0");
}
