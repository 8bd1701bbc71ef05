// A drawer that needs a fixed time and some for each pixel, as all do: what the detail settles at.
#include "app/stage/drag_detail.hpp"

#include <doctest/doctest.h>

using beamfork::DragDetail;

namespace {

struct SlowDrawer {
    double fixed_s = 0;
    double all_pixels_s = 0;
    [[nodiscard]] double time(float share) const {
        return fixed_s + all_pixels_s * static_cast<double>(share) * static_cast<double>(share);
    }
};

void draw(DragDetail& detail, const SlowDrawer& drawer, int frames) {
    for (int i = 0; i < frames; ++i)
        detail.took(drawer.time(detail.share()));
}

}  // namespace

TEST_CASE("what is fast enough is drawn with every pixel") {
    DragDetail detail;
    draw(detail, {0.001, 0.015}, 1000);
    CHECK(detail.share() == 1);
}

TEST_CASE("a slow drawer follows the hand within a few frames, with as many pixels as it can") {
    DragDetail detail;
    const SlowDrawer software{0.008, 0.032};
    draw(detail, software, 4);
    CHECK(software.time(detail.share()) <= DragDetail::most_s);
    CHECK(software.time(detail.share() * 1.5F) > DragDetail::most_s);
    const float settled = detail.share();
    for (int i = 0; i < 200; ++i) {
        draw(detail, software, 1);
        CHECK(detail.share() == settled);  // it does not swing
    }
}

TEST_CASE("one late frame changes nothing") {
    DragDetail detail;
    draw(detail, {0, 0.010}, 20);
    detail.took(0.2);
    draw(detail, {0, 0.010}, 1);
    CHECK(detail.share() == 1);
}

TEST_CASE("every pixel comes back when there is time again") {
    DragDetail detail;
    draw(detail, {0, 0.5}, 20);
    CHECK(detail.share() < 0.5F);
    draw(detail, {0, 0.010}, 29);
    CHECK(detail.share() < 1);
    draw(detail, {0, 0.010}, 1);
    CHECK(detail.share() == 1);
}

TEST_CASE("a drawer that is always too slow stays at the coarsest") {
    DragDetail detail;
    draw(detail, {0.1, 0.5}, 100);
    CHECK(detail.share() == 0.375F);
}
