// Light of every demo as a drag shows it against counted rays.
#include "base/assets.hpp"
#include "document/setup_file.hpp"
#include "study/focus/focus_budget.hpp"
#include "support/light_agreement.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("few rays tell the light of every demo at every field point") {
    int demos = 0;
    for (const std::string_view name : asset_names("assets/demos/")) {
        if (!name.ends_with(".train.toml")) continue;
        CAPTURE(std::string(name));
        const auto opened = read_setup(std::string(asset(name).value()), std::string(name));
        REQUIRE(opened.has_value());
        const Setup& setup = opened->document.setup;
        const auto train = focused_train(setup, setup.chosen, *solved_focus(setup, setup.chosen));
        REQUIRE(train.has_value());
        const auto found = test_light::light_agreement(*train);
        CHECK(found.worst <= test_light::agreed);
        CHECK(found.worst_end <= test_light::agreed);
        CHECK(found.by_few_rays == found.points);
        CHECK(found.worst_field <= 0.004);
        ++demos;
    }
    CHECK(demos >= 10);
}
