#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "base/text.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double none = std::numeric_limits<double>::quiet_NaN();

std::string random_word(Random& random) {
    std::string word;
    for (std::size_t length = random.below(9); word.size() < length;) {
        word.push_back(static_cast<char>('a' + random.below(4)));
    }
    return word;
}

}  // namespace

TEST_CASE("a number is written with the asked decimals, and a rounded zero has no sign") {
    CHECK(format_number(35.25, 1) == "35.2");  // ties to even, as printf
    CHECK(format_number(-30, 1) == "-30.0");
    CHECK(format_number(-0.04, 1) == "0.0");
    CHECK(format_number(-0.06, 1) == "-0.1");
    CHECK(format_number(1234567, 0) == "1234567");
    CHECK(format_number(none, 2) == "n/a");
    CHECK(format_number(-infinity, 2) == "n/a");
}

TEST_CASE("a signed number shows its sign either way") {
    CHECK(format_signed(12, 1) == "+12.0");
    CHECK(format_signed(-3.5, 1) == "-3.5");
    CHECK(format_signed(-0.01, 1) == "+0.0");
    CHECK(format_signed(none, 1) == "n/a");
}

TEST_CASE("the exact text of a number reads back to the same number") {
    CHECK(format_exact(0.1) == "0.1");
    CHECK(format_exact(65) == "65");
    Random random(11);
    for (int i = 0; i < 2000; ++i) {
        const double value = random.between(-1, 1) * std::pow(10, random.between(-300, 300));
        CAPTURE(value);
        CHECK(parse_number(format_exact(value)) == value);
    }
}

TEST_CASE("only a whole finite number is read as a number") {
    CHECK(parse_number("65") == 65.0);
    CHECK(parse_number("  -1.5\t") == -1.5);
    CHECK(parse_number("+2.6") == 2.6);
    CHECK(parse_number("1e3") == 1000.0);
    for (const std::string text : {"", "  ", "12 mm", "1,5", "twelve", "nan", "inf", "-inf",
                                   "1e999", "0x10", "+", "-", "+-5", "++5", "1.2.3", "5-"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_number(text).has_value());
    }
}

TEST_CASE("the distance between two words is the fewest letters to insert, remove or replace") {
    // The common textbook example of the distance of V. I. Levenshtein, Soviet Physics Doklady 10, 707-710 (1966).
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("abc", "") == 3);
    CHECK(edit_distance("lens", "lens") == 0);
}

TEST_CASE("the distance between words is a metric") {
    Random random(12);
    for (int i = 0; i < 500; ++i) {
        const std::string a = random_word(random);
        const std::string b = random_word(random);
        const std::string c = random_word(random);
        CAPTURE(a);
        CAPTURE(b);
        CAPTURE(c);
        CHECK((edit_distance(a, b) == 0) == (a == b));
        CHECK(edit_distance(a, b) == edit_distance(b, a));
        CHECK(edit_distance(a, c) <= edit_distance(a, b) + edit_distance(b, c));
    }
}

TEST_CASE("a mistyped name finds the nearest known one, and noise finds none") {
    const std::vector<std::string> known{"focal_length_mm", "field_stop_mm", "eye_relief_mm"};
    CHECK(nearest_name("focal_lenght_mm", known) == "focal_length_mm");
    CHECK(nearest_name("fieldstop", known) == "field_stop_mm");
    CHECK_FALSE(nearest_name("qqqq", known).has_value());
    CHECK_FALSE(nearest_name("anything", {}).has_value());
    CHECK_FALSE(nearest_name(std::string(10'000'000, 'x'), known).has_value());  // at once, too
}

TEST_CASE("before a number stands a minus sign (U+2212), in names and ranges the hyphen (U+002D) "
          "they had") {
    CHECK(typeset("-1.4 mm of -3 (-0.5)") == "−1.4 mm of −3 (−0.5)");
    CHECK(typeset("N-BAK4, f-5, 2-3, - and +1") == "N-BAK4, f-5, 2-3, - and +1");
    CHECK(typeset("-") == "-");
}

TEST_CASE("a suggestion ends the sentence about an unknown word, or is left out") {
    const std::vector<std::string> known{"title", "story"};
    CHECK(did_you_mean("titel", known) == "; did you mean 'title'?");
    CHECK(did_you_mean("stroy", known, "“", "”") == "; did you mean “story”?");
    CHECK(did_you_mean("qqqq", known).empty());
}
