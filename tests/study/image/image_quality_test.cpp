// Image quality of whole trains against closed forms for their glass, and what corrects it.
#include <cmath>

#include "reference/plane_plate.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

double glass_of(const Report& report) {
    double sum = 0;
    for (const LightPath& path : report.train.light_paths)
        sum += path.glass;
    return sum;
}

Report image_report_of(const Setup& setup) {
    return make_report(setup, setup.chosen, ClippingEffort{192}).value();
}

PerWavelength indices(const std::string& glass) {
    PerWavelength n{};
    for (std::size_t w = 0; w < wavelength_count; ++w)
        n[w] = refractive_index(standard_catalogue().find(glass).value(), traced_wavelengths[w])
                   .value();
    return n;
}

bool has(const Report& report, const std::string& id) {
    return std::any_of(report.findings.begin(), report.findings.end(),
                       [&](const Finding& finding) { return finding.id == id; });
}

Part mirror() { return {"Mirror", MirrorDiagonal{}, {}}; }

}  // namespace

TEST_CASE("the faults of a head's prisms are those of one plate of their glass") {
    for (const double focal : {500.0, 700.0, 1000.0}) {
        CAPTURE(focal);
        Setup setup = wide_setup();
        the<Refractor>(setup).focal_length = {focal};
        const Report report = image_report_of(setup);
        const PerWavelength n = indices(the<SplitterHead>(setup).glass);
        const double t = glass_of(report);
        const double u = 50 / focal;  // the sine of the rim, 100 mm aperture
        for (const EyeImage& eye : report.image_quality) {
            CHECK(near(eye.focal_ratio, focal / 100, 1e-6 * focal));
            // W. J. Smith, Modern Optical Engineering, 4th ed., sec. 7.8; exact in the index, rays at 1/100 of the rim.
            CHECK(near(eye.axial_colour(), t * (1 / n[2] - 1 / n[0]), 1e-4));
            CHECK(near(eye.blue_shift, t * (1 / n[1] - 1 / n[0]), 1e-4));
            const double cosine = std::sqrt(1 - u * u);
            const double exact = t / n[1] * (1 - n[1] * cosine / std::sqrt(n[1] * n[1] - u * u));
            CHECK(near(eye.spherical, exact, 1e-4));
            const double w040 =
                t * std::pow(u, 4) * (n[1] * n[1] - 1) / (8 * std::pow(n[1], 3)) / 546.0740e-6;
            CHECK(near(eye.axis.aberrations.spherical, w040,
                       0.02 * w040));  // 96 rays; next order u^2
            // RMS of pure spherical aberration against the best sphere: W040 / (6 sqrt 5), from memory.
            CHECK(near(eye.axis.rms_waves, w040 / (6 * std::sqrt(5.0)), 0.06 * eye.axis.rms_waves));
            CHECK(eye.axis.day_peak < eye.axis.green_peak);
            CHECK(eye.axis.night_peak < eye.axis.day_peak);  // rods see more of the blue
        }
    }
}

TEST_CASE("off axis the prisms add the handbook's coma, astigmatism and lateral colour") {
    Setup setup = wide_setup();
    const Report report = image_report_of(setup);
    const PerWavelength n = indices(the<SplitterHead>(setup).glass);
    const double t = glass_of(report);
    const double u = 1.0 / 14;
    const double up = the<EyepiecePair>(setup).field_stop.value / 2 / 700;
    const double n3 = (n[1] * n[1] - 1) / (n[1] * n[1] * n[1]) / 546.0740e-6;
    for (const EyeImage& eye : report.image_quality) {
        const Aberrations& found = eye.edge.aberrations;
        // Smith, sec. 7.8 as in wavefront_test; here the fit rests on 96 rays.
        const double coma = t * u * u * u * up * n3 / 2;
        const double astigmatism = t * up * up * u * u * n3 / 2;
        CHECK(near(found.coma, coma, 0.03 * coma));
        CHECK(near(found.astigmatism, astigmatism, 0.05 * astigmatism));
        // The chief ray leaves displaced by t up (1 - 1/n): the colours differ by t up (1/nC - 1/nF).
        const double lateral = t * up * (1 / n[2] - 1 / n[0]);
        CHECK(near(eye.edge.lateral_colour(), lateral, 0.01 * lateral));
        CHECK(near(eye.axis.lateral_colour(), 0, 1e-9));
    }
}

TEST_CASE("a lens of factor M ahead of the glass divides colour by M squared and spherical error "
          "by its fourth power") {
    const Report plain = image_report_of(wide_setup());
    const Setup setup = wide_setup({bare_lens(-200, 0)});
    const Report shifted = image_report_of(setup);
    const double m = shifted.budget.factor();
    REQUIRE(m > 1.2);
    const auto waves = [](const Report& report) {
        return report.image_quality[0].axis.aberrations.spherical;
    };
    const auto depths = [](const Report& report) {
        const EyeImage& eye = report.image_quality[0];
        return eye.axial_colour() / eye.depth_of_focus;
    };
    // Third order; the next is 1 % at f/7.
    CHECK(
        near(waves(shifted), waves(plain) / std::pow(m, 4), 0.03 * waves(plain) / std::pow(m, 4)));
    CHECK(near(depths(shifted), depths(plain) / (m * m), 0.01 * depths(plain) / (m * m)));
    CHECK(shifted.image_quality[0].axis.day_peak > plain.image_quality[0].axis.day_peak + 0.05);
}

TEST_CASE("a lens made for the glass behind it cancels its spherical and colour error") {
    Part lens = bare_lens(-200, 0);
    Setup setup = wide_setup({lens});
    the<Refractor>(setup).focal_length = {500};
    const Report plain = image_report_of(setup);
    auto& made = the<Shifter>(setup);
    made.corrected_glass = Millimetres{glass_of(plain)};
    const Report third_order = image_report_of(setup);
    made.corrected_focal_ratio = plain.image_quality[0].focal_ratio;
    const Report corrected = image_report_of(setup);
    const EyeImage& eye = corrected.image_quality[0];
    CHECK(eye.is_corrected);
    CHECK_FALSE(plain.image_quality[0].is_corrected);
    CHECK(plain.image_quality[0].axis.day_peak < 0.9);
    CHECK(eye.axis.day_peak
          > 0.999);  // what is left: sixth order and colour of the spherical error
    CHECK(third_order.image_quality[0].axis.day_peak > 0.995);
    CHECK(near(eye.axial_colour(), 0, 1e-3 * plain.image_quality[0].axial_colour()));
    CHECK(std::abs(eye.spherical) < 0.02 * plain.image_quality[0].spherical);
    // Made for twice the glass it errs as much the other way.
    made.corrected_glass = Millimetres{2 * glass_of(plain)};
    const Report over = image_report_of(setup);
    CHECK(near(over.image_quality[0].axial_colour(), -plain.image_quality[0].axial_colour(),
               1e-3 * plain.image_quality[0].axial_colour()));
    CHECK(near(over.image_quality[0].spherical, -plain.image_quality[0].spherical,
               0.02 * plain.image_quality[0].spherical));
}

TEST_CASE("image quality is told at best focus whether or not the drawtube gets there") {
    Setup setup = wide_setup();
    const Report reaches = image_report_of(setup);
    the<Refractor>(setup).back_focus = {100};
    const Report falls_short = image_report_of(setup);
    REQUIRE(reaches.budget.reaches);
    REQUIRE_FALSE(falls_short.budget.reaches);
    // The same glass in the same cone, only farther ahead of the stop.
    CHECK(near(falls_short.image_quality[0].axis.day_peak, reaches.image_quality[0].axis.day_peak,
               1e-3));
    CHECK(near(falls_short.image_quality[0].axis.focus - reaches.image_quality[0].axis.focus,
               falls_short.image_behind_stop[0] - reaches.image_behind_stop[0], 0.01));
}

TEST_CASE("findings tell which fault costs the image most, and what mends it") {
    Setup fast = wide_setup({{"Prism", PrismDiagonal{}, {}}});
    the<Refractor>(fast).focal_length = {400};
    const Report poor = image_report_of(fast);
    REQUIRE(has(poor, "image_soft"));
    for (const Finding& finding : poor.findings) {
        if (finding.id != "image_soft") continue;
        CHECK(finding.severity == Severity::poor);
        CHECK(finding.advice.find("A mirror in place of “Prism”") != std::string::npos);
        CHECK(finding.advice.find("shifter ahead of the glass") != std::string::npos);
    }

    Setup slow = wide_setup({bare_lens(-100, 0), mirror()});
    the<Refractor>(slow).focal_length = {1500};
    const Report good = image_report_of(slow);
    CHECK(has(good, "image_sharp"));
    CHECK_FALSE(has(good, "image_soft"));
}

TEST_CASE("the main fault is what takes more of the peak than all others") {
    PointImage image;
    image.is_formed = true;
    image.green_peak = 0.99;
    image.day_peak = 0.8;
    CHECK(main_fault(image) == ImageFault::colour);
    image.green_peak = 0.5;
    image.day_peak = 0.4;
    image.rms_waves = 0.13;
    image.aberrations.spherical_rms = 0.12;
    image.aberrations.coma_rms = 0.05;
    CHECK(main_fault(image) == ImageFault::spherical);
    image.aberrations.coma_rms = 0.13;
    CHECK(main_fault(image) == ImageFault::coma);
    image.aberrations = {};
    CHECK(main_fault(image) == ImageFault::other);
    image.day_peak = 0.99;
    CHECK(main_fault(image) == ImageFault::nothing);
}

TEST_CASE("light that a bare low-index prism does not hold is counted as lost, as much as Snell's "
          "law tells") {
    PrismDiagonal prism;
    prism.glass = "N-BK7";
    prism.prism_width = {110};
    prism.clear_diameter = {110};
    Setup setup = wide_setup({{"Prism", prism, {}}});
    the<Refractor>(setup).focal_length = {400};  // f/4
    the<SplitterHead>(setup).entry_clear = {110};
    the<SplitterHead>(setup).prism_width = {110};
    the<SplitterHead>(setup).arm_offset = {112};
    the<SplitterHead>(setup).exit_clear = {110};
    const Report report = make_report(setup, setup.chosen).value();
    double leaked = 0;
    for (const EndShare& end : report.clipping[0].rings.front().ends)
        leaked += end.is_leak ? end.share : 0;
    // Face at 45 degrees inside the glass: held where n sin(incidence) >= 1. Even grid over the pupil's sines.
    const double n = indices("N-BK7")[primary_wavelength];
    int all = 0;
    double lost = 0;
    for (int i = -200; i <= 200; ++i) {
        for (int j = -200; j <= 200; ++j) {
            const double x = i / 200.0 / 8 / n;
            const double y = j / 200.0 / 8 / n;
            if (i * i + j * j > 200 * 200) continue;
            ++all;
            const double cosine = (std::sqrt(1 - x * x - y * y) - y) / std::sqrt(2.0);
            const double out_squared = 1 - n * n * (1 - cosine * cosine);
            if (out_squared <= 0) continue;
            // What goes out, unpolarised (M. Born and E. Wolf, Principles of Optics, 7th ed., sec. 1.5.2).
            const double out = std::sqrt(out_squared);
            const double s = (n * cosine - out) / (n * cosine + out);
            const double p = (cosine - n * out) / (cosine + n * out);
            lost += 1 - (s * s + p * p) / 2;
        }
    }
    const double share = lost / all;
    CHECK(
        share
        > 0.015);  // 5.0 % meet the face beyond the critical angle, of which it keeps more than half
    CHECK(near(leaked, share, 0.005));  // 1024 rays
    CHECK(has(report, "light_leaks"));
}
