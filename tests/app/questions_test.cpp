// src/study/questions.md names for each question the test that shows its answer: it must be there.
#include <fstream>
#include <regex>
#include <sstream>

#include <doctest/doctest.h>

namespace {

std::string text_of(const std::string& path) {
    std::ifstream file(BEAMFORK_SOURCE_DIR "/" + path);
    CAPTURE(path);
    REQUIRE(file.good());
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// Names of test cases are broken over lines as long strings are.
std::string joined(const std::string& source) {
    return std::regex_replace(source, std::regex("\"\\s*\\n\\s*\""), "");
}

}  // namespace

TEST_CASE("each of the 45 questions is answered somewhere, and the test that shows it is there") {
    std::istringstream lines(text_of("src/study/questions.md"));
    const std::regex row(R"(\| (\d+) \| (.+) \| (.+) \| ([a-z_/]+): (.+) \|)");
    int answered = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line[0] != '|' || line[2] == '#' || line[1] == '-') continue;
        CAPTURE(line);
        std::smatch found;
        REQUIRE(std::regex_match(line, found, row));
        CHECK(std::stoi(found[1]) == ++answered);
        const std::string tests = joined(text_of("tests/" + found[4].str() + ".cpp"));
        const std::size_t words = tests.find(found[5].str());
        REQUIRE(words != std::string::npos);
        // The nearest quotation mark before the words opens the name of a test case.
        const std::size_t quote = tests.rfind('"', words);
        REQUIRE(quote != std::string::npos);
        const std::size_t before = tests.find_last_not_of(" \n", quote - 1);
        CHECK(tests.substr(before - 9, 10) == "TEST_CASE(");
    }
    CHECK(answered == 45);
}
