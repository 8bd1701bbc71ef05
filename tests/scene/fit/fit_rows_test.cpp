#include <algorithm>
#include <string>
#include <vector>

#include "parts/fitting.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/fit/fit_rows.hpp"
#include "scene/row_named.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

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
