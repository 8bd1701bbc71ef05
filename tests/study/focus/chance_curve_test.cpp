// Sums of rectangles and normal values against their closed forms.
#include <cmath>

#include "study/focus/chance_curve.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <boost/math/distributions/normal.hpp>

using namespace beamfork;

namespace {

constexpr double folded = 1e-4;  // of a grid of a thousand cells, as the header promises

// Sum of n values, each anywhere within +-1 with equal chance: Irwin (Biometrika 19, 225, 1927) and Hall (ibid., 240),
// sum of (-1)^k C(n, k) (x - k)^n / n! with x in units of 0..n.
double irwin_hall(int n, double limit) {
    const double x = (limit + n) / 2;
    double sum = 0;
    double choose = 1;
    double factorial = 1;
    for (int k = 1; k <= n; ++k)
        factorial *= k;
    for (int k = 0; k <= n && k < x; ++k) {
        sum += (k % 2 == 0 ? 1 : -1) * choose * std::pow(x - k, n);
        choose *= static_cast<double>(n - k) / (k + 1);
    }
    return sum / factorial;
}

}  // namespace

TEST_CASE("one rectangle has the share of it that lies below, to the digit") {
    const ChanceCurve curve({5}, 0);
    CHECK(near(curve.below(-3), 0.2, 1e-12));
    CHECK(near(curve.below(0), 0.5, 1e-12));
    CHECK(curve.below(-5) == 0);
    CHECK(curve.below(5.001) == 1);
    CHECK(near(curve.standard(), 5 / std::sqrt(3.0), 1e-12));
}

TEST_CASE("equal rectangles add as Irwin and Hall have it") {
    for (const int count : {2, 3, 5, 8}) {
        CAPTURE(count);
        const ChanceCurve curve(std::vector<double>(static_cast<std::size_t>(count), 1.0), 0);
        for (double limit = -count; limit <= count; limit += 0.31)
            CHECK(near(curve.below(limit), irwin_hall(count, limit), folded));
    }
}

TEST_CASE("two unequal rectangles make a trapezium") {
    // Half widths 3 and 1: the density rises from -4 to -2 and is 1/6 from there to 2.
    const ChanceCurve curve({1, 3}, 0);
    CHECK(near(curve.below(-3), 1.0 / 24, folded));
    CHECK(near(curve.below(-2), 4.0 / 24, folded));
    CHECK(near(curve.below(1), 0.5 + 1.0 / 6, folded));
}

TEST_CASE("normal parts alone are normal, and one rectangle blurred by them has the closed form") {
    const boost::math::normal_distribution<> normal(0, 2);
    const ChanceCurve plain({}, 2);
    for (const double limit : {-7.0, -2.0, 0.3, 4.0})
        CHECK(near(plain.below(limit), boost::math::cdf(normal, limit), folded));
    // The mean over +-3 of the normal chance, by the mid-point rule with ten thousand steps.
    const ChanceCurve both({3}, 2);
    for (const double limit : {-6.0, -1.5, 2.5}) {
        double mean = 0;
        for (int i = 0; i < 10000; ++i)
            mean += boost::math::cdf(normal, limit - 3 + 6 * (i + 0.5) / 10000) / 10000;
        CHECK(near(both.below(limit), mean, folded));
    }
}

TEST_CASE("nothing that is unsure leaves a step") {
    const ChanceCurve exact({}, 0);
    CHECK(exact.below(-1e-9) == 0);
    CHECK(exact.below(1e-9) == 1);
}
