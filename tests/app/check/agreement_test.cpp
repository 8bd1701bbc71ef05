// What is told of one fact in the text, the JSON, the findings and the rows of the window is one printed_number, over demos and
// random setups: every printed number must be the JSON's, rounded to the digits that it has.
#include <algorithm>
#include <regex>

#include "app/check/check.hpp"
#include "base/chance.hpp"
#include "desk/open_setup.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/focus/uncertainty_rows.hpp"
#include "scene/light/brightness_rows.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "scene/light/magnification_rows.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

using namespace beamfork;
using namespace test_setups;
using Json = nlohmann::json;

namespace {

// One line of words, however the page was broken.
std::string in_one_line(const std::string& text) {
    return std::regex_replace(text, std::regex("\\s+"), " ");
}

// The printed number agrees with that value to the last of its digits.
void check_told(const std::string& printed, double value) {
    CAPTURE(printed);
    const std::size_t point = printed.find('.');
    const double digit = point == std::string::npos
                             ? 1
                             : std::pow(10, -static_cast<double>(printed.size() - point - 1));
    CHECK(near(std::stod(printed), value, digit / 2 * (1 + 1e-6)));
}

// What the groups of the first match catch, in order, against those values. False: it does not stand there.
bool check_all(const std::string& text,
               const std::string& pattern,
               const std::vector<double>& values) {
    std::smatch found;
    if (!std::regex_search(text, found, std::regex(pattern))) return false;
    CAPTURE(pattern);
    for (std::size_t i = 0; i < values.size(); ++i)
        check_told(found[static_cast<int>(i) + 1], values[i]);
    return true;
}

struct ToldFacts {
    std::string text;
    Json json;  // of the chosen combination
    Json reach;
    const Setup& setup;
    const Report& report;
};

const std::string printed_number = "(-?[0-9.]+)";

void check_power(const ToldFacts& told) {
    const Json& j = told.json;
    const double power = j["magnification"];
    CHECK(check_all(told.text,
                    "Magnification " + printed_number + "×, true field " + printed_number
                        + "°, exit pupil " + printed_number,
                    {power, j["true_field_deg"], j["exit_pupil_mm"]}));
    CHECK(check_all(told.text,
                    "Effective focal length " + printed_number + " mm, f/" + printed_number
                        + " at the field stops, shifter factor " + printed_number,
                    {j["effective_focal_length_mm"], j["focal_ratio"], j["shifter_factor"]}));
    CHECK_FALSE(std::regex_search(told.text, std::regex("[0-9] x[,. ]")));  // told once
    for (const ValueRow& row : magnification_rows(told.report)) {
        if (row.label == "Magnification") check_told(row.value, power);
        if (row.label == "Exit pupil") check_told(row.value, j["exit_pupil_mm"]);
        if (row.label == "True field") check_told(row.value, j["true_field_deg"]);
    }
    CHECK(near(j["brightness"]["exit_pupil_mm"], j["exit_pupil_mm"], rounding));
}

void check_light(const ToldFacts& told) {
    const auto window = light_at_stops_rows(told.setup, told.report);
    const auto bright = brightness_rows(told.setup, told.report);
    for (std::size_t side = 0; side < 2; ++side) {
        const std::string name = side == 0 ? "left" : "right";
        const Json& eye = told.json[name + "_eye"];
        const Json& light = told.json["brightness"][name + "_eye"];
        const double edge = 100 * eye["edge_relative_illumination"].get<double>();
        CHECK(check_all(told.text,
                        name + " eye: fully lit " + printed_number + " of [0-9.]+ mm, edge "
                            + printed_number + " %, working aperture " + printed_number,
                        {eye["fully_illuminated_diameter_mm"], edge, eye["working_aperture_mm"]}));
        CHECK(check_all(
            told.text,
            name + " eye: throughput " + printed_number + " %, " + printed_number
                + " % of the light enters",
            {100 * eye["throughput"].get<double>(), 100 * light["light_into_eye"].get<double>()}));
        const std::string title = side == 0 ? "Left" : "Right";
        const std::string image = eye["sight_view"]["image"];
        CHECK(image == eye["orientation"]["words"]);
        CHECK(told.text.find(title + " eye: image " + image + ",") != std::string::npos);
        const double surface = light["surface_brightness"];
        CHECK(near(eye["sight_view"]["surface_brightness"], surface, rounding));
        CHECK(check_all(told.text,
                        title + " eye: image [^,]*, stars to magnitude " + printed_number
                            + ", surfaces at " + printed_number,
                        {eye["sight_view"]["faintest_magnitude"], 100 * surface}));
        for (const ValueRow& row : window.eyes.at(side).values) {
            if (row.label == "Light at the field's edge" || row.label == "Edge")
                check_told(row.value, edge);
            if (row.label == "Working aperture") check_told(row.value, eye["working_aperture_mm"]);
        }
        CHECK(bright.per_eye.front().label == "Throughput");
        check_told(bright.per_eye.front().values.at(side), 100 * eye["throughput"].get<double>());
    }
}

void check_focus(const ToldFacts& told) {
    const Json& focus = told.json["focus"];
    const double drawtube = focus["drawtube_mm"];
    CHECK(near(focus["budget"].back()["left_mm"], drawtube, 1e-6));
    for (const Json& entry : told.reach["entries"]) {
        const bool is_chosen = entry["eyepiece"] == told.json["eyepiece"]
                               && entry["observer"] == told.json["observer"]
                               && entry["target"] == told.json["target"];
        if (!is_chosen) continue;
        CHECK(entry["reaches"] == focus["reaches"]);
        CHECK(near(entry["shortfall_mm"], focus["shortfall_mm"], 1e-6));
        CHECK(near(entry["margin_in_mm"], focus["margin_in_mm"], 1e-6));
        if (!focus.contains("primary")) CHECK(near(entry["drawtube_mm"], drawtube, 1e-6));
    }
    const TravelScale scale = focus_budget_rows(told.report).travel;
    for (const auto& [words, margin] :
         {std::pair{scale.margin_in, focus["margin_in_mm"].get<double>()},
          std::pair{scale.margin_out, focus["margin_out_mm"].get<double>()}})
        CHECK(check_all(words, "^" + printed_number, {std::abs(margin)}));
    if (!focus.contains("primary") && focus["reaches"] && focus["seats_take_up_mm"] == 0.0
        && focus["seats_lack_mm"] == 0.0) {
        CHECK(check_all(told.text,
                        "Drawtube at " + printed_number + " of [0-9.]+ mm; " + printed_number
                            + " mm left inward, " + printed_number,
                        {drawtube, focus["margin_in_mm"], focus["margin_out_mm"]}));
    }
}

void check_findings(const ToldFacts& told) {
    const Json& j = told.json;
    const auto one_of_eyes = [&](const std::string& printed, const char* key, double times) {
        const double found = std::stod(printed);
        const double left = times * j["left_eye"][key].get<double>();
        const double right = times * j["right_eye"][key].get<double>();
        CHECK(std::min(std::abs(found - left), std::abs(found - right)) <= 0.5 + 1e-6);
    };
    for (const Json& finding : j["findings"]) {
        const std::string id = finding["id"];
        const std::string sentence = finding["sentence"];
        CAPTURE(sentence);
        std::smatch caught;
        if (id == "focus_short" || id == "focus_far")
            CHECK(check_all(sentence, printed_number + " mm", {j["focus"]["shortfall_mm"]}));
        if (id == "focus_reached" && !j["focus"].contains("primary"))
            CHECK(check_all(sentence,
                            printed_number + " mm out; " + printed_number + " mm left inward, "
                                + printed_number,
                            {j["focus"]["drawtube_mm"], j["focus"]["margin_in_mm"],
                             j["focus"]["margin_out_mm"]}));
        if (id == "exit_pupil_wasted" || id == "exit_pupil_tiny")
            CHECK(check_all(sentence, printed_number + " mm", {j["exit_pupil_mm"]}));
        if (id == "edge_dimmed"
            && std::regex_search(sentence, caught, std::regex("gets " + printed_number + " %")))
            one_of_eyes(caught[1], "edge_relative_illumination", 100);
        if (id == "aperture_reduced"
            && std::regex_search(sentence, caught, std::regex("only " + printed_number + " mm")))
            one_of_eyes(caught[1], "working_aperture_mm", 1);
        if (id == "reach_is_unsure" || id == "reach_is_sure") {
            const std::string chance = format_chance(j["uncertainty"]["probability"]);
            CHECK(sentence.find(chance + " %") != std::string::npos);
            CHECK(uncertainty_rows(told.setup, told.report).headline == chance + " % sure");
            CHECK(told.text.find(chance + " % sure") != std::string::npos);
        }
    }
}

void check_same_facts(const Setup& setup) {
    const auto checked = check_setup(setup, CheckedPairs::every, ClippingEffort{96});
    if (!checked) return;
    const Json root = Json::parse(check_json(*checked));
    const ToldFacts told{in_one_line(check_text(*checked)), root["combinations"][checked->chosen],
                         root["reach"], checked->setup,
                         checked->combinations.at(checked->chosen).report};
    check_power(told);
    check_light(told);
    check_focus(told);
    check_findings(told);
}

}  // namespace

TEST_CASE("in every demo text, JSON, findings and window tell the same numbers") {
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        check_same_facts(open_named(demo.name)->document.setup);
    }
}

TEST_CASE("in random setups text, JSON, findings and window tell the same numbers") {
    Random random(92);
    for (int i = 0; i < 30; ++i) {
        CAPTURE(i);
        check_same_facts(random_setup(random));
    }
}
