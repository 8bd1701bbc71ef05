#include "scene/picture.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour_motion.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

const Tour three_views{
    "three",
    "Three views",
    {{StandardView::side, "", ""}, {StandardView::top, "", ""}, {StandardView::rear, "", ""}}};

}  // namespace

TEST_CASE(
    "a tour lasts as long as its holds and the flights between them, and ends where it ends") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    const TourPace pace{2, 8};
    CHECK(near(tour_duration(three_views, pace), 3 * 8 + 2 * 2, 1e-12));
    CHECK(tour_duration(Tour{}, pace) == 0);
    const auto view = [&](StandardView one) { return standard_view(one, frame, 1.5F); };
    const auto at = [&](double seconds) {
        return tour_at(three_views, seconds, frame, 1.5F, pace);
    };
    CHECK(at(-1).camera == view(StandardView::side));
    CHECK(at(8).step == 0);
    CHECK(at(8.01).step == 1);
    CHECK(at(10).camera == view(StandardView::top));
    CHECK(at(18).camera == view(StandardView::top));
    CHECK(at(28).camera == view(StandardView::rear));
    CHECK(at(1e6).camera == view(StandardView::rear));
    CHECK(at(1e6).step == 2);
}

TEST_CASE("half way of a flight the camera is half way, and it starts and lands softly") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    const Camera from = standard_view(StandardView::side, frame, 1.5F);
    const Camera to = standard_view(StandardView::top, frame, 1.5F);
    const float whole = to.pitch_rad - from.pitch_rad;
    REQUIRE(std::abs(whole) > 0.5F);
    const auto way = [&](double share) {
        const auto moment = tour_at(three_views, 8 + 2 * share, frame, 1.5F, {2, 8});
        return static_cast<double>((moment.camera.pitch_rad - from.pitch_rad) / whole);
    };
    CHECK(near(way(0.5), 0.5, 1e-5));  // single precision
    // 3 t^2 - 2 t^3 at a tenth: 0.028
    CHECK(near(way(0.1), 0.028, 1e-5));
    CHECK(near(way(0.9), 0.972, 1e-5));
}

TEST_CASE("a view that a step keeps is the view that it was taken from") {
    Camera camera;
    camera.target = {1.25F, -20, 700.5F};
    camera.distance_mm = 321;
    camera.yaw_rad = 0.7F;
    camera.pitch_rad = -0.2F;
    TourStep step;
    step.camera = camera_for_tour(camera);
    const Camera again = tour_camera(step, Frame{}, 1.5F);
    CHECK(again.target == camera.target);
    CHECK(near(again.distance_mm, 321, 1e-9));
    CHECK(near(again.yaw_rad, 0.7, 1e-4));  // kept in hundredths of a degree
    CHECK(near(again.pitch_rad, -0.2, 1e-4));
}
