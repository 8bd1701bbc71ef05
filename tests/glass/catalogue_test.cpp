#include <set>

#include "glass/glass.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// Reads a broken catalogue and gives its error's text.
std::string refusal(std::string_view toml) {
    const auto read = read_catalogue(toml, "glasses.toml");
    REQUIRE_FALSE(read.has_value());
    return to_text(read.error());
}

constexpr std::string_view one_glass = R"(
[[glass]]
name = "plain"
b = [1.0]
c = [0.01]
range_um = [0.3, 2.5]
source = "made up for this test"
)";

}  // namespace

TEST_CASE("every glass of the standard catalogue names its source and has a name of its own") {
    std::set<std::string> names;
    for (const Glass& glass : standard_catalogue().glasses) {
        CHECK_FALSE(glass.source.empty());
        CHECK(names.insert(glass.name).second);
    }
    CHECK(names.size() >= 9);
    CHECK(standard_catalogue().names().size() == names.size());
}

TEST_CASE("an unknown glass is refused with the nearest known name") {
    const auto mistyped = standard_catalogue().find("N-BAK5");
    REQUIRE_FALSE(mistyped.has_value());
    CHECK(mistyped.error().code == ErrorCode::not_found);
    CHECK(mistyped.error().what == "no glass called 'N-BAK5'; did you mean 'N-BAK4'?");
    const auto noise = standard_catalogue().find("@@@@@@@@@@@@@@@@@@@@@@@@");
    REQUIRE_FALSE(noise.has_value());
    CHECK(noise.error().what.find("did you mean") == std::string::npos);
}

TEST_CASE("a catalogue reads back as written") {
    const auto read = read_catalogue(one_glass, "glasses.toml");
    REQUIRE(read.has_value());
    REQUIRE(read->glasses.size() == 1);
    CHECK(read->glasses[0] == Glass{"plain", "made up for this test", {1.0}, {0.01}, {0.3}, {2.5}});
    CHECK(read_catalogue("", "empty.toml")->glasses.empty());
}

TEST_CASE("a broken catalogue is refused with file, line and reason") {
    CHECK(refusal("[[glass]]\nname = \"a\"\nb = [1.0\n").starts_with("glasses.toml:"));
    CHECK(refusal("\n[[glass]]\nname = \"a\"\nsource = \"s\"\n")
          == "glasses.toml:2: b must be a list of numbers");
    CHECK(refusal("[[glass]]\nb = [\"one\"]\n") == "glasses.toml:1: b holds a non-number");
    CHECK(refusal("[[glass]]\nb = [1.0]\nc = [0.1]\nrange_um = [0.3, 2.5]\n")
          == "glasses.toml:1: a glass needs a name and a source");
    const auto with = [](std::string_view b, std::string_view range) {
        return "[[glass]]\nname = \"a\"\nsource = \"s\"\nc = [0.1]\nb = " + std::string(b)
               + "\nrange_um = " + std::string(range);
    };
    const std::string wanted =
        "glasses.toml:1: a needs as many b as c, and a rising range_um of two numbers";
    CHECK(refusal(with("[1.0, 2.0]", "[0.3, 2.5]")) == wanted);
    CHECK(refusal(with("[1.0]", "[2.5, 0.3]")) == wanted);
    CHECK(refusal(with("[1.0]", "[0.3]")) == wanted);
    CHECK(refusal("glass = [1, 2]") == "glasses.toml:1: glass must be a table");
}
