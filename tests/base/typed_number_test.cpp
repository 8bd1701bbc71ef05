#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "base/text.hpp"
#include "base/typed_number.hpp"
#include "base/unit_words.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

using namespace beamfork;

namespace {

const std::vector<NumberUnit> every_unit{
    NumberUnit::none,    NumberUnit::millimetre, NumberUnit::degree,
    NumberUnit::dioptre, NumberUnit::metre,      NumberUnit::times,
    NumberUnit::percent, NumberUnit::arcminute,  NumberUnit::gram};

double in_mm(const std::string& text) {
    CAPTURE(text);
    const auto value = parse_quantity<Millimetres>(text);
    INFO((value ? std::string() : value.error().what));
    REQUIRE(value.has_value());
    return value->value;
}

std::string refusal(const std::string& text, NumberUnit unit = NumberUnit::millimetre) {
    const auto value = parse_typed(text, unit);
    return value ? "taken as " + format_exact(*value) : value.error().what;
}

bool says(const std::string& sentence, const std::string& piece) {
    return sentence.find(piece) != std::string::npos;
}

}  // namespace

TEST_CASE("the inch is 25.4 mm exactly, the foot twelve of them, the yard three feet") {
    // International yard and pound agreement of 1959; NIST Special Publication 811 (2008), B.6 and appendix B.8.
    CHECK(in_mm("1 in") == 25.4);
    CHECK(in_mm("1.25 in") == 31.75);
    CHECK(in_mm("2\"") == 50.8);
    CHECK(in_mm("1 ft") == 304.8);
    CHECK(in_mm("1 yd") == 914.4);
    CHECK(in_mm("12 in") == in_mm("1 ft"));
    CHECK(in_mm("3 ft") == in_mm("1 yd"));
}

TEST_CASE("the pound is 453.59237 g exactly, and sixteen ounces make one") {
    // International yard and pound agreement of 1959; NIST Special Publication 811 (2008), appendix B.8.
    CHECK(parse_quantity<Grams>("1 lb")->value == 453.59237);
    CHECK(parse_quantity<Grams>("16 oz")->value == 453.59237);
    CHECK(parse_quantity<Grams>("1.2 kg")->value == 1200);
}

TEST_CASE("metric lengths differ by powers of ten") {
    CHECK(in_mm("45mm") == 45);
    CHECK(in_mm("4.5cm") == 45);
    CHECK(in_mm("0.045 m") == 45);
    CHECK(in_mm("45000 µm") == 45);
    CHECK(parse_quantity<Metres>("45 cm")->value == 0.45);
    CHECK(parse_quantity<Metres>("1.2 km")->value == 1200);
    CHECK(parse_quantity<Metres>("100 ft")->value == 30.48);
}

TEST_CASE("a degree has sixty arcminutes of sixty arcseconds, and half a turn is pi radians") {
    CHECK(parse_quantity<Degrees>("8 deg")->value == 8);
    CHECK(parse_quantity<Degrees>("30′")->value == 0.5);
    CHECK(parse_quantity<Degrees>("1° 30′ 36″")->value == 1.51);
    CHECK(parse_quantity<Degrees>("-1° 30'")->value == -1.5);
    CHECK(parse_quantity<Degrees>("-0° 30'")->value == -0.5);
    CHECK(
        near(parse_quantity<Degrees>("1 rad")->value, 180 / std::numbers::pi, 1e-13));  // rounding
    CHECK(*parse_typed("3'", NumberUnit::arcminute) == 3);
    CHECK(*parse_typed("3", NumberUnit::arcminute) == 3);
    CHECK(*parse_typed("0.5°", NumberUnit::arcminute) == 30);
    CHECK(*parse_typed("90\"", NumberUnit::arcminute) == 1.5);
}

TEST_CASE("the same mark is a foot in a length and an arcminute in an angle") {
    CHECK(in_mm("1'") == 304.8);
    CHECK(in_mm("1' 2\"") == 355.6);  // 14 inches
    CHECK(parse_quantity<Degrees>("6'")->value == 0.1);
}

TEST_CASE("dioptres, percent and factors take their own signs and nothing else") {
    CHECK(parse_quantity<Dioptres>("−2.5 dpt")->value == -2.5);
    CHECK(*parse_typed("95 %", NumberUnit::percent) == 95);
    CHECK(*parse_typed("2.6×", NumberUnit::times) == 2.6);
    CHECK(*parse_typed("1.3x2", NumberUnit::times) == 2.6);
    CHECK(*parse_typed("2×1.3×", NumberUnit::times) == 2.6);
    CHECK(*parse_typed("4", NumberUnit::none) == 4);
}

TEST_CASE("small sums are worked out") {
    CHECK(in_mm("35+1") == 36);
    CHECK(in_mm("2*17.5") == 35);
    CHECK(in_mm("2 × 17,5") == 35);
    CHECK(in_mm("(35+1)/2 - 3") == 15);
    CHECK(in_mm("35 + 1 mm") == 36);
    CHECK(in_mm("1 in + 1 mm") == 26.4);
    CHECK(in_mm("2+3*4") == 14);
    CHECK(in_mm("24/4/3") == 2);
    CHECK(in_mm("-(-5)") == 5);
    CHECK(in_mm("1e2 mm") == 100);
}

TEST_CASE("a unit holds for the whole fraction before it") {
    CHECK(in_mm("1/2 in") == 12.7);
    CHECK(in_mm("1 1/4 in") == 31.75);
    CHECK(in_mm("1¼ in") == 31.75);
    CHECK(in_mm("½\"") == 12.7);
    CHECK(in_mm("2*1/2 in") == 25.4);
    CHECK(in_mm("(1+1) in") == 50.8);
    CHECK(in_mm("10 in / 4") == 63.5);
}

TEST_CASE("the decimal comma is read like the point, and never as a separator of thousands") {
    CHECK(in_mm("3,5") == 3.5);
    CHECK(in_mm("1,250") == 1.25);
    CHECK(says(refusal("1,250.5"), "1,250.5"));
}

TEST_CASE("a plain number beside one in another unit is refused, since it could be either") {
    CHECK(says(refusal("35 + 1 in"), "give each its unit"));
    CHECK(says(refusal("1 cm + 2 + 3"), "give each its unit"));
}

TEST_CASE("a refusal says what was found, what is expected, and the nearest word") {
    CHECK(says(refusal("45 inchs"), "“inchs”"));
    CHECK(says(refusal("45 inchs"), "“inch”"));
    CHECK(says(refusal("45 milimetres"), "“millimetres”"));
    CHECK(says(refusal("8 deg"), "belongs to an angle"));
    CHECK(says(refusal("8 deg"), "a length is expected"));
    CHECK(says(refusal("8 mm", NumberUnit::degree), "an angle is expected"));
    CHECK(says(refusal("8 mm", NumberUnit::none), "a plain number is expected"));
    CHECK(says(refusal(""), "a length"));
    CHECK(says(refusal("wide"), "“wide”"));
    CHECK(says(refusal("35+"), "missing behind “+”"));
    CHECK(says(refusal("(35+1"), "“)” is missing"));
    CHECK(says(refusal("35)"), "“(”"));
    CHECK(says(refusal("5/0"), "by zero"));
    CHECK(says(refusal("(1 mm)*(1 mm)"), "only one factor"));
    CHECK(says(refusal("5/(2 mm)"), "divide by a plain number"));
    CHECK(says(refusal("5 mm mm"), "second unit"));
    CHECK(says(refusal("2 in 1 ft"), "smaller unit"));
    CHECK(says(refusal("1e400"), "1e400"));
    CHECK(says(refusal("1e300*1e300"), "too large"));
    CHECK(says(refusal("nan"), "“nan”"));
    CHECK(says(refusal(std::string(300, '1')), "too long"));
    CHECK(says(refusal(std::string(100, '(') + "1" + std::string(99, ')')), "brackets"));
}

TEST_CASE("any printed number reads back, with its unit or without") {
    Random random(21);
    for (int i = 0; i < 500; ++i) {
        const double value = random.between(-1, 1) * std::pow(10, random.between(-6, 6));
        for (const NumberUnit unit : every_unit) {
            const std::string text = with_symbol(format_exact(value), unit);
            CAPTURE(text);
            CHECK(parse_typed(text, unit) == value);
            CHECK(parse_typed(format_exact(value), unit) == value);
        }
    }
}

TEST_CASE("typed sums keep the laws of arithmetic") {
    Random random(22);
    for (int i = 0; i < 500; ++i) {
        const double a = std::round(random.between(-99, 99));
        const double b = std::round(random.between(-99, 99));
        const double c = std::round(random.between(1, 99));
        const auto same = [&](const std::string& left, const std::string& right, double value) {
            CAPTURE(left);
            CAPTURE(right);
            CHECK(near(in_mm(left), value, rounding));
            CHECK(near(in_mm(right), value, rounding));
        };
        same(fmt::format("({})+({})", a, b), fmt::format("({})+({})", b, a), a + b);
        same(fmt::format("({})*(({})+({}))", c, a, b), fmt::format("{}*({})+{}*({})", c, a, c, b),
             c * (a + b));
        same(fmt::format("({})/{}", a, c), fmt::format("-(-({}))/{}", a, c), a / c);
        same(fmt::format("({})-({})", a, b), fmt::format("({})+(-({}))", a, b), a - b);
        same(fmt::format("{} in + {} cm", a, c), fmt::format("{} cm + ({}) in", c, a),
             a * 25.4 + c * 10);
    }
}

TEST_CASE("every word of a measure stands for the same size wherever it is typed") {
    for (const NumberUnit unit : every_unit) {
        const UnitMeasure& measure = measure_of(unit);
        const UnitWord own = own_word(unit);
        for (const UnitWord& word : measure.words) {
            CAPTURE(word.word);
            const auto value = parse_typed("2" + std::string(word.word), unit);
            REQUIRE(value.has_value());
            const double expected =
                2 * (word.numerator / word.denominator) / (own.numerator / own.denominator);
            CHECK(near(*value / expected, 1, 1e-14));  // rounding
        }
    }
}

TEST_CASE("no text whatever breaks the reader, and what it takes is finite") {
    const std::vector<std::string> pieces{
        "1", "2.5", "0",    ",",    ".",  "e", "e9", "in",  "mm", "°", "′",  "\"",
        "'", "½",   "¼",    "+",    "-",  "*", "/",  "(",   ")",  "×", "x",  "−",
        " ", "deg", "\xC2", "\xFF", "ft", "%", "lb", "999", "e-", "D", "\n", "·"};
    Random random(23);
    int taken = 0;
    for (int i = 0; i < 60000; ++i) {
        std::string text;
        for (std::size_t count = random.below(12); count > 0; --count)
            text += random.one_of(pieces);
        CAPTURE(text);
        const auto value = parse_typed(text, random.one_of(every_unit));
        if (value) {
            ++taken;
            CHECK(std::isfinite(*value));
        } else {
            CHECK(value.error().what.size() > 5);
        }
    }
    CHECK(taken > 1000);  // the pieces do make sense now and then
}
