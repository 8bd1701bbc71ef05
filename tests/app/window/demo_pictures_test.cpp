// The pictures on the start page's cards: one for each demo, and none left over. That they show what the demos are
// is tests/golden's business.
#include <algorithm>
#include <set>

#include "app/window/demo_pictures.hpp"
#include "base/assets.hpp"
#include "desk/open_setup.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("every demo has a picture of its own, 16 : 9 and with something in it") {
    std::set<std::vector<std::uint8_t>> seen;
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        const auto image = demo_picture(demo.asset);
        REQUIRE(image.has_value());
        CHECK(image->width * 9 == image->height * 16);
        CHECK(image->width >= 480);
        CHECK(seen.insert(image->rgba).second);
        const auto [least, most] = std::minmax_element(image->rgba.begin(), image->rgba.end());
        CHECK(*most - *least > 100);
    }
}

TEST_CASE("no picture outlives its demo, and the pictures stay small") {
    const auto names = asset_names("assets/demos/");
    std::size_t bytes = 0;
    for (const auto name : names) {
        if (!name.ends_with(".png")) continue;
        CAPTURE(name);
        const std::string stem(name.substr(0, name.size() - 4));
        CHECK(asset(stem + ".train.toml").has_value());
        bytes += asset(name)->size();
    }
    CHECK(bytes > 0);
    CHECK(bytes < 3'000'000);
}

TEST_CASE("what is no demo has no picture, and says so") {
    CHECK(demo_picture("assets/glasses.toml").error().code == ErrorCode::not_found);
    CHECK(demo_picture("assets/demos/none.train.toml").error().code == ErrorCode::not_found);
}
