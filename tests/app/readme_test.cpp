// The example in README.md is a setup that the program reads without a word, and can trace.
#include <fstream>
#include <sstream>

#include "document/setup_file.hpp"
#include "study/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the setup printed in the README opens and makes a train") {
    std::ifstream file(BEAMFORK_SOURCE_DIR "/README.md");
    std::stringstream text;
    text << file.rdbuf();
    const std::string page = text.str();
    const std::string fence = "```toml\n";
    const auto begin = page.find(fence);
    REQUIRE(begin != std::string::npos);
    const auto from = begin + fence.size();
    const auto read = read_setup(page.substr(from, page.find("```", from) - from), "README.md");
    REQUIRE(read.has_value());
    CHECK(read->notices.empty());
    const Setup& setup = read->document.setup;
    CHECK(make_report(setup, setup.chosen, ClippingEffort{64}).has_value());
}
