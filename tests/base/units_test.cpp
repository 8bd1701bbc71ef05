#include <numbers>

#include "base/units.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace beamfork::literals;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
    a < b;
};
template <class A, class B>
concept Assignable = requires(A a, B b) {
    a = b;
};

}  // namespace

TEST_CASE("lengths and angles do not mix: such a sum does not compile") {
    CHECK(Addable<Millimetres, Millimetres>);
    CHECK_FALSE(Addable<Millimetres, Degrees>);
    CHECK_FALSE(Addable<Millimetres, Micrometres>);
    CHECK_FALSE(Addable<Degrees, Radians>);
    CHECK_FALSE(Comparable<Metres, Millimetres>);
    CHECK_FALSE(Assignable<Millimetres, Dioptres>);
    CHECK_FALSE(Addable<Millimetres, double>);
}

TEST_CASE("a half turn is 180 degrees and pi radians, there and back") {
    CHECK(near(to_radians(180_deg).value, std::numbers::pi, 1e-15));  // rounding
    CHECK(near(to_degrees(Radians{std::numbers::pi / 2}).value, 90, 1e-13));
    CHECK(near(to_degrees(to_radians(37.5_deg)).value, 37.5, 1e-13));
    CHECK(near(to_arcseconds(to_radians(1_deg)).value, 3600, 1e-9));
    CHECK(near(to_arcminutes(to_radians(1_deg)).value, 60, 1e-11));
    CHECK(near(to_radians(Arcminutes{60}).value, std::numbers::pi / 180, 1e-17));
}

TEST_CASE("a metre is a thousand millimetres and a micrometre a thousand nanometres") {
    CHECK(to_millimetres(Metres{1.5}) == 1500_mm);
    CHECK(to_metres(2500_mm).value == 2.5);
    CHECK(near(nanometres(546.074).value, 0.546074, 1e-16));
    CHECK(near(to_millimetres(nanometres(546.074)).value, 546.074e-6, 1e-18));
    CHECK(to_micrometres(1.5_mm).value == 1500);
    CHECK(near(in_nanometres(nanometres(546.074)), 546.074, 1e-12));
}

TEST_CASE(
    "a kilogram is a thousand grams, and a newton at a millimetre turns with a thousandth Nm") {
    CHECK(to_kilograms(Grams{2500}).value == 2.5);
    CHECK(newton_millimetres(2500).value == 2.5);
    CHECK_FALSE(Addable<Grams, Kilograms>);
    CHECK_FALSE(Comparable<NewtonMetres, Millimetres>);
}

TEST_CASE("quantities add, scale and divide like the numbers they wrap") {
    CHECK(35_mm + 110_mm == 145_mm);
    CHECK(116_mm - 146_mm == -30_mm);
    CHECK(2 * 37.5_mm == 75_mm);
    CHECK(75_mm / 2 == 37.5_mm);
    CHECK(75_mm / 25_mm == 3.0);
    CHECK(-(5_mm) < 0_mm);
    CHECK(abs(-(5_mm)) == 5_mm);
    Millimetres sum = 35_mm;
    sum += 110_mm;
    sum -= 5_mm;
    CHECK(sum == 140_mm);
}
