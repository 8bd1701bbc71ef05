// CHECK(near(actual, expected, within)): two numbers agree to a tolerance in their own unit.
// doctest::Approx scales its tolerance with 1 + the value, which calls 0.000550 and 0.000558 equal; here the
// tolerance is absolute and always stated, with its reason beside it. A NaN is near nothing.
#pragma once

#include <cmath>
#include <iomanip>
#include <ostream>

#include "base/units.hpp"

/// Of doubles, at lengths of some hundred mm.
inline constexpr double rounding = 1e-9;

struct Nearness {
    double actual;
    double expected;
    double within;

    explicit operator bool() const { return std::abs(actual - expected) <= within; }
    bool operator!() const { return !static_cast<bool>(*this); }

    friend std::ostream& operator<<(std::ostream& out, const Nearness& self) {
        const auto before = out.precision();
        out << std::setprecision(12) << self.actual << " against " << self.expected << ", apart by "
            << std::setprecision(4) << std::abs(self.actual - self.expected) << ", allowed "
            << self.within;
        out.precision(before);
        return out;
    }
};

inline Nearness near(double actual, double expected, double within) {
    return {actual, expected, within};
}

/// A length, an angle ... against a number in its unit, as sources print it, or against another of its kind.
template <class Unit>
Nearness near(beamfork::Quantity<Unit> actual, double expected, double within) {
    return {actual.value, expected, within};
}
template <class Unit>
Nearness near(beamfork::Quantity<Unit> actual, beamfork::Quantity<Unit> expected, double within) {
    return {actual.value, expected.value, within};
}
