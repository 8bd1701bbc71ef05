#include <cmath>
#include <functional>

#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/prisms.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "reference/coatings.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Report light_report_of(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, {64});
    REQUIRE(report.has_value());
    return *std::move(report);
}

// A wide setup whose head reflects totally, behind a lens of no faces and before eyepieces of none: all that takes
// light is the head.
Setup head_alone() {
    Setup setup = wide_setup();
    the<Refractor>(setup).lens_faces = 0;
    the<EyepiecePair>(setup).lens_faces = 0;
    the<SplitterHead>(setup).reflecting_faces = FaceCoating::bare;
    return setup;
}

double passes(const EyeBrightness& eye, const std::string& face) {
    for (const LightStep& step : eye.steps) {
        if (step.face == face) return step.passes;
    }
    FAIL("no such face: " << face);
    return 0;
}

}  // namespace

TEST_CASE("an uncoated head passes half of (1 - R)^4 of its light to each eye") {
    // Each arm has four faces to air: cube in and out, arm prism or rhomboid in, and the last face.
    for (const auto& row : reference::divided_lights) {
        CHECK(near(0.5 * std::pow(1 - row.reflectance, row.faces), row.share, 1e-5));
        CHECK(near(magnitudes(row.share), row.magnitudes, 1e-4));  // last printed digit
    }
    Setup setup = head_alone();
    auto& head = the<SplitterHead>(setup);
    head.coating = AntiReflection::uncoated;
    head.glass = "N-BK7";
    for (const EyeBrightness& eye : light_report_of(setup).brightness.eyes) {
        // The row is for n_d = 1.5168. At the e line n = 1.51872 and R is 2.7e-4 larger (Fresnel): four faces of
        // it take 4 x 0.42 x 2.7e-4 / 0.958 = 4.7e-4 more, 1.3e-3 magnitudes.
        CHECK(near(eye.throughput, 0.42086, 5e-4));
        CHECK(near(magnitudes(eye.total()), 0.9396, 1.4e-3));
    }
    head.coating = AntiReflection::multi_layer;
    for (const EyeBrightness& eye : light_report_of(setup).brightness.eyes)
        CHECK(near(eye.throughput, 0.49007, 1e-5));
}

TEST_CASE(
    "the division's share and loss go to the eyes as stated, and total reflection loses nothing") {
    Setup setup = head_alone();
    auto& head = the<SplitterHead>(setup);
    head.reflected_percent = 40;
    head.splitter_loss_percent = 10;
    const Brightness light = light_report_of(setup).brightness;
    CHECK(near(passes(light.eyes[0], "cube interface"), 0.36, 1e-12));
    CHECK(near(passes(light.eyes[1], "cube interface"), 0.54, 1e-12));
    CHECK(passes(light.eyes[0], "arm prism hypotenuse") == 1);
    CHECK(near(light.difference(), 1 - 0.36 / 0.54, 1e-9));
}

TEST_CASE("an ideal half-mirror costs each eye 0.753 mag and two eyes at sqrt 2 half of that") {
    CHECK(near(magnitudes(0.5), reference::half_in_magnitudes, 1e-6));
    CHECK(near(-magnitudes(two_eye_gain[0]), reference::root_two_in_magnitudes, 1e-6));
    Brightness ideal;
    ideal.eyes[0].throughput = ideal.eyes[1].throughput = 0.5;
    CHECK(near(ideal.one_eye_change(), -reference::half_in_magnitudes, 1e-6));
    CHECK(near(ideal.two_eye_change()[0],
               reference::root_two_in_magnitudes - reference::half_in_magnitudes, 1e-6));
    CHECK(ideal.two_eye_change()[1] > ideal.two_eye_change()[0]);
    // Unchanged where the throughput without the head is lower by the same factor.
    ideal.without_head = 0.9;
    ideal.eyes[0].throughput = ideal.eyes[1].throughput = 0.45;
    CHECK(near(ideal.one_eye_change(), -reference::half_in_magnitudes, 1e-6));
}

TEST_CASE(
    "areas are as bright as the exit pupil fills the eye's pupil, never above the throughput") {
    for (const auto& row : reference::surface_brightnesses) {
        CAPTURE(row.exit_pupil);
        CHECK(near(magnitudes(row.ratio), row.magnitudes,
                   3e-4));  // printed to five digits of the ratio
        Setup setup = head_alone();
        the<Observer>(setup).eye_pupil = {7};
        the<EyepiecePair>(setup).focal_length = {7 * row.exit_pupil};  // at f/7
        const Report report = light_report_of(setup);
        REQUIRE(near(report.magnification.exit_pupil.value, row.exit_pupil, 1e-9));
        for (const EyeBrightness& eye : report.brightness.eyes) {
            CHECK(near(eye.surface_brightness / eye.throughput, row.ratio, 1e-5));
            CHECK(near(eye.into_pupil, 1, 1e-9));
        }
    }
    Setup wide = head_alone();
    the<Observer>(wide).eye_pupil = {4};
    the<EyepiecePair>(wide).focal_length = {7 * 6.0};
    for (const EyeBrightness& eye : light_report_of(wide).brightness.eyes) {
        CHECK(near(eye.surface_brightness, eye.throughput, 1e-9));
        CHECK(near(eye.into_pupil, std::pow(4.0 / 6.0, 2), 1e-9));
    }
}

TEST_CASE("what an opening stops on axis is lost for the eye") {
    Setup setup = head_alone();
    the<SplitterHead>(setup).nose_length = {0};
    const double whole = light_report_of(setup).brightness.eyes[0].total();
    the<SplitterHead>(setup).entry_clear = {12};
    const Report narrow = light_report_of(setup);
    REQUIRE(narrow.clipping[0].points.front().relative < 0.9);
    CHECK(near(narrow.brightness.eyes[0].total(),
               whole * narrow.clipping[0].points.front().relative, 1e-9));
}

TEST_CASE("mirrors, lenses and coatings ahead of the head take from both eyes and from one alike") {
    MirrorDiagonal diagonal;
    diagonal.clear_diameter = {80};
    diagonal.entry_leg = diagonal.exit_leg = {45};
    diagonal.coating = MirrorCoating::aluminium;
    Setup setup = wide_setup({{"Diagonal", diagonal, {}}});
    the<Refractor>(setup).coating = AntiReflection::uncoated;
    the<Refractor>(setup).lens_faces = 2;
    const Brightness light = light_report_of(setup).brightness;
    const double bare = std::pow((lens_glass_index - 1) / (lens_glass_index + 1), 2);
    CHECK(near(passes(light.eyes[1], "objective"), std::pow(1 - bare, 2), 1e-12));
    CHECK(near(passes(light.eyes[1], "mirror"), 0.88, 1e-12));
    const double eyepiece = std::pow(1 - 0.005, 6);
    CHECK(near(light.without_head, std::pow(1 - bare, 2) * 0.88 * eyepiece, 1e-12));
}

TEST_CASE("findings tell of lossy faces, of eyes that differ and of dim areas, and only then") {
    const auto has = [](const Setup& setup, const std::string& id) {
        const auto findings = light_report_of(setup).findings;
        return std::any_of(findings.begin(), findings.end(),
                           [&](const Finding& finding) { return finding.id == id; });
    };
    const auto comes_by = [&](const std::string& id, const std::function<void(Setup&)>& change) {
        Setup setup = head_alone();
        CHECK_FALSE(has(setup, id));
        change(setup);
        CHECK(has(setup, id));
    };
    comes_by("throughput_low", [](Setup& setup) {
        the<SplitterHead>(setup).coating = AntiReflection::uncoated;
        the<EyepiecePair>(setup).lens_faces = 8;
        the<EyepiecePair>(setup).coating = AntiReflection::uncoated;
    });
    comes_by("unequal_light",
             [](Setup& setup) { the<SplitterHead>(setup).reflected_percent = 40; });
    comes_by("dim_objects", [](Setup& setup) { the<EyepiecePair>(setup).focal_length = {5}; });
}

TEST_CASE("a Newtonian's vanes take their shadow's share of the light, on top of the secondary's") {
    Setup setup = wide_setup();
    Newtonian telescope;
    telescope.back_focus = {240};
    telescope.secondary_minor_axis = {100};
    telescope.vane_count = 3;
    telescope.vane_width = {2};
    setup.parts.front().body = telescope;
    the<Focuser>(setup).drawtube_length = {20};
    const Brightness with = light_report_of(setup).brightness;
    the<Newtonian>(setup).vane_width = {0};
    const Brightness without = light_report_of(setup).brightness;
    // Plane geometry: 3 x 2 x (200 - 100) / 2 = 300 of 31415.93 mm^2; the ring that is left is 3/4 of the disc.
    const double shadow = 300 / 31415.9265;
    for (std::size_t side = 0; side < 2; ++side) {
        CHECK(near(with.eyes[side].unobstructed, 0.75 - shadow, 1e-9));
        CHECK(near(without.eyes[side].unobstructed, 0.75, 1e-12));
        CHECK(near(with.eyes[side].total() / without.eyes[side].total(), 1 - shadow / 0.75, 1e-9));
        CHECK(near(with.eyes[side].surface_brightness / without.eyes[side].surface_brightness,
                   1 - shadow / 0.75, 1e-9));
    }
}

TEST_CASE("a filter's stated transmission takes the place of its faces' losses, once") {
    Setup setup = wide_setup({{"Filter", FilterPlate{}, {}}});
    const Brightness plain = light_report_of(setup).brightness;
    the<FilterPlate>(setup).transmission = 25;
    const Brightness filtered = light_report_of(setup).brightness;
    for (std::size_t side = 0; side < 2; ++side) {
        // Its two faces pass 0.995 each otherwise (multi-layer, glass/coating.hpp).
        CHECK(near(filtered.eyes[side].throughput / plain.eyes[side].throughput,
                   0.25 / (0.995 * 0.995), 1e-9));
        CHECK(near(passes(filtered.eyes[side], "filter entry face"), 0.25, 1e-12));
    }
    CHECK(near(filtered.without_head / plain.without_head, 0.25 / (0.995 * 0.995), 1e-9));
    the<FilterPlate>(setup).transmission = 100;
    CHECK(near(light_report_of(setup).brightness.eyes[0].throughput,
               plain.eyes[0].throughput / (0.995 * 0.995), 1e-9));
}

TEST_CASE("a filter in one eyepiece's barrel dims that eye alone, and is told of") {
    Setup setup = wide_setup();
    const Brightness plain = light_report_of(setup).brightness;
    the<EyepiecePair>(setup).left_filter = 40;
    const Report report = light_report_of(setup);
    const Brightness& filtered = report.brightness;
    CHECK(near(filtered.eyes[0].throughput, 0.4 * plain.eyes[0].throughput, 1e-12));
    CHECK(near(filtered.eyes[1].throughput, plain.eyes[1].throughput, 1e-12));
    CHECK(near(magnitudes(filtered.eyes[0].total() / plain.eyes[0].total()), 0.99485,
               1e-5));  // 2.5 lg 2.5
    CHECK(near(filtered.eyes[0].coatings, plain.eyes[0].coatings, 1e-12));
    CHECK(near(filtered.without_head, plain.without_head, 1e-12));
    std::vector<std::string> told;
    for (const Finding& finding : report.findings) {
        if (finding.id == "filter_light") told.push_back(finding.sentence);
    }
    REQUIRE(told.size() == 1);
    CHECK(told[0].find("to the left eye: 0.99 magnitudes less") != std::string::npos);
    the<EyepiecePair>(setup).right_filter = 40;
    CHECK(near(light_report_of(setup).brightness.without_head, 0.4 * plain.without_head, 1e-12));
}
