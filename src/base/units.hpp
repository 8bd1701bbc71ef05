// Lengths, angles, wavelengths, eye corrections, masses and torques as different types, so that they cannot be mixed.
// Each wraps one double in the unit of its name; kernels unwrap to mm, rad and um and nothing else.
// Conversions between units live here alone.
#pragma once

#include <cmath>
#include <compare>
#include <numbers>

namespace beamfork {

template <class Unit>
struct Quantity {
    double value = 0;

    constexpr auto operator<=>(const Quantity&) const = default;
    constexpr Quantity operator-() const { return {-value}; }
    constexpr Quantity operator+(Quantity other) const { return {value + other.value}; }
    constexpr Quantity operator-(Quantity other) const { return {value - other.value}; }
    constexpr Quantity operator*(double factor) const { return {value * factor}; }
    constexpr Quantity operator/(double divisor) const { return {value / divisor}; }
    constexpr double operator/(Quantity other) const { return value / other.value; }
    constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
    constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }
};

template <class Unit>
constexpr Quantity<Unit> operator*(double factor, Quantity<Unit> quantity) {
    return quantity * factor;
}

template <class Unit>
Quantity<Unit> abs(Quantity<Unit> quantity) {
    return {std::abs(quantity.value)};
}

using Millimetres = Quantity<struct MillimetreUnit>;
using Micrometres = Quantity<struct MicrometreUnit>;
using Degrees = Quantity<struct DegreeUnit>;
using Radians = Quantity<struct RadianUnit>;
using Arcminutes = Quantity<struct ArcminuteUnit>;
using Arcseconds = Quantity<struct ArcsecondUnit>;
using Dioptres = Quantity<struct DioptreUnit>;  ///< 1/m; negative for a short-sighted eye
using Metres = Quantity<struct MetreUnit>;
using Grams = Quantity<struct GramUnit>;
using Kilograms = Quantity<struct KilogramUnit>;
using NewtonMetres = Quantity<struct NewtonMetreUnit>;

constexpr Radians to_radians(Degrees angle) { return {angle.value * std::numbers::pi / 180}; }
constexpr Radians to_radians(Arcminutes angle) {
    return {angle.value * (std::numbers::pi / 180 / 60)};
}
constexpr Degrees to_degrees(Radians angle) { return {angle.value * 180 / std::numbers::pi}; }
constexpr Arcminutes to_arcminutes(Radians angle) { return {to_degrees(angle).value * 60}; }
constexpr Arcseconds to_arcseconds(Radians angle) {
    return {angle.value * (180 * 3600 / std::numbers::pi)};
}
constexpr Millimetres to_millimetres(Metres length) { return {length.value * 1000}; }
constexpr Millimetres to_millimetres(Micrometres length) { return {length.value / 1000}; }
constexpr Micrometres to_micrometres(Millimetres length) { return {length.value * 1000}; }
constexpr Metres to_metres(Millimetres length) { return {length.value / 1000}; }
constexpr Kilograms to_kilograms(Grams mass) { return {mass.value / 1000}; }
constexpr NewtonMetres newton_millimetres(double moment) { return {moment / 1000}; }
constexpr Micrometres nanometres(double wavelength_nm) { return {wavelength_nm / 1000}; }
constexpr double in_nanometres(Micrometres wavelength) { return wavelength.value * 1000; }

namespace literals {
constexpr Millimetres operator""_mm(long double v) { return {static_cast<double>(v)}; }
constexpr Millimetres operator""_mm(unsigned long long v) { return {static_cast<double>(v)}; }
constexpr Degrees operator""_deg(long double v) { return {static_cast<double>(v)}; }
constexpr Degrees operator""_deg(unsigned long long v) { return {static_cast<double>(v)}; }
constexpr Micrometres operator""_um(long double v) { return {static_cast<double>(v)}; }
}  // namespace literals

}  // namespace beamfork
