// `beamfork plan` as its parts do it: what is told, saved and opened again.
#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "app/check/check.hpp"
#include "app/commands/command_line.hpp"
#include "app/plan/plan_drawer.hpp"
#include "document/setup_file.hpp"
#include "study/results/results.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <unistd.h>

using namespace beamfork;

namespace {

PlannedDrawer club_planned(const PlanDrawer& asked) {
    const auto read = open_drawer("harrier-hill");
    REQUIRE(read.has_value());
    auto planned = plan_drawer(read->drawer, asked);
    if (!planned) FAIL(to_text(planned.error()));
    return *std::move(planned);
}

// Validates with the general-purpose validator from Debian's python3-jsonschema.
bool fits_plan_schema(const std::string& json) {
    const auto file = std::filesystem::temp_directory_path()
                      / ("beamfork-plan-" + std::to_string(getpid()) + ".json");
    std::ofstream(file) << json;
    const std::string command =
        "/usr/bin/python3 -c \"import json,sys,jsonschema;"
        "jsonschema.validate(json.load(open(sys.argv[1])), json.load(open(sys.argv[2])))\" '"
        + file.string() + "' '" BEAMFORK_SOURCE_DIR "/assets/plan.schema.json' 2>/dev/null";
    const int status = std::system(command.c_str());
    std::filesystem::remove(file);
    return status == 0;
}

}  // namespace

TEST_CASE("each told train, saved and opened, gives in check the numbers that the plan tells") {
    PlanDrawer asked;
    asked.purchases = false;
    const PlannedDrawer planned = club_planned(asked);
    const auto path = std::filesystem::temp_directory_path() / "beamfork_planned.train.toml";
    const auto told = planned.told();
    REQUIRE(told.size() > 5);
    for (std::size_t i = 0; i < told.size(); ++i) {
        CAPTURE(told[i]->document.setup.title);
        REQUIRE(save_train(planned, static_cast<int>(i + 1), path.string()).has_value());
        const auto opened = load_file(path);
        if (!opened) FAIL(to_text(opened.error()));
        CHECK(opened->notices.empty());
        const auto again = check_setup(opened->document.setup, CheckedPairs::chosen,
                                       {.form = LightForm::few_rays});
        REQUIRE(again.has_value());
        const Report& report = again->combinations.front().report;
        CHECK(near(report.budget.drawtube, told[i]->focus.drawtube, rounding));
        CHECK(report.budget.reaches);
        for (const ResultId id : {ResultId::magnification, ResultId::true_field,
                                  ResultId::exit_pupil, ResultId::edge_light, ResultId::sharpness,
                                  ResultId::focus_margin, ResultId::focus_chance, ResultId::load}) {
            CAPTURE(std::string(info_of(id).key));
            const double value = info_of(id).value(report);
            // Light and lengths round alike on both ways; the two differ by what was rounded in the file: nothing.
            CHECK(near(told[i]->result(id), value, rounding * (1 + std::abs(value))));
        }
    }
    std::filesystem::remove(path);
    const auto none = save_train(planned, static_cast<int>(told.size() + 1), path.string());
    REQUIRE_FALSE(none.has_value());
    CHECK_FALSE(std::filesystem::exists(path));
}

TEST_CASE("the JSON of a plan tells what its text tells, and every train when asked") {
    PlanDrawer asked;
    asked.purposes = {"planets"};
    asked.purchases = false;
    const PlannedDrawer planned = club_planned(asked);
    const auto root = nlohmann::json::parse(plan_json(planned, true));
    CHECK(root["beamfork_plan"] == 1);
    CHECK(root["trains"] == root["every_train"].size());
    REQUIRE(root["purposes"].size() == 1);
    const std::string text = plan_text(planned);
    for (const auto& train : root["purposes"][0]["trains"]) {
        CHECK(train["results"]["failures"] == 0);
        for (const auto& part : train["parts"]) {
            CAPTURE(std::string(part));
            // The only focuser of a telescope goes without saying.
            if (part != train["parts"][1])
                CHECK(text.find(std::string(part).substr(0, 12)) != std::string::npos);
        }
    }
    CHECK_FALSE(nlohmann::json::parse(plan_json(planned)).contains("every_train"));
}

TEST_CASE("the JSON of a plan fits its schema, and broken JSON does not") {
    PlanDrawer all;
    all.tonight = true;
    const std::string json = plan_json(club_planned(all), true);
    CHECK(fits_plan_schema(json));
    auto root = nlohmann::json::parse(json);
    REQUIRE_FALSE(root["purchases"].empty());
    root["purposes"][0]["trains"][0].erase("results");
    CHECK_FALSE(fits_plan_schema(root.dump()));
}

TEST_CASE("the words of plan are read, and what cannot be is refused with a hint") {
    const std::array words{"beamfork",  "plan", "harrier-hill", "--for", "Regular",
                           "--purpose", "moon", "--save",       "2",     "moon.train.toml"};
    const auto task = read_command_line(static_cast<int>(words.size()), words.data());
    if (!task) FAIL(to_text(task.error()));
    const auto& asked = std::get<PlanDrawer>(*task);
    CHECK(asked.drawer == "harrier-hill");
    CHECK(asked.observers == std::vector<std::string>{"Regular"});
    CHECK(asked.purposes == std::vector<std::string>{"moon"});
    CHECK(asked.save == 2);
    CHECK(asked.output == "moon.train.toml");
    CHECK(asked.purchases);
    const auto missing = open_drawer("harier-hill");
    REQUIRE_FALSE(missing.has_value());
    CHECK(missing.error().what.find("did you mean 'harrier-hill'") != std::string::npos);
    PlanDrawer wrong;
    wrong.purposes = {"planet"};
    CHECK_FALSE(plan_drawer(open_drawer("harrier-hill")->drawer, wrong).has_value());
}
