// Tours are told of every shipped demo, without a gap.
#include "app/commands/tour_list.hpp"
#include "desk/open_setup.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("every demo has its tours, and no caption is left with a brace") {
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        const auto read = open_named(demo.name);
        REQUIRE(read);
        const Setup& setup = read->document.setup;
        const auto report = make_report(setup, setup.chosen, {100});
        REQUIRE(report);
        const auto text = tour_list_text(read->document, *report);
        REQUIRE(text);
        CHECK(text->find('{') == std::string::npos);
        CHECK(text->find("n/a") == std::string::npos);
        CHECK(text->find("One beam becomes two") != std::string::npos);
        const bool tells_short = text->find(" short: no turn") != std::string::npos;
        const bool is_short = !report->budget.reaches && report->budget.shortfall_is_inward;
        CHECK(tells_short == is_short);
    }
}
