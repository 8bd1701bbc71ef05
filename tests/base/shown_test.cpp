#include <string>

#include "base/shown.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

using namespace beamfork;

namespace {

std::string utf8_of(unsigned code) {
    const auto byte = [](unsigned bits) { return static_cast<char>(bits); };
    if (code < 0x80) return {byte(code)};
    if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
    if (code < 0x10000)
        return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)),
                byte(0x80 | (code & 0x3F))};
    return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)),
            byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
}

}  // namespace

TEST_CASE("words, signs and letters of any script are shown as they are") {
    for (const char* words :
         {"", "Brass 90 × 1000", "−3.5 dpt, ±0.2", "Фокус", "双筒", "عدسة", "a\n\tb"})
        CHECK(shown(words) == words);
    CHECK(shown_in_line("a\n\tb") == "a\\u000A\\u0009b");
}

TEST_CASE("nothing that steers a terminal or turns the reading leaves as it is") {
    // Controls: ECMA-48, 5th ed., 1991, sec. 5.2 and 5.3 (C0 and C1 sets). Marks of direction: Unicode Standard Annex 9,
    // revision 46, table 1. Letters without width: The Unicode Standard 15.0, sec. 23.2.
    CHECK(shown("\x1b[31mred\x1b[0m") == "\\u001B[31mred\\u001B[0m");
    CHECK(shown(utf8_of(0x9B) + "31m") == "\\u009B31m");
    for (unsigned code = 0; code < 0xA0; ++code) {
        if (code == '\n' || code == '\t' || (code >= 0x20 && code < 0x7F)) continue;
        CAPTURE(code);
        CHECK(shown(utf8_of(code)).starts_with("\\u00"));
    }
    for (const unsigned code :
         {0x061CU, 0x200EU, 0x200FU, 0x202AU, 0x202BU, 0x202CU, 0x202DU, 0x202EU, 0x2066U, 0x2067U,
          0x2068U, 0x2069U, 0x200BU, 0x200CU, 0x200DU, 0x2060U, 0xFEFFU, 0x2028U, 0x2029U}) {
        CAPTURE(code);
        CHECK(shown(utf8_of(code)).starts_with("\\u"));
    }
}

TEST_CASE("bytes that are no text are shown as bytes") {
    CHECK(shown("a\xFF\xC3(") == "a\\xFF\\xC3(");
    CHECK(shown("\x9B") == "\\x9B");
}

TEST_CASE("a JSON text keeps its value when it is shown") {
    const nlohmann::json told{
        {"name", "a" + utf8_of(0x9B) + utf8_of(0x202E) + utf8_of(0xE0041) + "\x1b\n"}};
    const std::string text = told.dump(2);
    CHECK(shown(text) != text);
    CHECK(nlohmann::json::parse(shown(text)) == told);
}
