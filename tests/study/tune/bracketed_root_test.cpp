#include <cmath>
#include <functional>
#include <vector>

#include "study/tune/bracketed_root.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <boost/math/tools/roots.hpp>

using namespace beamfork;

namespace {

struct Counted {
    std::function<double(double)> function;
    mutable int calls = 0;
    double operator()(double x) const {
        ++calls;
        return function(x);
    }
};

}  // namespace

TEST_CASE("crossings are those that another root finder finds") {
    // Boost.Math's TOMS 748 (Alefeld, Potra and Shi, ACM Trans. Math. Software 21, 327-344, 1995).
    const std::vector<std::function<double(double)>> functions{
        [](double x) { return x * x - 2; },
        [](double x) { return 2 - x * x; },
        [](double x) { return std::exp(x) - 3; },
        [](double x) { return std::cos(x) - x; },
        [](double x) { return x * x * x - 1e-6; },
        [](double x) { return std::atan(50 * (x - 0.3)); },
    };
    for (std::size_t i = 0; i < functions.size(); ++i) {
        CAPTURE(i);
        const Counted function{functions[i]};
        const double low = -0.25;
        const double high = 3;
        const Bracket found =
            narrow_bracket(function, {low, high, functions[i](low), functions[i](high)}, 1e-12);
        std::uintmax_t most = 100;
        const auto other = boost::math::tools::toms748_solve(
            functions[i], low, high, boost::math::tools::eps_tolerance<double>(50), most);
        CHECK(near(found.middle(), (other.first + other.second) / 2, 2e-12));  // both widths
        // Halving takes log2(3.25 / 1e-12) = 41.6, so 42 steps; this one at most one more, and one for rounding.
        CHECK(function.calls <= 44);
    }
}

TEST_CASE("at a jump the bracket closes on it, and both sides are told") {
    const auto step = [](double x) { return x < 0.7 ? -1.0 : 2.0; };
    const Bracket found = narrow_bracket(step, {0, 1, -1, 2}, 1e-9);
    CHECK(found.high - found.low <= 1e-9);
    CHECK(near(found.middle(), 0.7, 1e-9));
    CHECK(found.at_low == -1);
    CHECK(found.at_high == 2);
}

TEST_CASE("an end that is zero is the crossing") {
    const auto line = [](double x) { return x - 1; };
    CHECK(narrow_bracket(line, {1, 2, 0, 1}, 1e-9).middle() == 1);
    CHECK(narrow_bracket(line, {0, 1, -1, 0}, 1e-9).middle() == 1);
}
