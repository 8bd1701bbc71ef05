#include <cmath>

#include "parts/filter_plate.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/tune/tune_answer.hpp"
#include "study/tune/tune_sensitivity.hpp"
#include "study/tune/tune_study.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Part adapter(double length) {
    Spacer spacer;
    spacer.length = {length};
    spacer.clear_diameter = {150};
    return {"Adapter", spacer, {}};
}

Tunable number(const Setup& setup, const std::string& name) {
    const auto known = tunables(setup, setup.chosen);
    const auto found = find_tunable(setup, known, name);
    REQUIRE(found.has_value());
    return *found;
}

struct Tuned {
    Tuner tuner;
    TuneCurve curve;
    TuneAnswer answer;
};

Tuned tuned(
    const Setup& setup, const std::string& name, Watched watched, double wanted, TuneRange range) {
    Tuner tuner(setup, setup.chosen, number(setup, name).varied, watched);
    TuneCurve curve = tune_curve(tuner, range);
    TuneAnswer answer = solve_for(tuner, curve, wanted);
    return {std::move(tuner), std::move(curve), std::move(answer)};
}

double slope_of(const std::vector<Sensitivity>& all, const Setup& setup, const std::string& name) {
    for (const Sensitivity& one : all) {
        if (name_of(setup, one.tunable.varied) == name) return one.per_unit;
    }
    return 0;
}

}  // namespace

TEST_CASE("every millimetre of air takes one of margin, and beyond the middle of the travel gives "
          "it back") {
    // The margin is the smaller of w and T - w, with w the wanted extension, which falls by 1 mm for each mm of air,
    // and T the travel: it is W or more over a stretch of T - 2 W, and at most T / 2.
    Setup setup = wide_setup({adapter(20)});
    the<Refractor>(setup).back_focus = {500};  // so that both ends of the travel can be met
    const auto w = focus_budget(setup, setup.chosen)->wanted_drawtube.value;
    const Tuned found = tuned(setup, "Adapter.length_mm", Watched::margin, 60, {0, 500});
    REQUIRE(found.answer.crossings.size() == 2);
    CHECK(near(found.answer.crossings[1].at, 20 + w - 60, 1e-6));  // the solver's width
    CHECK(near(found.answer.crossings[1].at - found.answer.crossings[0].at, 300 - 2 * 60, 1e-6));
    CHECK(found.answer.crossings[0].is_rising);
    CHECK_FALSE(found.answer.crossings[1].is_rising);
    REQUIRE(found.answer.at_least.size() == 1);
    CHECK(near(found.answer.at_least[0].high - found.answer.at_least[0].low, 180, 1e-6));
    REQUIRE(found.curve.in_focus.size() == 1);
    CHECK(near(found.curve.in_focus[0].high, 20 + w, 1e-5));
    for (const TuneCrossing& crossing : found.answer.crossings)
        CHECK(near(crossing.margin, 60, 1e-6));
}

TEST_CASE("no more than half of the travel can be spare: then the answer is none, and the middle "
          "comes nearest") {
    Setup setup = wide_setup({adapter(20)});
    the<Refractor>(setup).back_focus = {500};  // so that both ends of the travel can be met
    const auto w = focus_budget(setup, setup.chosen)->wanted_drawtube.value;
    const Tuned found = tuned(setup, "Adapter.length_mm", Watched::margin, 151, {0, 500});
    CHECK_FALSE(found.answer.is_found());
    CHECK(found.answer.at_least.empty());
    REQUIRE(found.answer.nearest.has_value());
    CHECK(near(*found.answer.nearest->value, 150, 1e-6));
    CHECK(near(found.answer.nearest->at, 20 + w - 150, 1e-6));
}

TEST_CASE(
    "a shifter doubles where the image lies one focal length behind it, and each mm adds 1 / |f|") {
    // Thin negative lens: factor 1 + d / |f| (tests/reference/negative_lens.hpp).
    Setup setup = wide_setup({bare_lens(-300, 0), adapter(10)});
    const Tuned found = tuned(setup, "Adapter.length_mm", Watched::factor, 2, {0, 500});
    REQUIRE(found.answer.crossings.size() == 1);
    the<Spacer>(setup).length = {found.answer.crossings[0].at};
    const auto budget = focus_budget(setup, setup.chosen);
    CHECK(near(budget->shifters.front().image_distance.value, 300, 1e-5));
    const auto changes = sensitivities(setup, setup.chosen, Watched::factor);
    CHECK(near(slope_of(changes, setup, "Adapter.length_mm"), 1.0 / 300, 1e-9));
    CHECK(slope_of(changes, setup, "Telescope.back_focus_mm") == 0);
}

TEST_CASE("a plate in place of air gives back the share 1 - 1/n of its thickness") {
    // t (n - 1) / n: W. J. Smith, Modern Optical Engineering, 4th ed., Fig. 7.14; N-BK7 at the e line 1.518722
    // (tests/reference/glass_indices.hpp).
    FilterPlate plate;
    plate.ring_length = {50};
    plate.thickness = {8};
    plate.clear_diameter = {150};
    plate.glass = "N-BK7";
    const Setup setup = wide_setup({Part{"Plate", plate, {}}, adapter(100)});
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget->margin_in.value < budget->margin_out.value);
    const auto changes = sensitivities(setup, setup.chosen, Watched::margin);
    CHECK(near(slope_of(changes, setup, "Plate.thickness_mm"), 1 - 1 / 1.518722,
               1e-6));  // printed digits
    CHECK(near(slope_of(changes, setup, "Plate.ring_length_mm"), -1, 1e-9));
    CHECK(near(slope_of(changes, setup, "Adapter.length_mm"), -1, 1e-9));
    CHECK(near(slope_of(changes, setup, "Telescope.back_focus_mm"), 1, 1e-9));
    CHECK(slope_of(changes, setup, "Focuser.travel_mm") == 0);  // the other end is nearer
    for (std::size_t i = 1; i < changes.size(); ++i)
        CHECK(std::abs(changes[i - 1].per_step()) >= std::abs(changes[i].per_step()));
}

TEST_CASE("power, field and exit pupil are solved for by their closed forms") {
    // W. J. Smith, 4th ed., sec. 13.1: F / f, D f / F; field 2 atan(s / (2 F)).
    const Setup setup = wide_setup({adapter(20)});  // F = 700, D = 100
    const auto one = [&](const char* name, Watched watched, double wanted, TuneRange range) {
        const Tuned found = tuned(setup, name, watched, wanted, range);
        REQUIRE(found.answer.crossings.size() == 1);
        return found.answer.crossings[0].at;
    };
    CHECK(near(one("Eyepieces.focal_length_mm", Watched::magnification, 50, {3, 60}), 14, 1e-6));
    CHECK(near(one("Eyepieces.focal_length_mm", Watched::exit_pupil, 3, {3, 60}), 21, 1e-6));
    CHECK(near(one("Eyepieces.field_stop_mm", Watched::true_field, 1.5, {5, 45}),
               2 * 700 * std::tan(0.75 * std::acos(-1) / 180), 1e-6));
}

TEST_CASE("one narrow opening in the cone leaves as much aperture as the cone's geometry says") {
    // Similar triangles: an opening c at distance s before the focus passes the aperture c F / s. The drawtube's
    // rear face, where the adapter begins, stands at its extension behind the racked-in place.
    Setup setup = wide_setup({adapter(20)});
    const auto budget = focus_budget(setup, setup.chosen);
    const double s = the<Refractor>(setup).back_focus.value - budget->drawtube.value;
    const Tuned found =
        tuned(setup, "Adapter.clear_diameter_mm", Watched::working_aperture, 80, {5, 60});
    REQUIRE(found.answer.crossings.size() == 1);
    // An ideal objective's sines instead of tangents: 0.3 % at f/7; 1 % of 256 counted rays.
    CHECK(near(found.answer.crossings[0].at, 80.0 / 700 * s, 0.012 * 80.0 / 700 * s));
    const Tuned whole =
        tuned(setup, "Adapter.clear_diameter_mm", Watched::edge_light, 99.9, {5, 150});
    REQUIRE(whole.answer.at_least.size() == 1);
    CHECK(whole.answer.at_least[0].high == 150);
    double before = 0;  // a wider opening never takes more
    for (const TunePoint& point : whole.curve.points) {
        REQUIRE(point.value.has_value());
        CHECK(*point.value >= before - 1e-9);
        before = *point.value;
    }
}

TEST_CASE("every sharpness that an opening can give is found, though counted rays come and go one "
          "by one") {
    // A narrower cone loses less in thick glass, down to a perfect image: between the widest opening's peak and nearly all
    // of it every value is taken (continuity).
    Setup setup = wide_setup({adapter(20)});
    the<Refractor>(setup).focal_length = {500};
    const Tuned whole =
        tuned(setup, "Adapter.clear_diameter_mm", Watched::sharpness, 90, {15, 100});
    double least = 100;
    double most = 0;
    for (const TunePoint& point : whole.curve.points) {
        REQUIRE(point.value.has_value());
        least = std::min(least, *point.value);
        most = std::max(most, *point.value);
    }
    REQUIRE(most - least > 15);
    for (double wanted = least + 1; wanted < most - 1; wanted += 2.5) {
        CAPTURE(wanted);
        const Tuned found =
            tuned(setup, "Adapter.clear_diameter_mm", Watched::sharpness, wanted, {15, 100});
        REQUIRE(found.answer.is_found());
        CHECK(near(found.answer.crossings[0].value, wanted, 1.5));  // a stair of counted rays
    }
}

TEST_CASE("the curve breaks off where the parts contradict themselves, and says why") {
    FilterPlate plate;
    plate.ring_length = {6};
    plate.clear_diameter = {150};
    const Setup setup = wide_setup({Part{"Plate", plate, {}}});
    const Tuned found = tuned(setup, "Plate.thickness_mm", Watched::margin, 5, {0.5, 12});
    REQUIRE(found.curve.runs.size() == 1);  // a plate thicker than its ring does not fit
    CHECK(near(found.curve.points[found.curve.runs[0].end - 1].at, 6, 12e-5));
    CHECK(found.curve.why_not.find("ring_length_mm") != std::string::npos);
}

TEST_CASE(
    "a lens of no power lies between two branches that never meet: a factor of exactly 1 only "
    "as a relay of half its distance") {
    // |1 - d / f| = 1: nowhere for a lens of finite power but at f = d / 2, which turns the image.
    const Setup setup = wide_setup({bare_lens(-300, 0), adapter(10)});
    const auto budget = solved_focus(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const double distance = budget->shifters.front().image_distance.value;
    const Tuned found = tuned(setup, "Lens.focal_length_mm", Watched::factor, 1, {-400, 400});
    CHECK(found.curve.runs.size() == 2);
    REQUIRE(found.answer.crossings.size() == 1);
    CHECK(near(found.answer.crossings.front().at, distance / 2, 0.01));
    const Tuned weak = tuned(setup, "Lens.focal_length_mm", Watched::factor, 1, {200, 400});
    CHECK_FALSE(weak.answer.is_found());
    REQUIRE(weak.answer.nearest.has_value());
    CHECK(weak.answer.nearest->at == 400);  // nearest 1 for the weakest lens
}

TEST_CASE(
    "a flat curve that has the wanted result everywhere answers, one that has another does not") {
    const Setup setup = wide_setup({adapter(10)});  // without any shifter the factor is 1
    CHECK(tuned(setup, "Adapter.length_mm", Watched::factor, 1, {0, 100}).answer.is_found());
    CHECK_FALSE(tuned(setup, "Adapter.length_mm", Watched::factor, 2, {0, 100}).answer.is_found());
}

TEST_CASE("the pupil distance moves focus with sliding arms alone, and observers' eyes by f^2 / "
          "1000 per dioptre") {
    // Smith p. 290: f_e^2 / 1000 mm per dioptre, shared by both eyes here.
    const Setup setup = wide_setup({adapter(10)});
    const auto changes = sensitivities(setup, setup.chosen, Watched::margin);
    CHECK(slope_of(changes, setup, "Observer.pupil_distance_mm") == 0);
    const double both = slope_of(changes, setup, "Observer.left_dioptres")
                        + slope_of(changes, setup, "Observer.right_dioptres");
    CHECK(near(std::abs(both), 25.0 * 25 / 1000, 1e-6));
}

TEST_CASE("names find their numbers, and mistyped ones the nearest") {
    const Setup setup = wide_setup({adapter(10)});
    const auto known = tunables(setup, setup.chosen);
    for (const Tunable& one : known)
        CHECK(find_tunable(setup, known, name_of(setup, one.varied))->varied == one.varied);
    const auto missed = find_tunable(setup, known, "Adaptor.lenght_mm");
    REQUIRE_FALSE(missed.has_value());
    CHECK(missed.error().what.find("'Adapter.length_mm'") != std::string::npos);
    for (const WatchedInfo& info : watched_results()) {
        CHECK(find_watched(info.key) == info.watched);
        CHECK(&info_of(info.watched) == &info);
    }
    CHECK(find_watched("margn").error().what.find("'margin'") != std::string::npos);
}

TEST_CASE("what solves lies anywhere in what is accepted, also beyond what the curve shows") {
    Setup setup = wide_setup({adapter(20)});
    the<Refractor>(setup).back_focus = {500};
    const auto at = number(setup, "Adapter.length_mm");
    const double w = focus_budget(setup, setup.chosen)->wanted_drawtube.value;
    const auto study = study_tuning(setup, setup.chosen, {at.varied, Watched::margin, 5.0, false});
    REQUIRE(study.has_value());
    CHECK(near(*study->now.value, 300 - w, 1e-9));
    REQUIRE(study->answer->crossings.size() == 2);
    CHECK(study->answer->crossings[1].at > study->curve.range.high);
    CHECK(near(study->answer->crossings[1].at, 20 + w - 5, 1e-6));
    CHECK_FALSE(
        study_tuning(setup, setup.chosen, {{0, "tube_mass_g"}, Watched::margin, {}, false}));
}

TEST_CASE("a lens is not moved past the image that it is to move") {
    Setup setup = wide_setup({bare_lens(-300, 0), adapter(10)});
    the<EyepiecePair>(setup).field_stop_depth = {145};  // else the head's glass comes first
    const double d = focus_budget(setup, setup.chosen)->shifters.front().image_distance.value;
    const Tuned found =
        tuned(setup, "Lens.lens_offset_mm", Watched::factor, 0.9, {-100, std::min(200.0, d + 50)});
    CHECK_FALSE(found.answer.is_found());  // behind the image 1 + d / |f| would be less than 1
    REQUIRE(found.curve.runs.size() == 1);
    const TunePoint& last = found.curve.points[found.curve.runs[0].end - 1];
    CHECK(near(last.at, d, 0.01));  // a hundred-thousandth of the range, and a little more
    CHECK(near(*last.value, 1, 1e-4));
    CHECK(found.curve.why_not.find("behind the image") != std::string::npos);
}

TEST_CASE("work that nobody waits for is left") {
    const Setup setup = wide_setup({adapter(10)});
    Tuner tuner(setup, setup.chosen, number(setup, "Adapter.length_mm").varied, Watched::margin);
    CHECK(tune_curve(tuner, {0, 100}, 60, [] { return true; }).points.empty());
    CHECK(sensitivities(setup, setup.chosen, Watched::margin, {}, [] { return true; }).empty());
}

TEST_CASE("every result has a curve over every number of a plain setup") {
    const Setup setup = plain_setup({bare_lens(-120, 0), adapter(12)});
    for (const WatchedInfo& info : watched_results()) {
        const auto at = number(setup, "Adapter.length_mm");
        Tuner tuner(setup, setup.chosen, at.varied, info.watched, {64});
        const TuneCurve curve = tune_curve(tuner, usual_range(at), 6);
        CAPTURE(info.key);
        REQUIRE(curve.points.size() >= 7);
        for (const TunePoint& point : curve.points) {
            REQUIRE(point.value.has_value());
            CHECK(std::isfinite(*point.value));
        }
    }
}
