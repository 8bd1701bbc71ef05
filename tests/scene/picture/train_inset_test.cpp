#include "scene/picture/picture.hpp"
#include "scene/picture/train_inset.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr Viewport whole_view{1280, 720};

const Frame& cured_frame() {
    static const Setup setup = cured_setup();
    static const Frame made = build_frame(setup, report_of(setup));
    return made;
}

Camera seen_as(StandardView view) {
    return standard_view(view, cured_frame(), whole_view.aspect());
}

}  // namespace

TEST_CASE("a picture that shows the whole train needs no inset") {
    for (const StandardView view : {StandardView::side, StandardView::top, StandardView::sky})
        CHECK_FALSE(train_inset(cured_frame(), seen_as(view), whole_view, 0).has_value());
}

TEST_CASE("where the tube runs out of the picture an inset shows the train whole, and what is seen "
          "of it") {
    for (const StandardView view : {StandardView::overview, StandardView::rear}) {
        const auto inset = train_inset(cured_frame(), seen_as(view), whole_view, 30);
        REQUIRE(inset.has_value());
        CHECK(inset->box.low.x >= 0);
        CHECK(inset->box.high.y <= whole_view.height - 30);
        CHECK(inset->bodies.size() > 8);
        for (const InsetBody& body : inset->bodies) {
            for (const glm::vec2 corner : body.outline) {
                CHECK(glm::clamp(corner, inset->box.low, inset->box.high) == corner);
            }
        }
        // Light runs to the right here: the objective's end of the train lies left of what is seen.
        float leftmost = whole_view.width;
        for (const InsetBody& body : inset->bodies)
            for (const glm::vec2 corner : body.outline)
                leftmost = std::min(leftmost, corner.x);
        CHECK(leftmost < inset->seen.low.x);
        CHECK(inset->seen.high.x <= inset->box.high.x);
    }
}

TEST_CASE("outlines in the inset are convex") {
    const auto inset = train_inset(cured_frame(), seen_as(StandardView::overview), whole_view, 0);
    REQUIRE(inset.has_value());
    for (const InsetBody& body : inset->bodies) {
        const std::size_t count = body.outline.size();
        for (std::size_t i = 0; i < count; ++i) {
            const glm::vec2 a = body.outline[i];
            const glm::vec2 b = body.outline[(i + 1) % count];
            const glm::vec2 c = body.outline[(i + 2) % count];
            CHECK((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > -1e-3F);
        }
    }
}

TEST_CASE("a picture too small for an inset has none") {
    CHECK_FALSE(
        train_inset(cured_frame(), seen_as(StandardView::overview), {300, 200}, 0).has_value());
}
