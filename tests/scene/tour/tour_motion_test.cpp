#include "scene/picture/picture.hpp"
#include "scene/picture/pulled_apart.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour/tour_motion.hpp"
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
        return tour_at(three_views, seconds, {frame}, 1.5F, pace);
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
        const auto moment = tour_at(three_views, 8 + 2 * share, {frame}, 1.5F, {2, 8});
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

TEST_CASE("parts that a step pulls apart stay in the picture") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const Frame together = build_frame(setup, report);
    const Frame apart = pulled_apart(setup, report, 1, {});
    Tour tour = three_views;
    tour.steps.resize(2);
    for (TourStep& step : tour.steps) {
        step.camera.reset();
        step.view = StandardView::rear;
    }
    tour.steps[1].show.insert(TourShow::apart);
    constexpr Viewport viewport{1280, 720};
    const auto in_sight = [&](const Camera& camera) {
        int count = 0;
        for (int corner = 0; corner < 8; ++corner) {
            const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
            const auto at = project(
                camera, glm::mix(apart.rear_bounds.low, apart.rear_bounds.high, share), viewport);
            if (at && at->x >= 0 && at->y >= 0 && at->x <= viewport.width
                && at->y <= viewport.height)
                ++count;
        }
        return count;
    };
    const double then = tour_duration(tour);
    const auto seen = [&](const TourFrames& frames) {
        return in_sight(tour_at(tour, then, frames, viewport.aspect()).camera);
    };
    CHECK(seen({together, &apart}) == 8);
    CHECK(seen({together}) < 8);
}

TEST_CASE("a step that asks waits with its question, then its answer comes with the light") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    Tour tour = three_views;
    tour.steps[1].asks = TourQuestion{"Which?", {"This", "That"}, 0};
    const TourPace pace{2, 8, 5};
    CHECK(near(tour_duration(tour, pace), 3 * 8 + 2 * 2 + 5, 1e-12));
    const auto at = [&](double seconds) { return tour_at(tour, seconds, {frame}, 1.5F, pace); };
    CHECK(at(8).revealed == 1);
    CHECK(at(9).revealed == 0);                     // on the way there
    CHECK(at(10 + 4.99).revealed == 0);             // the room thinks
    CHECK(near(at(10 + 5.4).revealed, 0.5, 1e-6));  // half of 0.8 s: the easing's middle
    CHECK(at(10 + 5 + 0.8).revealed == 1);
    CHECK(at(10 + 5 + 7.99).step == 1);
    CHECK(at(10 + 5 + 8.01).step == 2);
    CHECK(emphasis_at(tour, at(9.9), setup).results < 0.1F);
    CHECK(emphasis_at(tour, at(12), setup).results == 0);
    CHECK(emphasis_at(tour, at(20), setup).results == 1);
}

TEST_CASE("what is lit changes with the flight, half way at its middle") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    Tour tour = three_views;
    tour.steps[1].lit = {"splitter_head"};
    tour.steps[2].lit = {"telescope"};
    const auto fades = [&](double seconds, int part) {
        return emphasis_at(tour, tour_at(tour, seconds, {frame}, 1.5F, {2, 8}), setup)
            .fade_of(part);
    };
    const int telescope = 0;
    const int head = 4;
    CHECK(fades(8, telescope) == 0);
    CHECK(near(fades(9, telescope), 0.5, 1e-6));
    CHECK(fades(10, telescope) == 1);
    CHECK(fades(10, head) == 0);
    CHECK(near(fades(19, telescope), 0.5, 1e-6));
    CHECK(near(fades(19, head), 0.5, 1e-6));
    CHECK(fades(28, telescope) == 0);
    CHECK(fades(28, head) == 1);
}

TEST_CASE(
    "a step that asks is seen as in a lower picture, above the foot where the answers stand") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    TourStep step{StandardView::rear, "", ""};
    const Viewport viewport{1280, 500};
    const float free = viewport.height * (1 - asked_share);
    const Camera lower = tour_camera(step, frame, viewport.width / free);
    step.asks = TourQuestion{"Which?", {"This", "That"}, 0};
    const Camera asking = tour_camera(step, frame, viewport.aspect());
    CHECK(asking.yaw_rad == lower.yaw_rad);
    // What the lower picture has in its middle, at its scale.
    const auto middle = project(asking, lower.target, viewport);
    REQUIRE(middle);
    CHECK(near(middle->x, viewport.width / 2, 0.01));  // single precision
    CHECK(near(middle->y, free / 2, 0.01));
    CHECK(near(mm_per_pixel(asking, viewport) / mm_per_pixel(lower, {viewport.width, free}), 1,
               1e-5));
    for (unsigned corner = 0; corner < 8; ++corner) {
        const glm::vec3 share((corner & 1U) != 0, (corner & 2U) != 0, (corner & 4U) != 0);
        const auto seen = project(
            asking, glm::mix(frame.rear_bounds.low, frame.rear_bounds.high, share), viewport);
        REQUIRE(seen);
        CHECK(seen->y < free);
        CHECK(seen->y > 0);
    }
}
