#include <array>
#include <string>

#include "base/letters.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace std::string_view_literals;

namespace {

// The Unicode Standard, version 15.0, table 3-4 "Examples of Unicode Encoding Forms".
constexpr std::array examples{"\x4D"sv, "\xD0\xB0"sv, "\xE4\xBA\x8C"sv, "\xF0\x90\x8C\x82"sv};
constexpr std::string_view all_examples = "\x4D\xD0\xB0\xE4\xBA\x8C\xF0\x90\x8C\x82";

// The same, table 3-7 "Well-Formed UTF-8 Byte Sequences": the first and the last sequence of each row.
constexpr std::array well_formed{"\x00"sv,
                                 "\x7F"sv,
                                 "\xC2\x80"sv,
                                 "\xDF\xBF"sv,
                                 "\xE0\xA0\x80"sv,
                                 "\xE0\xBF\xBF"sv,
                                 "\xE1\x80\x80"sv,
                                 "\xEC\xBF\xBF"sv,
                                 "\xED\x80\x80"sv,
                                 "\xED\x9F\xBF"sv,
                                 "\xEE\x80\x80"sv,
                                 "\xEF\xBF\xBF"sv,
                                 "\xF0\x90\x80\x80"sv,
                                 "\xF0\xBF\xBF\xBF"sv,
                                 "\xF1\x80\x80\x80"sv,
                                 "\xF3\xBF\xBF\xBF"sv,
                                 "\xF4\x80\x80\x80"sv,
                                 "\xF4\x8F\xBF\xBF"sv};

// Just outside those rows, or cut short.
constexpr std::array ill_formed{"\x80"sv,         "\xC1\xBF"sv,         "\xC2\x7F"sv,
                                "\xC2"sv,         "\xE0\x9F\xBF"sv,     "\xE1\x80"sv,
                                "\xED\xA0\x80"sv, "\xED\xBF\xBF"sv,     "\xF0\x8F\xBF\xBF"sv,
                                "\xF1\x80\x80"sv, "\xF4\x90\x80\x80"sv, "\xF5\x80\x80\x80"sv};

}  // namespace

TEST_CASE("every row of the standard's table of well-formed bytes is text, and nothing beside it") {
    for (const std::string_view bytes : well_formed) {
        CAPTURE(bytes);
        CHECK_FALSE(first_not_utf8(bytes).has_value());
        CHECK(letter_count(bytes) == 1);
        CHECK(first_letter(bytes) == bytes);
    }
    for (const std::string_view bytes : ill_formed) {
        CAPTURE(bytes);
        CHECK(first_not_utf8(bytes) == 0);
        CHECK(first_letter(bytes).size() == 1);
    }
    CHECK(first_not_utf8("abc\xFFz") == 3);
    CHECK(first_not_utf8(std::string("ok ") + "\xE4\xBA") == 3);  // cut short at the end
    CHECK_FALSE(first_not_utf8("").has_value());
}

TEST_CASE("the standard's example letters of one to four bytes count one each and are never cut") {
    CHECK(letter_count(all_examples) == examples.size());
    std::string_view rest = all_examples;
    for (const std::string_view letter : examples) {
        CHECK(first_letter(rest) == letter);
        rest.remove_prefix(letter.size());
    }
    CHECK(rest.empty());
    CHECK(first_letters(all_examples, 2) == "\x4D\xD0\xB0");
    CHECK(first_letters(all_examples, 9) == all_examples);
    CHECK(first_letters(all_examples, 0).empty());
    CHECK(without_last_letter(all_examples) == "\x4D\xD0\xB0\xE4\xBA\x8C");
    // 1 + 2 + 3 + 4 bytes: whole letters end at 1, 3, 6 and 10.
    constexpr std::array<std::size_t, 11> ends{0, 1, 1, 3, 3, 3, 6, 6, 6, 6, 10};
    for (std::size_t bytes = 0; bytes < ends.size(); ++bytes)
        CHECK(letters_within(all_examples, bytes).size() == ends[bytes]);
}

TEST_CASE("bytes that belong to no letter count one by one") {
    // The Unicode Standard, version 15.0, tables 3-8, 3-9 and 3-10: there too each such byte is shown as one U+FFFD.
    CHECK(letter_count("\xC0\xAF\xE0\x80\xBF\xF0\x81\x82\x41") == 9);
    CHECK(letter_count("\xED\xA0\x80\xED\xBF\xBF\xED\xAF\x41") == 9);
    CHECK(letter_count("\xF4\x91\x92\x93\xFF\x41\x80\xBF\x42") == 9);
}

TEST_CASE("nothing has no letters") {
    CHECK(letter_count("") == 0);
    CHECK(first_letter("").empty());
    CHECK(without_last_letter("").empty());
    CHECK(letters_within("", 5).empty());
}
