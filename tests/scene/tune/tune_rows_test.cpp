#include "parts/refractor.hpp"
#include "scene/kit/plot_axis.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tune/tune_rows.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

TuneStudy tuned_study(const Setup& setup,
                      const std::string& varied,
                      const std::string& watched,
                      const std::string& wanted) {
    const TuneChoice choice = tune_choice(setup, varied, watched, wanted);
    auto study = study_tuning(setup, setup.chosen, choice.question, {64});
    REQUIRE(study.has_value());
    study->changes = sensitivities(setup, setup.chosen, choice.question.watched, {64});
    study->has_changes = true;
    return *std::move(study);
}

std::string back_focus_of(const Setup& setup) {
    return setup.parts.front().name + ".back_focus_mm";
}

}  // namespace

TEST_CASE("an axis has round numbers at their places") {
    const auto ticks = even_ticks(-12, 38, 5);
    REQUIRE(ticks.size() == 5);  // -10, 0, 10, 20, 30
    CHECK(ticks.front().text == "-10");
    CHECK(near(ticks.front().place, 2.0 / 50, 1e-12));
    CHECK(ticks.back().text == "30");
    CHECK(even_ticks(0, 0.5, 5)[1].text == "0.1");
    const auto decades = logarithmic_ticks(5, 500);
    REQUIRE(decades.size() == 7);  // 5 10 20 50 100 200 500
    CHECK(decades[3].text == "50");
    CHECK(near(decades[3].place, 0.5, 1e-12));
    CHECK(logarithmic_ticks(1, 1e5).size() == 6);  // decades alone
    CHECK(logarithmic_ticks(1, 1e5).back().text == "100000");
    CHECK(logarithmic_ticks(0.05, 5).front().text == "0.05");
}

TEST_CASE(
    "the answer names the value that gives the wanted margin, and says what focus does there") {
    // Each mm of back focus is one of margin inward: 30 mm short (the sample) and 5 to spare are 35 mm more.
    const Setup setup = short_setup();
    const TuneStudy study = tuned_study(setup, back_focus_of(setup), "margin", "5 mm");
    const TuneRows rows = tune_rows(setup, study);
    CHECK(rows.headline_role == ColourRole::shortfall);
    const double missing = 5 - *study.now.value;
    REQUIRE_FALSE(rows.answers.empty());
    CHECK(near(rows.answers.front().value, study.tunable.now + missing,
               0.0006));  // set to a thousandth
    CHECK(rows.answers.front().role == ColourRole::good);
    CHECK(rows.answers.front().note.find("5 mm to spare") != std::string::npos);
    CHECK(rows.answer_more.find("or more from") != std::string::npos);
}

TEST_CASE("the plot lies within its square, with the present place on the curve") {
    const Setup setup = cured_setup();
    const TuneRows rows = tune_rows(setup, tuned_study(setup, back_focus_of(setup), "margin", "5"));
    REQUIRE(rows.now.has_value());
    REQUIRE_FALSE(rows.lines.empty());
    for (const auto& line : rows.lines) {
        for (const PlotPlace& place : line) {
            CHECK(place.x >= 0);
            CHECK(place.x <= 1);
            CHECK(place.y >= 0);
            CHECK(place.y <= 1);
        }
    }
    bool is_on_curve = false;
    for (std::size_t i = 1; i < rows.lines[0].size(); ++i) {
        const PlotPlace a = rows.lines[0][i - 1];
        const PlotPlace b = rows.lines[0][i];
        if (rows.now->x < a.x || rows.now->x > b.x) continue;
        const double y = a.y + (b.y - a.y) * (rows.now->x - a.x) / (b.x - a.x);
        is_on_curve = is_on_curve || std::abs(y - rows.now->y) < 1e-6;
    }
    CHECK(is_on_curve);
}

TEST_CASE("moved since it was studied, the present place follows along the curve") {
    Setup setup = cured_setup();
    const TuneStudy study = tuned_study(setup, back_focus_of(setup), "margin", "");
    const double before = *study.now.value;
    setup.parts.front().body.get<Refractor>().back_focus.value -= 2;
    const TuneRows rows = tune_rows(setup, study);
    const std::string wanted = watched_text(info_of(Watched::margin), before - 2);
    CHECK(rows.headline == "Focus margin: " + wanted);
    CHECK(rows.answer.empty());
}

TEST_CASE("a wanted result that cannot be had names the nearest, with its own button") {
    const Setup setup = cured_setup();
    const TuneRows rows =
        tune_rows(setup, tuned_study(setup, back_focus_of(setup), "margin", "400"));
    CHECK(rows.answer.find("No Back focus from −100 to 1000 mm gives 400.0 mm")
          != std::string::npos);
    REQUIRE(rows.answers.size() == 1);
    CHECK(rows.answers.front().is_nearest);
}

TEST_CASE("a number without effect says so instead of answering") {
    const Setup setup = short_setup();  // no shifter: its factor is 1 whatever is changed
    const TuneRows rows = tune_rows(setup, tuned_study(setup, back_focus_of(setup), "factor", "2"));
    CHECK(rows.note.find("does not change") != std::string::npos);
    CHECK(rows.answers.empty());
    CHECK(rows.answer.find("changes nothing") != std::string::npos);
}

TEST_CASE("the table's largest effect fills its bar, and its help tells slope and source") {
    const Setup setup = cured_setup();
    const TuneRows rows = tune_rows(setup, tuned_study(setup, back_focus_of(setup), "margin", ""));
    REQUIRE(rows.changes.size() > 3);
    CHECK(near(std::abs(rows.changes.front().share), 1, 1e-12));
    for (const TuneChangeRow& row : rows.changes) {
        CHECK(std::abs(row.share) <= 1);
        CHECK(row.help.find("central difference") != std::string::npos);
    }
}

TEST_CASE("names of another setup fall back, and what cannot be read as a number is refused") {
    const Setup setup = short_setup();
    const TuneChoice choice = tune_choice(setup, "Nobody's.length_mm", "nonsense", "wide");
    REQUIRE_FALSE(choice.tunables.empty());
    CHECK(choice.question.varied == choice.tunables[choice.chosen].varied);
    CHECK(choice.question.watched == Watched::margin);
    CHECK_FALSE(choice.question.wanted.has_value());
    CHECK(choice.problem.find("“wide”") != std::string::npos);
    CHECK(tune_choice(setup, "", "true_field", "30'").question.wanted == 0.5);
}
