#include <atomic>
#include <chrono>

#include "app/sight_view/sight_drawer.hpp"
#include "desk/open_setup.hpp"
#include "scene/sight_view/sight_view_rows.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::shared_ptr<const TracedSetup> demo_traced() {
    const auto read = open_named("2-shifter-cures-it");
    REQUIRE(read.has_value());
    const Setup& setup = read->document.setup;
    const auto report = make_report(setup, setup.chosen, ClippingEffort{64});
    REQUIRE(report.has_value());
    return std::make_shared<const TracedSetup>(TracedSetup{setup, *report});
}

}  // namespace

TEST_CASE("the newest request is drawn last, those in between may be dropped") {
    const auto traced = demo_traced();
    std::atomic<int> finished = 0;
    SightDrawer drawer([&] { ++finished; });
    SightRequest request;
    request.pixels = 64;
    for (unsigned seed = 1; seed <= 20; ++seed) {
        request.scene.seed = seed;
        drawer.ask(traced, request);
    }
    std::optional<DrawnSight> last;
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
    while (std::chrono::steady_clock::now() < end) {
        if (auto drawn = drawer.take()) last = std::move(drawn);
        if (last && last->request.scene.seed == 20) break;
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    REQUIRE(last.has_value());
    CHECK(last->request == request);
    CHECK(last->image.rgba
          == drawn_sight(*traced, request).image.rgba);  // the same bits on any thread
    CHECK(finished <= 20);
    CHECK_FALSE(drawer.take().has_value());
}
