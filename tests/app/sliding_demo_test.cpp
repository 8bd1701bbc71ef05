// The demo with the sliding head tells what its story says.
#include <algorithm>

#include "desk/open_setup.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Setup demo() {
    const auto read = open_named("9-sliding-head");
    REQUIRE(read);
    return read->document.setup;
}

FocusBudget budget_of(const Setup& setup, std::size_t observer) {
    Choice choice = setup.chosen;
    choice.observer = parts_with_role(setup, Role::observer).at(observer);
    const auto budget = focus_budget(setup, choice);
    REQUIRE(budget);
    return *budget;
}

}  // namespace

TEST_CASE("the child reaches focus and the warden, 20 mm wider between the eyes, is 10 mm worse "
          "off, more than the seats take up") {
    const Setup setup = demo();
    // Back focus 141.5; diagonal 44 mm, of which 25 are N-BAK4 (n = 1.5712 at the e line); head 104 at 61 mm.
    const double diagonal = 44 - 25 + 25 / 1.5712;
    const FocusBudget child = budget_of(setup, 0);
    CHECK(child.reaches);
    CHECK(near(child.wanted_drawtube.value, 141.5 - diagonal - (104 - 4),
               1e-3));  // index to four decimals
    const FocusBudget warden = budget_of(setup, 1);
    CHECK_FALSE(warden.reaches);
    CHECK(near(warden.wanted_drawtube.value, 141.5 - diagonal - (104 + 6), 1e-3));
    CHECK(near(child.wanted_drawtube.value - warden.wanted_drawtube.value, 10, rounding));
}

TEST_CASE("with a hinge instead both share one focus, within reach and within the head's range") {
    Setup setup = demo();
    const std::size_t index = parts_with_role(setup, Role::splitter).front();
    auto& head = setup.parts[index].body.get<SplitterHead>();
    head.mechanism = Mechanism::hinged;
    const FocusBudget child = budget_of(setup, 0);
    CHECK(child.reaches);
    CHECK(near(child.wanted_drawtube.value, budget_of(setup, 1).wanted_drawtube.value, rounding));
    for (const std::size_t observer : parts_with_role(setup, Role::observer))
        CHECK(head.reaches(part_as<Observer>(setup, observer).pupil_distance));
}
