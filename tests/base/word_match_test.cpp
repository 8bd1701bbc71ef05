#include <string>

#include "base/word_match.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("letters find the names whose words they begin, whatever their case and order") {
    CHECK(word_match("foc", "Focal length of Club refractor").has_value());
    CHECK(word_match("LENGTH club", "Focal length of Club refractor").has_value());
    CHECK(word_match("ref foc", "Focal length of Club refractor").has_value());
    CHECK_FALSE(word_match("ngth", "Focal length").has_value());  // not the begin of a word
    CHECK_FALSE(word_match("foc mirror", "Focal length").has_value());
    CHECK_FALSE(word_match("x", "").has_value());
}

TEST_CASE("the begins of several words may be run together") {
    CHECK(word_match("fole", "Focal length").has_value());
    CHECK(word_match("fl", "Focal length").has_value());
    CHECK(word_match("flcr", "Focal length of Club refractor").has_value());
    CHECK_FALSE(word_match("lf", "Focal length").has_value());
}

TEST_CASE("one wrong letter in a longer word is forgiven") {
    CHECK(word_match("magnifcation", "Magnification").has_value());
    CHECK(word_match("brigthness", "Brightness").has_value());  // two changed places
    CHECK(word_match("colllimation", "Collimation").has_value());
    CHECK_FALSE(word_match("britghess", "Brightness").has_value());
    CHECK(word_match("objektive", "Objective").has_value());
    CHECK_FALSE(word_match("mag", "Mug").has_value());  // too short to be sure
}

TEST_CASE("the better the fit, the smaller the number") {
    const auto first = word_match("night", "Night");
    const auto second = word_match("night", "Red light for the night");
    const auto third = word_match("nl", "Night light");
    const auto fourth = word_match("nigth", "Night");
    REQUIRE((first && second && third && fourth));
    CHECK(*first < *second);
    CHECK(*second < *third);
    CHECK(*third < *fourth);
    CHECK(word_match("", "anything") == 0);
}

TEST_CASE("noise is refused in no time") {
    CHECK_FALSE(word_match(std::string(100'000, 'a'), std::string(1000, 'a')).has_value());
    CHECK_FALSE(word_match("aaaaaaaaaaaaaaaaaaaab", "aa aa aa aa aa aa aa aa aa aa").has_value());
}
