#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/newtonian.hpp"
#include "parts/refractor.hpp"
#include "reference/visual_telescope.hpp"
#include "study/findings/report.hpp"
#include "study/light/magnification.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

FocusBudget solved_budget(const Setup& setup) {
    auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    return *std::move(budget);
}

Magnification seen(const Setup& setup) {
    return magnification(setup, setup.chosen, solved_budget(setup));
}

}  // namespace

TEST_CASE("the true field is twice the angle whose tangent is half the field stop over the focal "
          "length") {
    for (const auto& row : reference::true_fields) {
        CAPTURE(row.focal_length);
        Setup setup = plain_setup();
        the<Refractor>(setup).focal_length = Millimetres{row.focal_length};
        the<EyepiecePair>(setup).field_stop = Millimetres{row.field_stop};
        CHECK(near(seen(setup).true_field.value, row.degrees, 1e-5));  // last printed digit
    }
}

TEST_CASE(
    "magnification is F over f, the exit pupil the aperture over it, or f over the f-number") {
    // Smith, Modern Optical Engineering, 4th ed., sec. 13.1, Eq. 13.5.
    Setup setup = plain_setup({bare_lens(-120, 0)});
    const Magnification result = seen(setup);
    CHECK(result.shifter_factor > 1.5);
    CHECK(near(result.shifter_factor, solved_budget(setup).factor(), 1e-12));
    CHECK(near(result.effective_focal_length.value, 480 * result.shifter_factor, 1e-9));
    CHECK(near(result.focal_ratio, 6 * result.shifter_factor, 1e-12));
    CHECK(near(result.magnification, result.effective_focal_length.value / 25, 1e-12));
    CHECK(near(result.exit_pupil.value, 80 / result.magnification, 1e-12));
    CHECK(near(result.exit_pupil.value, 25 / result.focal_ratio, 1e-12));
}

TEST_CASE("a near target is magnified more: its image lies farther out than the focal length") {
    // u = 5 m, F = 420 mm: image at F u / (u - F) = 458.52 mm (Newton), so 18.34x at 25 mm; 2 atan(10.5 / 458.52) =
    // 2.624 degrees; 70 / 18.34 = 3.82 mm; f/6.55.
    Setup setup = plain_setup();
    the<Refractor>(setup).aperture = {70};
    the<Refractor>(setup).focal_length = {420};
    the<EyepiecePair>(setup).field_stop = {21};
    the<Target>(setup).distance = Metres{5};
    const Magnification near_by = seen(setup);
    CHECK(near(near_by.effective_focal_length.value, 420.0 * 5000 / 4580, 1e-9));
    CHECK(near(near_by.magnification, 18.34, 0.005));  // printed digits
    CHECK(near(near_by.true_field.value, 2.624, 0.0005));
    CHECK(near(near_by.exit_pupil.value, 3.82, 0.005));
    CHECK(near(near_by.focal_ratio, 6.55, 0.005));
}

TEST_CASE("distance and field angle are counted from the front lens or the main mirror's rim: "
          "traced chief rays of near "
          "targets agree") {
    Refractor refractor;
    Newtonian newtonian;
    CassegrainMovingMirror cassegrain;
    cassegrain.travel_down = {20};  // the image of a target so near lies far out
    refractor.back_focus = newtonian.back_focus = cassegrain.back_focus = {260};
    for (const PartBody& telescope :
         {PartBody{refractor}, PartBody{newtonian}, PartBody{cassegrain}}) {
        CAPTURE(kind_of(telescope).key);
        Setup setup = wide_setup();
        setup.parts.front().body = telescope;
        the<Target>(setup).distance = Metres{12};
        const FocusBudget budget = solved_budget(setup);
        REQUIRE(budget.reaches);
        const auto train = focused_train(setup, setup.chosen, budget);
        REQUIRE(train.has_value());
        for (const Eye eye : both_eyes) {
            const double traced =
                std::sqrt(std::abs(glm::determinant(field_map(*train, eye).stop_from_slope)));
            // Chief rays at 1e-4; and the mirrors' rim and vertex are not quite one place for a chief ray: 1e-6 of it.
            CHECK(near(traced, seen(setup).effective_focal_length.value, 1e-5 * traced));
        }
    }
}

TEST_CASE("a relay turns the image, and its sizes are sizes") {
    // Thin lens at d from the image behind it: factor 1 - d/f (Smith, Eq. 2.4), negative for d > f > 0.
    Setup setup = plain_setup();
    const FocusBudget plain = solved_budget(setup);
    FocusBudget relayed = plain;
    relayed.shifters = {{2, {170}, 1 - 170.0 / 100, {0}}};
    const Magnification result = magnification(setup, setup.chosen, relayed);
    const Magnification before = magnification(setup, setup.chosen, plain);
    CHECK(result.image_turned);
    CHECK_FALSE(before.image_turned);
    CHECK(near(result.magnification, 0.7 * before.magnification, 1e-9));
    CHECK(near(result.exit_pupil.value, before.exit_pupil.value / 0.7, 1e-9));
    CHECK(result.true_field.value > before.true_field.value);
}

TEST_CASE("traced chief rays have the effective focal length that the shifter's factor promises") {
    for (const auto& chain : {std::vector<Part>{},
                              {bare_lens(-120, 0)},
                              {bare_lens(-250, 0), bare_lens(-180, 20)},
                              {bare_lens(400, 0)}}) {
        const Setup setup = wide_setup(chain);
        const FocusBudget budget = solved_budget(setup);
        REQUIRE(budget.reaches);
        const auto train = build_train(setup, setup.chosen, budget.drawtube);
        REQUIRE(train.has_value());
        for (const Eye eye : both_eyes) {
            const double traced =
                std::sqrt(std::abs(glm::determinant(field_map(*train, eye).stop_from_slope)));
            // Chief rays at 1e-4: the distortion of glass and tangents is of relative order 1e-8.
            CHECK(near(traced, seen(setup).effective_focal_length.value, 1e-3));
        }
    }
}
