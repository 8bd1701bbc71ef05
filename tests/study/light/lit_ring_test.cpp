// Means around rings of the field against the mean of 720 directions, each counted by rays.
#include "study/focus/focus_budget.hpp"
#include "study/light/clipping.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train ring_train(const Setup& setup) {
    return focused_train(setup, setup.chosen, *solved_focus(setup, setup.chosen)).value();
}

// Of the light that the telescope's own obstruction lets through, what arrives; leaks count as lost.
double mean_of_directions(const Train& train, Eye eye, double fraction, int directions) {
    const EyePath& path = train.path(eye);
    const BundleTracer tracer(path, primary_wavelength);
    const FieldMap map = field_map(train, eye);
    const double radius = fraction * inner_radius(path.surfaces.back().aperture);
    const auto pupil = sunflower(400);
    double mean = 0;
    for (const glm::dvec2& azimuth : rim(directions)) {
        const BundleEnds ends =
            tracer.trace(bundle_into(train, map.slope_at(radius * azimuth), pupil));
        double reached = 0;
        double open = 0;
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const bool is_own = ends.fate[i] == RayFate::clipped
                                && path.surfaces[ends.surface[i]].kind == SurfaceKind::obstruction;
            reached += ends.reached(i) ? 1 : 0;
            open += is_own ? 0 : 1;
        }
        mean += open > 0 ? reached / open / directions : 0;
    }
    return mean;
}

// Of shared/found's kind: square prisms of 17.5 mm that turn with the arms, a narrow cone and a wide field.
Setup square_prisms(double pupil_distance) {
    Setup setup = plain_setup();
    auto& telescope = the<Refractor>(setup);
    telescope.aperture = {60};
    telescope.focal_length = {900};
    telescope.back_focus = {150};
    auto& head = the<SplitterHead>(setup);
    head.entry_clear = head.exit_clear = {30};
    head.nose_length = {4};
    head.entry_air = {14};
    head.prism_width = {17.5};
    head.arm_offset = {37};
    head.reflecting_faces = FaceCoating::mirrored;
    head.seat_height = {30};
    head.hinge_low = {0};
    the<EyepiecePair>(setup).field_stop = {21};
    the<EyepiecePair>(setup).barrel_clear = {28};
    the<EyepiecePair>(setup).barrel_length = {20};
    the<Observer>(setup).pupil_distance = {pupil_distance};
    return setup;
}

constexpr double promised = 0.005;  // of the objective's light

}  // namespace

TEST_CASE("square prisms light the field's edge alike at every angle of the arms") {
    // By an exact trace of another program: 0.292 at either distance, the fully lit field 12.46 mm wide.
    for (const double distance : {63.0, 67.0, 71.48}) {
        CAPTURE(distance);
        const Train train = ring_train(square_prisms(distance));
        for (const LightForm form : {LightForm::many_rays, LightForm::few_rays}) {
            double brighter = 0;  // of the arm whose squares all turn together
            for (const Eye eye : both_eyes) {
                const EyeClipping light = clipping(train, eye, {1024, form});
                CHECK(near(light.edge_relative, mean_of_directions(train, eye, 1, 720), promised));
                brighter = std::max(brighter, light.edge_relative);
                CHECK(near(light.fully_illuminated_diameter.value, 12.46,
                           0.06));  // printed digits, 48 rays of the rim
                CHECK(near(middle_and_edge(train, eye, {1024, form}).edge, light.edge_relative,
                           1e-12));
            }
            CHECK(near(brighter, 0.292, promised));
        }
    }
}

TEST_CASE("the light at the edge goes smoothly with a prism's width, also where the image lies "
          "close to a face") {
    // Short of focus by 30 mm the image falls near the last face, and all light of a direction comes or goes at once.
    Setup setup = square_prisms(63);
    the<Refractor>(setup).aperture = {100};
    the<Refractor>(setup).focal_length = {700};
    the<Refractor>(setup).back_focus = {81};
    for (double width = 19.9; width < 21; width += 0.2) {
        CAPTURE(width);
        the<SplitterHead>(setup).prism_width = {width};
        const Train train = ring_train(setup);
        const double expected = mean_of_directions(train, Eye::left, 1, 720);
        for (const LightForm form : {LightForm::many_rays, LightForm::few_rays})
            CHECK(near(clipping(train, Eye::left, {1024, form}).edge_relative, expected, promised));
    }
}

TEST_CASE("a hundredth of a millimetre of a prism's width or a hundredth of a degree of an arm "
          "changes the edge by no more than it should") {
    const auto edge = [](double width, double distance, LightForm form) {
        Setup setup = square_prisms(distance);
        the<SplitterHead>(setup).prism_width = {width};
        return middle_and_edge(ring_train(setup), Eye::right, {1024, form}).edge;
    };
    for (const LightForm form : {LightForm::many_rays, LightForm::few_rays}) {
        for (double width = 16; width < 21; width += 0.7) {
            CAPTURE(width);
            // A prism 1 mm wider lights at most a tenth more here; counting of rays leaves a thousandth or two.
            CHECK(near(edge(width + 0.01, 63, form), edge(width, 63, form), 0.004));
            CHECK(near(edge(width, 63.01, form), edge(width, 63, form), 0.004));
        }
    }
}

TEST_CASE("rings of random setups have the mean of 720 directions") {
    Random random(95);
    int dimmed = 0;
    for (int i = 0; i < 12; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        the<SplitterHead>(setup).reflecting_faces = FaceCoating::mirrored;
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 60)});
        if (!train) continue;
        const EyeClipping quick = clipping(*train, Eye::left, {192, LightForm::few_rays});
        const EyeClipping settled = clipping(*train, Eye::left);
        for (const std::size_t ring : {5, 8, 10}) {
            const LitRing& one = settled.rings[ring];
            if (one.relative > 0.999 || one.relative < 0.001) continue;
            // What leaking faces keep is for leaky_faces_test.cpp.
            if (std::any_of(one.ends.begin(), one.ends.end(),
                            [](const EndShare& end) { return end.is_leak; }))
                continue;
            ++dimmed;
            const double expected = mean_of_directions(*train, Eye::left, one.field_fraction, 720);
            CHECK(near(one.relative, expected, promised));
            CHECK(near(quick.rings[ring].relative, expected, promised));
        }
    }
    CHECK(dimmed >= 6);
}
