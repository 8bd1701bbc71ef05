// What a bare face keeps beyond the critical angle, against Fresnel's formulas summed over the pupil by hand.
#include <cmath>

#include "glass/glass.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/light/clipping.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// Unpolarised, from glass of index n into air (M. Born and E. Wolf, Principles of Optics, 7th ed., sec. 1.5.2, eqs. 20).
double reflected(double n, double cosine) {
    const double sine = n * std::sqrt(1 - cosine * cosine);
    if (sine >= 1) return 1;
    const double out = std::sqrt(1 - sine * sine);
    const double s = (n * cosine - out) / (n * cosine + out);
    const double p = (cosine - n * out) / (cosine + n * out);
    return (s * s + p * p) / 2;
}

// Of an f/N cone by the sine condition, on a face at 45 degrees in that glass, half a million directions.
double kept_at_one_face(double n, double N) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < 800; ++i) {
        for (int k = 0; k < 800; ++k) {
            const double x = (i + 0.5) / 400 - 1;
            const double y = (k + 0.5) / 400 - 1;
            if (x * x + y * y > 1) continue;
            const double across = x / (2 * N) / n;  // Snell: the part across the axis over n
            const double up = y / (2 * N) / n;
            const double along = std::sqrt(1 - across * across - up * up);
            sum += reflected(n, (along + across) / std::sqrt(2.0));
            ++count;
        }
    }
    return sum / count;
}

}  // namespace

TEST_CASE("a bare prism of fused silica at f/8 keeps on axis what Fresnel reflects beyond the "
          "critical angle") {
    Setup setup = wide_setup();
    the<Refractor>(setup).aperture = {100};
    the<Refractor>(setup).focal_length = {800};
    auto& head = the<SplitterHead>(setup);
    head.glass = "fused silica";
    head.reflecting_faces = FaceCoating::bare;
    const double n =
        refractive_index(standard_catalogue().find(head.glass).value(), spectral_line::e).value();
    const Train train =
        focused_train(setup, setup.chosen, *solved_focus(setup, setup.chosen)).value();
    const double one_face = kept_at_one_face(n, 8);
    CHECK(near(one_face, 0.967, 0.001));  // as an exact trace of another program has it
    for (const LightForm form : {LightForm::many_rays, LightForm::few_rays}) {
        const EyeClipping light = clipping(train, Eye::left, {4096, form});
        const LitPoint& middle = light.points.front();
        CHECK(near(middle.relative, one_face,
                   0.003));  // the share that leaks by 4096 rays, what is kept by 96
        REQUIRE_FALSE(middle.ends.empty());
        CHECK(middle.ends.front().is_leak);
        double sum = middle.relative;
        for (const EndShare& end : middle.ends)
            sum += end.share;
        CHECK(near(sum, 1, 1e-12));
    }
}
