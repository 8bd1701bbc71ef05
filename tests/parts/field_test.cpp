#include <limits>

#include "parts/field.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

FieldInfo length() { return length_info("length_mm", "Length", "How long it is.", -5, 100, 0, 50); }

FieldInfo colour() {
    FieldInfo info;
    info.key = "colour";
    info.type = FieldType::choice;
    info.choices = {"crimson", "emerald"};
    return info;
}

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("a number fits its field from the lowest to the highest accepted value, ends included") {
    CHECK_FALSE(objection(length(), -5.0).has_value());
    CHECK_FALSE(objection(length(), 100.0).has_value());
    CHECK_FALSE(objection(length(), 0.0).has_value());
    CHECK(objection(length(), 100.5) == "length_mm must be from -5 to 100, not 100.5");
    CHECK(objection(length(), -5.25) == "length_mm must be from -5 to 100, not -5.25");
}

TEST_CASE("what is no number at all does not fit a number's field") {
    CHECK(objection(length(), none) == "length_mm must be a finite number");
    CHECK(objection(length(), infinity) == "length_mm must be a finite number");
    CHECK(objection(length(), std::string("long")) == "length_mm must be a number");
    CHECK(objection(length(), std::monostate{}) == "length_mm must be a number");
}

TEST_CASE("only an optional number may be left unstated") {
    FieldInfo optional = length();
    optional.type = FieldType::optional_number;
    CHECK_FALSE(objection(optional, std::monostate{}).has_value());
    CHECK_FALSE(objection(optional, 7.0).has_value());
    CHECK(objection(optional, none).has_value());
    CHECK(objection(optional, 101.0).has_value());
    CHECK(objection(optional, std::string("7")).has_value());
}

TEST_CASE("a wrong word is refused with all words and the nearest one") {
    CHECK_FALSE(objection(colour(), std::string("crimson")).has_value());
    CHECK(objection(colour(), std::string("crimsn"))
          == "colour cannot be 'crimsn'; it must be one of: crimson, emerald; did you mean "
             "'crimson'?");
    CHECK(objection(colour(), std::string("xxxxxxxxxxxx"))
          == "colour cannot be 'xxxxxxxxxxxx'; it must be one of: crimson, emerald");
    CHECK(objection(colour(), 3.0) == "colour must be one of: crimson, emerald");
    CHECK(objection(colour(), std::monostate{}).has_value());
}

TEST_CASE("every unit but a bare number prints its symbol") {
    CHECK(symbol(FieldUnit::millimetre) == "mm");
    CHECK(symbol(FieldUnit::degree) == "°");
    CHECK(symbol(FieldUnit::dioptre) == "D");
    CHECK(symbol(FieldUnit::metre) == "m");
    CHECK(symbol(FieldUnit::times) == "×");
    CHECK(symbol(FieldUnit::percent) == "%");
    CHECK(symbol(FieldUnit::arcminute) == "′");
    CHECK(symbol(FieldUnit::none).empty());
}
