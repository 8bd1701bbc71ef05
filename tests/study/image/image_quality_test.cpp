// Image quality of whole trains against closed forms for their glass, and what corrects it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/eyepiece_pair.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "reference/plane_plate.hpp"
#include "study/cures/cure_search.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "support/white_plate.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

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

const Finding* found_in(const Report& report, const std::string& id) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const Finding& finding) { return finding.id == id; });
    return found == report.findings.end() ? nullptr : &*found;
}
bool has(const Report& report, const std::string& id) { return found_in(report, id) != nullptr; }

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
            CHECK(near(eye.working_focal_ratio, focal / 100, 1e-6 * focal));
            // W. J. Smith, Modern Optical Engineering, 4th ed., sec. 7.8; exact in the index, rays at 1/100 of the rim.
            CHECK(near(eye.axial_colour().value, t * (1 / n[2] - 1 / n[0]), 1e-4));
            CHECK(near(eye.blue_shift.value, t * (1 / n[1] - 1 / n[0]), 1e-4));
            const double cosine = std::sqrt(1 - u * u);
            const double exact = t / n[1] * (1 - n[1] * cosine / std::sqrt(n[1] * n[1] - u * u));
            CHECK(near(eye.spherical.value, exact, 1e-4));
            const double w040 =
                t * std::pow(u, 4) * (n[1] * n[1] - 1) / (8 * std::pow(n[1], 3)) / 546.0740e-6;
            CHECK(near(eye.axis.aberrations.spherical, w040,
                       0.02 * w040));  // 96 rays; next order u^2
            // RMS of pure spherical aberration against the best sphere: W040 / (6 sqrt 5), from memory.
            CHECK(near(eye.axis.rms_waves, w040 / (6 * std::sqrt(5.0)), 0.06 * eye.axis.rms_waves));
            CHECK(eye.axis.white_peak < eye.axis.green_peak);
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
        CHECK(near(eye.edge.lateral_colour().value, lateral, 0.01 * lateral));
        CHECK(near(eye.axis.lateral_colour().value, 0, 1e-9));
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
    CHECK(shifted.image_quality[0].axis.white_peak > plain.image_quality[0].axis.white_peak + 0.05);
}

TEST_CASE("a lens made for the glass behind it cancels its spherical and colour error") {
    Part lens = bare_lens(-200, 0);
    Setup setup = wide_setup({lens});
    the<Refractor>(setup).focal_length = {500};
    const Report plain = image_report_of(setup);
    auto& made = the<Shifter>(setup);
    made.corrected_glass = Millimetres{glass_of(plain)};
    const Report third_order = image_report_of(setup);
    made.corrected_focal_ratio = plain.image_quality[0].working_focal_ratio;
    const Report corrected = image_report_of(setup);
    const EyeImage& eye = corrected.image_quality[0];
    CHECK(eye.is_corrected);
    CHECK_FALSE(plain.image_quality[0].is_corrected);
    CHECK(plain.image_quality[0].axis.white_peak < 0.9);
    // What is left: sixth order, colour of the spherical error, and the colour between the lines for which it is made.
    CHECK(eye.axis.white_peak > 0.99);
    CHECK(third_order.image_quality[0].axis.white_peak > 0.985);
    CHECK(near(eye.axial_colour().value, 0, 1e-3 * plain.image_quality[0].axial_colour().value));
    CHECK(std::abs(eye.spherical.value) < 0.02 * plain.image_quality[0].spherical.value);
    // Made for twice the glass it errs as much the other way.
    made.corrected_glass = Millimetres{2 * glass_of(plain)};
    const Report over = image_report_of(setup);
    CHECK(near(over.image_quality[0].axial_colour().value,
               -plain.image_quality[0].axial_colour().value,
               1e-3 * plain.image_quality[0].axial_colour().value));
    CHECK(near(over.image_quality[0].spherical.value, -plain.image_quality[0].spherical.value,
               0.02 * plain.image_quality[0].spherical.value));
}

TEST_CASE("image quality is told at best focus whether or not the drawtube gets there") {
    Setup setup = wide_setup();
    const Report reaches = image_report_of(setup);
    the<Refractor>(setup).back_focus = {100};
    const Report falls_short = image_report_of(setup);
    REQUIRE(reaches.budget.reaches);
    REQUIRE_FALSE(falls_short.budget.reaches);
    // The same glass in the same cone, only farther ahead of the stop.
    CHECK(near(falls_short.image_quality[0].axis.white_peak,
               reaches.image_quality[0].axis.white_peak, 1e-3));
    CHECK(
        near((falls_short.image_quality[0].axis.focus - reaches.image_quality[0].axis.focus).value,
             falls_short.image_behind_stop[0].value - reaches.image_behind_stop[0].value, 0.01));
}

TEST_CASE("what the head's glass costs through the eye is what one plate of it costs") {
    for (const double eyepiece : {6.0, 10.5, 25.0}) {
        CAPTURE(eyepiece);
        Setup setup = wide_setup();
        the<EyepiecePair>(setup).focal_length = {eyepiece};
        const Report report = image_report_of(setup);
        const double pupil = eyepiece / 7;  // of f/7
        const std::string glass = the<SplitterHead>(setup).glass;
        const double with = plate_peak(glass, glass_of(report), 7, pupil);
        const double without = plate_peak(glass, 0, 7, pupil);
        for (const EyeImage& eye : report.image_quality) {
            CHECK(near(eye.pupil.value, pupil, 1e-4));
            // Every 15 nm against every 5 nm, 96 rays.
            CHECK(near(eye.axis.seen_peak, with, 0.005));
            CHECK(near(eye.bare_peak, without, 0.005));
            CHECK(near(eye.kept(eye.axis), with / without, 0.01 * with / without));
            CHECK(near(eye.axis.white_peak, plate_peak(glass, glass_of(report), 7, 0), 0.005));
        }
    }
}

TEST_CASE("an eye narrower than the exit pupil sees the middle of the beam alone") {
    Setup setup = wide_setup();
    the<EyepiecePair>(setup).focal_length = {49};  // an exit pupil of 7 mm at f/7
    the<Observer>(setup).eye_pupil = {4};
    const Report report = image_report_of(setup);
    const std::string glass = the<SplitterHead>(setup).glass;
    for (const EyeImage& eye : report.image_quality) {
        CHECK(near(eye.pupil.value, 4, 1e-9));
        // As if the telescope had 4/7 of its aperture: f/12.25.
        CHECK(near(eye.axis.seen_peak, plate_peak(glass, glass_of(report), 12.25, 4), 0.005));
        CHECK(near(eye.bare_peak, plate_peak(glass, 0, 12.25, 4), 0.005));
    }
}

TEST_CASE("an objective whose colour is opposite to the glass's gives the peak of green light") {
    Setup setup = wide_setup();
    const double t = glass_of(image_report_of(setup));
    const PerWavelength n = indices(the<SplitterHead>(setup).glass);
    the<Refractor>(setup).blue_shift = {-t * (1 / n[1] - 1 / n[0])};
    the<Refractor>(setup).red_shift = {-t * (1 / n[1] - 1 / n[2])};
    const Report report = image_report_of(setup);
    const PointImage& axis = report.image_quality[0].axis;
    // Its waves of error are fewer in red and more in blue.
    CHECK(near(axis.white_peak, axis.green_peak, 0.004));
    // The bare telescope has that colour alone, which adds to the eye's: the head sharpens it.
    CHECK(report.image_quality[0].kept(axis) > 1.5);
    // Without it the same colour is the glass's: as much of it in the bare telescope, the other way round.
    Setup like_glass = wide_setup();
    the<Refractor>(like_glass).blue_shift = {t * (1 / n[1] - 1 / n[0])};
    the<Refractor>(like_glass).red_shift = {t * (1 / n[1] - 1 / n[2])};
    const double colour_alone = image_report_of(like_glass).image_quality[0].bare_peak;
    const PointImage glass = image_report_of(wide_setup()).image_quality[0].axis;
    // The glass has spherical aberration besides, which costs about what it costs green light.
    CHECK(near(colour_alone * glass.green_peak, glass.seen_peak, 0.005));
}

TEST_CASE("a narrow exit pupil misses sharpness that a wide one hides, and the note says from "
          "which magnification on") {
    Setup setup = wide_setup({{"Prism", PrismDiagonal{}, {}}});
    the<Refractor>(setup).focal_length = {400};
    the<EyepiecePair>(setup).focal_length = {4};  // an exit pupil of 1 mm
    const Report narrow = image_report_of(setup);
    const Finding* soft = found_in(narrow, "image_soft");
    REQUIRE(soft != nullptr);
    CHECK(soft->severity == Severity::poor);
    CHECK(soft->advice.find("A mirror in place of “Prism”") != std::string::npos);
    CHECK(soft->advice.find("shifter ahead of the glass") != std::string::npos);

    the<EyepiecePair>(setup).focal_length = {8};
    const Report wide = image_report_of(setup);
    const EyeImage& eye = wide.image_quality[0];
    const Finding* later = found_in(wide, "image_soft_later");
    REQUIRE(later != nullptr);
    CHECK(later->severity == Severity::note);
    REQUIRE(eye.shows_from);
    CHECK(later->sentence.find(fmt::format("{:.0f}×", 50 * *eye.shows_from)) != std::string::npos);
    // At that magnification it is poor.
    the<EyepiecePair>(setup).focal_length = {8 / *eye.shows_from * (1 - 1e-3)};
    CHECK(found_in(image_report_of(setup), "image_soft") != nullptr);

    Setup slow = wide_setup({bare_lens(-100, 0), mirror()});
    the<Refractor>(slow).focal_length = {1500};
    const Report good = image_report_of(slow);
    CHECK(has(good, "image_sharp"));
    CHECK_FALSE(has(good, "image_soft"));
}

TEST_CASE("sharpness alone keeps nobody at home, and no cure for it halves the field") {
    Setup setup = wide_setup({{"Prism", PrismDiagonal{}, {}}});
    the<Refractor>(setup).focal_length = {400};
    the<EyepiecePair>(setup).focal_length = {4};
    Report report = image_report_of(setup);
    add_cures(setup, report);
    for (const Finding& finding : report.findings) {
        if (!finding.is_of_sharpness) continue;
        if (finding.severity != Severity::poor) CHECK(finding.cures.empty());
        CHECK_FALSE(is_poor({finding}));
        for (const Cure& cure : finding.cures) {
            CAPTURE(cure.what);
            CHECK(image_report_of(cure.setup).magnification.true_field.value
                  > 0.55 * report.magnification.true_field.value);
        }
    }
    REQUIRE(found_in(report, "image_soft") != nullptr);
    CHECK_FALSE(found_in(report, "image_soft")->cures.empty());
}

TEST_CASE("judged by what is kept, by the exit pupil and by what an eye resolves") {
    EyeImage eye;
    eye.bare_peak = 0.8;
    eye.pupil = {1};
    const auto judged = [&](double seen, double blur) {
        PointImage image;
        image.seen_peak = seen;
        image.blur = {blur};
        return sharpness_of(eye, image);
    };
    CHECK(judged(0.73, 3) == Sharpness::good);
    CHECK(judged(0.71, 3) == Sharpness::fair);
    CHECK(judged(0.55, 3) == Sharpness::soft);
    CHECK(judged(0.3, 1.4) == Sharpness::good);
    eye.pupil = {1.6};
    CHECK(judged(0.55, 3) == Sharpness::hidden);
    CHECK(judged(0.57, 3) == Sharpness::fair);
}

TEST_CASE("blur and colour are told as the eye sees them: by the eyepiece's focal length") {
    Setup setup = wide_setup();
    the<EyepiecePair>(setup).focal_length = {5};
    const Report report = image_report_of(setup);
    const PerWavelength n = indices(the<SplitterHead>(setup).glass);
    const double up = the<EyepiecePair>(setup).field_stop.value / 2 / 700;
    // t up (1/nC - 1/nF) over 5 mm, in minutes of arc of pi / 10800.
    const double colour =
        glass_of(report) * up * (1 / n[2] - 1 / n[0]) / 5 * 10800 / std::numbers::pi;
    for (const EyeImage& eye : report.image_quality)
        CHECK(near(eye.edge.colour_seen.value, colour, 0.01 * colour));
    REQUIRE(colour > 1.5);
    CHECK(has(report, "lateral_colour"));
    setup = wide_setup();  // 25 mm: a fifth of it
    REQUIRE(colour / 5 < 1.5);
    CHECK_FALSE(has(image_report_of(setup), "lateral_colour"));
}

TEST_CASE("the main fault is what takes more of the peak than all others") {
    EyeImage eye;
    PointImage image;
    image.is_formed = true;
    image.green_peak = 0.99;
    image.seen_peak = 0.8;
    CHECK(main_fault(eye, image) == ImageFault::colour);
    image.green_peak = 0.5;
    image.seen_peak = 0.4;
    image.rms_waves = 0.13;
    image.aberrations.spherical_rms = 0.12;
    image.aberrations.coma_rms = 0.05;
    CHECK(main_fault(eye, image) == ImageFault::spherical);
    image.aberrations.coma_rms = 0.13;
    CHECK(main_fault(eye, image) == ImageFault::coma);
    image.aberrations = {};
    CHECK(main_fault(eye, image) == ImageFault::other);
    image.seen_peak = 0.99;
    CHECK(main_fault(eye, image) == ImageFault::nothing);
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
