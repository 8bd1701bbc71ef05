// Two trains in one picture: where the second stands, that it cannot be picked, and how bright it is.
#include <algorithm>

#include "parts/eyepiece_pair.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/refractor.hpp"
#include "scene/comparison/companion.hpp"
#include "scene/comparison/comparison_rows.hpp"
#include "scene/picture/picture.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Frame companion_test_frame(const Setup& setup, int rays) {
    const Report report = make_report(setup, setup.chosen, {16}).value();
    return build_frame(setup, report, {rays, rays, 0, 4, 8, 12});
}

float light_of(const Frame& frame, std::size_t from) {
    float sum = 0;
    for (std::size_t i = from; i < frame.light.size(); ++i)
        sum += frame.light[i].strength * glm::distance(frame.light[i].from, frame.light[i].to);
    return sum / static_cast<float>(frame.ray_count);
}

}  // namespace

TEST_CASE("a train beside another keeps its size, stands clear of it and cannot be picked") {
    const Frame now = companion_test_frame(wide_setup(), 4);
    const Frame other = companion_test_frame(wide_setup({{"Diagonal", MirrorDiagonal{}, {}}}), 4);
    const Frame both = with_other_beside(now, other, "the other");
    REQUIRE(both.meshes.size() == now.meshes.size() + other.meshes.size());
    for (std::size_t i = now.meshes.size(); i < both.meshes.size(); ++i) {
        CHECK(both.meshes[i].part == -1);
        for (const MeshVertex& vertex : both.meshes[i].vertices)
            CHECK(vertex.position.x > now.bounds.high.x);
    }
    const auto width = [](const Bounds& bounds) { return bounds.high.x - bounds.low.x; };
    CHECK(width(both.bounds) > width(now.bounds) + width(other.bounds));
    CHECK(both.part_bounds.size() == now.part_bounds.size());
    CHECK(both.revision != now.revision);
}

TEST_CASE(
    "the other's light is as bright as its own picture shows it, whatever its number of rays") {
    const Frame now = companion_test_frame(wide_setup(), 4);
    const Frame other = companion_test_frame(wide_setup(), 8);
    REQUIRE(other.ray_count != now.ray_count);
    const Frame both = with_other_beside(now, other, "the other");
    CHECK(near(light_of(both, now.light.size()), light_of(other, 0), 1e-3F * light_of(other, 0)));
}

TEST_CASE("a train over itself adds no body, and its light as a ghost's") {
    const Frame now = companion_test_frame(wide_setup(), 4);
    const Frame both = with_other_over(now, now, "as it was");
    CHECK(both.meshes.size() == now.meshes.size());
    REQUIRE(both.light.size() == 2 * now.light.size());
    for (std::size_t i = now.light.size(); i < both.light.size(); ++i)
        CHECK(both.light[i].role == ColourRole::ghost);
}

TEST_CASE("rows part what differs from what is alike and count who is better") {
    Setup here = wide_setup();
    the<Refractor>(here).back_focus = {100};
    Setup there = here;
    the<Refractor>(there).back_focus = {96};
    const auto report = [](const Setup& setup) {
        return make_report(setup, setup.chosen, {32}).value();
    };
    const ComparisonRows rows = comparison_rows(here, report(here), there, report(there));
    const auto margin =
        std::find_if(rows.changed.begin(), rows.changed.end(),
                     [](const ComparisonRow& row) { return row.label == "Focus margin"; });
    REQUIRE(margin != rows.changed.end());
    CHECK(margin->better == Side::here);
    CHECK(margin->here.find(" mm") != std::string::npos);
    CHECK(rows.better_here >= 1);
    REQUIRE(rows.parts.size() == 1);
    CHECK(rows.parts[0].here == "100 mm");
    CHECK(rows.parts[0].there == "96 mm");
}

TEST_CASE("a chance of focus is never told as certain") {
    const Setup here = wide_setup();
    Setup there = here;
    the<Refractor>(there).back_focus = {20};  // the head alone needs more
    const auto report = [](const Setup& setup) {
        return make_report(setup, setup.chosen, {32}).value();
    };
    const ComparisonRows rows = comparison_rows(here, report(here), there, report(there));
    const auto chance =
        std::find_if(rows.changed.begin(), rows.changed.end(),
                     [](const ComparisonRow& row) { return row.label == "Chance of focus"; });
    REQUIRE(chance != rows.changed.end());
    CHECK(chance->here == "> 99 %");
    CHECK(chance->there == "< 1 %");
}

TEST_CASE("half the exit pupil is told as sky and nebulae 1.51 magnitudes dimmer") {
    // Light on the retina goes as the exit pupil's area: 2.5 log10 of 4 = 1.505 magnitudes.
    const Setup here = wide_setup();
    Setup there = here;
    the<EyepiecePair>(there).focal_length = 0.5 * the<EyepiecePair>(there).focal_length;
    const auto report = [](const Setup& setup) {
        return make_report(setup, setup.chosen, {32}).value();
    };
    const ComparisonRows rows = comparison_rows(here, report(here), there, report(there));
    const auto sky =
        std::find_if(rows.changed.begin(), rows.changed.end(),
                     [](const ComparisonRow& row) { return row.label == "Sky and nebulae"; });
    REQUIRE(sky != rows.changed.end());
    CHECK(sky->there.ends_with("1.51 mag dimmer"));
    CHECK(sky->here.find("dimmer") == std::string::npos);
    CHECK_FALSE(sky->better.has_value());
}
