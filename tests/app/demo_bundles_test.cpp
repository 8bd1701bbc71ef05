// Every ray through the trains of all demos ends as the scalar reference says, at focus and with every eyepiece.
#include "desk/open_setup.hpp"
#include "study/focus/focus_budget.hpp"
#include "support/bundle_agreement.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

// A wider disc than the objective, from points over the field stop and past its edge.
RayBundle light_over_field(const Train& train, Eye eye) {
    const FieldMap map = field_map(train, eye);
    const double radius = inner_radius(train.path(eye).surfaces.back().aperture);
    RayBundle bundle;
    for (const glm::dvec2& field : sunflower(12)) {
        for (const glm::dvec2& pupil : sunflower(100))
            bundle.add(ray_into(train, map.slope_at(1.1 * radius * field), 1.02 * pupil, 10));
    }
    return bundle;
}

}  // namespace

TEST_CASE("the fast tracer ends every ray of every demo as the reference does") {
    for (const Demo& demo : demos()) {
        CAPTURE(demo.asset);
        const auto read = open_demo(demo.asset);
        REQUIRE(read);
        const Setup& setup = read->document.setup;
        Fates fates;
        for (const std::size_t eyepiece : parts_with_role(setup, Role::eyepiece)) {
            const Choice choice{eyepiece, setup.chosen.observer, setup.chosen.target};
            const auto budget = focus_budget(setup, choice);
            REQUIRE(budget);
            const auto train = focused_train(setup, choice, *budget);
            REQUIRE(train);
            for (const Eye eye : both_eyes) {
                const RayBundle bundle = light_over_field(*train, eye);
                for (std::size_t w = 0; w < wavelength_count; ++w)
                    fates += check_agreement(train->path(eye), bundle, w);
                CHECK(BundleTracer(train->path(eye), primary_wavelength).is_fast());
            }
        }
        CHECK(fates.reached > 0);
        CHECK(fates.clipped > 0);
    }
}
