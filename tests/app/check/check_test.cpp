#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "app/check/check.hpp"
#include "app/commands/option_words.hpp"
#include "base/letters.hpp"
#include "desk/open_setup.hpp"
#include "support/near.hpp"
#include "ui/panels.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <unistd.h>

using namespace beamfork;
using Json = nlohmann::json;

namespace {

CheckedSetup checked(const std::string& demo, CheckedPairs pairs = CheckedPairs::every) {
    const auto read = open_named(demo);
    REQUIRE(read.has_value());
    auto result = check_setup(read->document.setup, pairs, ClippingEffort{128});
    REQUIRE(result.has_value());
    return *std::move(result);
}

// Validates with the general-purpose validator from Debian's python3-jsonschema.
bool fits_schema(const std::string& json) {
    const auto file = std::filesystem::temp_directory_path()
                      / ("beamfork-check-" + std::to_string(getpid()) + ".json");
    std::ofstream(file) << json;
    const std::string command =
        "/usr/bin/python3 -c \"import json,sys,jsonschema;"
        "jsonschema.validate(json.load(open(sys.argv[1])), json.load(open(sys.argv[2])))\" '"
        + file.string() + "' '" BEAMFORK_SOURCE_DIR "/assets/check.schema.json' 2>/dev/null";
    const int status = std::system(command.c_str());
    std::filesystem::remove(file);
    return status == 0;
}

}  // namespace

TEST_CASE("the JSON of every demo fits its schema, and broken JSON does not") {
    const auto all = demos();
    REQUIRE(all.size() >= 3);
    for (const Demo& demo : all) {
        CAPTURE(demo.name);
        const std::string json = check_json(checked(demo.name));
        CHECK(fits_schema(json));
        Json root = Json::parse(json);
        root["combinations"][0].erase("focus");
        CHECK_FALSE(fits_schema(root.dump()));
    }
}

TEST_CASE("the schema explains each result of a combination as the table of results does") {
    std::ifstream file(BEAMFORK_SOURCE_DIR "/assets/check.schema.json");
    const Json combination = Json::parse(file)["definitions"]["combination"];
    for (const ResultId id : results_of_a_combination()) {
        const ResultInfo& result = info_of(id);
        const std::string key = result.key_with_unit();
        CAPTURE(key);
        REQUIRE(combination["properties"].contains(key));
        CHECK(combination["properties"][key]["type"] == "number");
        CHECK(combination["properties"][key]["description"] == std::string(result.help));
        CHECK(std::count(combination["required"].begin(), combination["required"].end(), key) == 1);
    }
}

TEST_CASE("every eyepiece pair is told with every observer and every target") {
    const CheckedSetup result = checked("1-short-of-focus");
    const std::size_t expected = parts_with_role(result.setup, Role::eyepiece).size()
                                 * parts_with_role(result.setup, Role::observer).size()
                                 * parts_with_role(result.setup, Role::target).size();
    CHECK(result.combinations.size() == expected);
    CHECK(result.combinations.at(result.chosen).choice == result.setup.chosen);
}

// The text tells of the chosen pair alone, and so spares the others; that they are looked at must change nothing.
TEST_CASE("the chosen pair is told alike, alone and among all") {
    for (const char* demo : {"1-short-of-focus", "6-two-observers"}) {
        CAPTURE(demo);
        const CheckedSetup among_all = checked(demo, CheckedPairs::every);
        const CheckedSetup alone = checked(demo, CheckedPairs::chosen);
        CHECK(among_all.combinations.size() > 1);
        CHECK(alone.combinations.size() == 1);
        CHECK(check_text(alone) == check_text(among_all));
    }
}

// Common practice, no source: back focus 116 mm, adapter 1, prism diagonal 35, head 110: 30 mm short; a shifter
// that gives back 65 mm leaves 35 mm of travel.
TEST_CASE("the first demo falls about 30 mm short and the second has about 35 mm to spare") {
    const CheckedSetup first = checked("1-short-of-focus");
    CHECK(first.is_poor());
    CHECK(near(first.combinations[first.chosen].report.budget.shortfall.value, 30,
               1));  // the demo's own roundings
    const CheckedSetup second = checked("2-shifter-cures-it");
    CHECK_FALSE(second.is_poor());
    CHECK(near(second.combinations[second.chosen].report.budget.margin_in.value, 35, 1));
}

TEST_CASE("the light each eye loses and the light it gets add up to one") {
    const Json root = Json::parse(check_json(checked("3-fast-and-wide")));
    for (const Json& combination : root["combinations"]) {
        for (const char* eye : {"left_eye", "right_eye"}) {
            for (const Json& ring : combination[eye]["illumination"]) {
                double sum = ring["relative"];
                for (const auto& [stop, share] : ring["ends"].items())
                    sum += share.get<double>();
                CHECK(near(sum, 1, 1e-9));  // rounding of a few hundred shares
            }
        }
    }
}

TEST_CASE("what matters of every demo fits one screen of 50 lines of 100 letters") {
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        const std::string text = short_check_text(checked(demo.name, CheckedPairs::chosen));
        std::istringstream lines(text);
        int count = 0;
        for (std::string line; std::getline(lines, line); ++count) {
            CAPTURE(line);
            CHECK(letter_count(line) <= 100);
        }
        CHECK(count <= 50);
        for (const char* words : {"VERDICT", "FOCUS BUDGET", "WHAT YOU GET", "STUDIES"})
            CHECK(text.find(words) != std::string::npos);
    }
}

TEST_CASE(
    "each study that a line of the short page names can be read by that name, and by what its "
    "panel is called") {
    const CheckedSetup setup = checked("4-fast-newtonian", CheckedPairs::chosen);
    const std::string page = short_check_text(setup);
    std::istringstream lines(page.substr(page.find("STUDIES")));
    std::string line;
    std::getline(lines, line);
    int studies = 0;
    while (std::getline(lines, line)) {
        std::istringstream words(line);
        std::string stem;
        words >> stem;
        CAPTURE(stem);
        const auto panel = std::ranges::find(panels(), stem, &PanelEntry::stem);
        REQUIRE(panel != panels().end());
        CHECK(study_named(std::string(panel->title), told_studies()) == stem);
        const std::string told = study_text(setup, stem);
        const std::size_t first = told.find("\n\n") + 2;
        CHECK(check_text(setup).find(told.substr(first, told.find("\n\n", first) - first))
              != std::string::npos);
        ++studies;
    }
    CHECK(studies == 10);
    const auto wrong = study_named("brighness", told_studies());
    REQUIRE_FALSE(wrong.has_value());
    CHECK(wrong.error().what.find("did you mean 'brightness'?") != std::string::npos);
}

TEST_CASE("a cure is told once and then referred to by its number") {
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        const CheckedSetup setup = checked(demo.name, CheckedPairs::chosen);
        std::set<std::string> cures;
        for (const Finding& finding : setup.combinations.front().report.findings) {
            for (const Cure& cure : finding.cures)
                cures.insert(cure.what);
        }
        const std::string text = check_text(setup);
        const std::regex mark(R"([+~] \((\d+)\) (as above)?)");
        std::set<std::string> told;
        for (auto at = std::sregex_iterator(text.begin(), text.end(), mark);
             at != std::sregex_iterator(); ++at)
            CHECK(told.insert((*at)[1]).second == !(*at)[2].matched);
        CHECK(told.size() == cures.size());
    }
}

TEST_CASE("the text tells the findings, the budget and every combination") {
    const std::string text = check_text(checked("1-short-of-focus"));
    for (const char* words :
         {"FINDINGS", "fails", "FOCUS BUDGET", "Short by", "WHAT YOU GET", "Magnification",
          "LIGHT AT THE FIELD STOPS", "EVERY EYEPIECE", "mm short"}) {
        CAPTURE(words);
        CHECK(text.find(words) != std::string::npos);
    }
    std::size_t start = 0;
    while (start < text.size()) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        CHECK(end - start <= 110);  // bytes; a line fits a terminal of 100 letters
        start = end + 1;
    }
}

TEST_CASE(
    "all tolerances of two-eye alignment and a check of collimation can be read, step by step") {
    const CheckedSetup result = checked("2-shifter-cures-it", CheckedPairs::chosen);
    const std::string page = two_eyes_page(result);
    const Alignment& alignment = result.combinations.front().report.alignment;
    CHECK(alignment.tolerances.size() == 22);
    for (const ErrorAllowance& tolerance : alignment.tolerances)
        CHECK(page.find(tolerance.place + ": " + tolerance.error) != std::string::npos);
    for (const char* step : {"\n  1. ", "\n  2. ", "\n  3. ", "\n  4. ", "\n  5. ", "\n  6. "})
        CHECK(page.find(step) != std::string::npos);
    CHECK(page.find("Never near the Sun") != std::string::npos);
}

TEST_CASE("temperature, polarisation and ghosts are among what the command line says is assumed") {
    const std::string page = assumptions_page();
    for (const char* words : {"Air and temperature", "polarisations", "ghost", "ideal lenses"})
        CHECK(page.find(words) != std::string::npos);
}

TEST_CASE("the text gives the head's range, and the heights of the eyes over the sky") {
    const std::string text = check_text(checked("2-shifter-cures-it", CheckedPairs::chosen));
    for (const char* words : {"Head can be set to", "Eyes at 0°", "Eyes at 90°",
                              "Axis height, standing", "Axis height, sitting"}) {
        CAPTURE(words);
        CHECK(text.find(words) != std::string::npos);
    }
}
