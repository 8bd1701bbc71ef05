// A number as somebody types it: with a unit of its own, as a fraction or as a small sum, such as "1 1/4 in",
// "35+1", "2*17,5", "3° 20′". The unit of the entry decides what a plain number means and which unit words may
// stand beside it.
#pragma once

#include <string>
#include <string_view>

#include "base/error.hpp"
#include "base/units.hpp"

namespace beamfork {

/// The unit in which a number is kept and shown.
enum class NumberUnit { none, millimetre, degree, dioptre, metre, times, percent, arcminute, gram };

/// As printed after a number: "mm", "°", "D", "m", "×", "%", "′", "g" or "".
std::string_view symbol(NumberUnit unit);

/// "45.5 mm", "3°", "2.6×": the number is text already.
std::string with_symbol(std::string_view number, NumberUnit unit);

/// The value in `unit`, always finite. Plain numbers are in that unit already; beside them stand
///   + - * / ( ) and, as printed, − × ÷; a decimal point or comma; ½ ¼ ¾ and mixed fractions: 1 1/4;
///   unit words of the same measure, which hold for the product or quotient before them: 1/2 in is half an inch;
///   a smaller unit behind a larger one: 1 ft 2 in, 3° 20′.
/// In a sum either all numbers have a unit or those that have one have the entry's own, so that 35 + 1 in is
/// refused. Lengths: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). An error is one
/// sentence that says what was found, what is expected, and the nearest known word.
Result<double> parse_typed(std::string_view text, NumberUnit unit);

/// What an entry in that unit takes, for help: "Takes sums such as 35+1 and other units: 4.5 cm, 1.25 in."
std::string typing_help(NumberUnit unit);

template <class Quantity>
inline constexpr NumberUnit unit_of = NumberUnit::none;
template <>
inline constexpr NumberUnit unit_of<Millimetres> = NumberUnit::millimetre;
template <>
inline constexpr NumberUnit unit_of<Metres> = NumberUnit::metre;
template <>
inline constexpr NumberUnit unit_of<Degrees> = NumberUnit::degree;
template <>
inline constexpr NumberUnit unit_of<Dioptres> = NumberUnit::dioptre;
template <>
inline constexpr NumberUnit unit_of<Grams> = NumberUnit::gram;

/// The same as a strong type: parse_quantity<Millimetres>("1.25 in").
template <class Quantity>
Result<Quantity> parse_quantity(std::string_view text) {
    static_assert(unit_of<Quantity> != NumberUnit::none, "no words are known for this unit");
    return parse_typed(text, unit_of<Quantity>).map([](double value) { return Quantity{value}; });
}

}  // namespace beamfork
