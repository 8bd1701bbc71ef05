// Coma correctors against the closed form of a paraboloid's coma and against the light path behind them.
#include <algorithm>
#include <cmath>

#include "parts/coma_corrector.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_search.hpp"
#include "study/image/aberrations.hpp"
#include "study/sight_view/sight_view.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr double mirror_focal_length = 1000;
constexpr double mirror_radius = 100;
constexpr double corrector_green = 546.0740e-6;  // mm

// A bare paraboloid seen in its focal plane.
struct BareMirror {
    Train train;
    EyePath path;
};
BareMirror bare_mirror() {
    BareMirror bare;
    bare.train.objective_focal_length = mirror_focal_length;
    bare.train.objective_radius = mirror_radius;
    bare.train.object_distance = std::numeric_limits<double>::infinity();
    bare.train.pupil_plane = -mirror_radius * mirror_radius / (4 * mirror_focal_length);
    bare.train.light_enters = -1200;
    PlacedSurface mirror = test_paths::placed("mirror", SurfaceKind::mirror, Pose{});
    mirror.shape = {-1 / (2 * mirror_focal_length), -1};
    bare.path.object_distance = bare.train.object_distance;
    bare.path.world_from_field_stop =
        translation(0, 0, -mirror_focal_length) * rotation_about_y(to_radians(Degrees{180}));
    bare.path.surfaces = {
        mirror, test_paths::placed("plane", SurfaceKind::stop, bare.path.world_from_field_stop)};
    return bare;
}

// A corrector that takes that share, by standing outside a window of no width.
ComaCorrection taking(double share) {
    ComaCorrection one;
    one.wanted = {50};
    one.lens_to_image = {90};
    one.spacing = {50 + (1 - share) * 30};
    return one;
}

Wavefront star(const BareMirror& bare, FieldSlope field, std::vector<glm::dvec2> pupil) {
    for (glm::dvec2& place : pupil)
        place *= 1 - 1e-9;
    return trace_wavefront(bare.train, bare.path, field, pupil, primary_wavelength);
}

void correct_by(Wavefront& wavefront, double share, const BareMirror& bare, FieldSlope field) {
    const Wavefront chief = star(bare, field, {{0, 0}});
    take_coma(wavefront, {taking(share)}, bare.train, field, chief.rays.front().along);
}

// The mean of the meridian's two rim rays less the middle ray, in the focal plane.
double tangential_coma(const Wavefront& meridian) {
    const auto height = [](const WavefrontRay& ray) {
        return ray.at.y - ray.at.z / ray.along.z * ray.along.y;
    };
    return (height(meridian.rays[0]) + height(meridian.rays[1])) / 2 - height(meridian.rays[2]);
}

ComaCorrector at_spacing(double spacing, double factor = 1) {
    ComaCorrector lens;
    lens.stated_factor = factor;
    lens.spacing = {spacing};
    lens.window = {1};
    lens.lens_offset = {0};
    lens.length = {20};
    lens.clear_diameter = {150};
    return lens;
}

// A 200 mm f/5 Newtonian that reaches focus with the wide head, a corrector and a spacer of 5 mm behind it.
Setup with_corrector(const ComaCorrector& lens) {
    Setup setup = wide_setup({{"Corrector", lens, {}}, {"Ring", Spacer{{5}, {100}}, {}}});
    Newtonian telescope;
    telescope.back_focus = {280};
    telescope.axis_to_drawtube = {160};
    telescope.secondary_minor_axis = {100};
    setup.parts.front().body = telescope;
    the<Focuser>(setup).drawtube_length = {20};
    return setup;
}

Report report_with(const Setup& setup) {
    return make_report(setup, setup.chosen, ClippingEffort{192}).value();
}

// What stands behind the shoulder: the ring, the head and the eyepiece down to its field stop.
double path_behind_shoulder(const Report& report) {
    const auto& paths = report.train.light_paths;
    double sum = 0;
    for (std::size_t i = 1; i < paths.size(); ++i)
        sum += paths[i].counted();
    return sum;
}

const Finding& finding_of(const Report& report, const std::string& id) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const Finding& one) { return one.id == id; });
    REQUIRE(found != report.findings.end());
    return *found;
}

}  // namespace

TEST_CASE("a corrector takes the share of a paraboloid's coma that it says") {
    const BareMirror bare = bare_mirror();
    const double N = mirror_focal_length / (2 * mirror_radius);
    for (const FieldSlope field : {FieldSlope{0, 0.003}, FieldSlope{-0.004, 0.003}}) {
        const double angle = glm::length(field);
        // W131 = theta a^3 / (4 f^2): a third of the tangential coma 3 theta / (16 N^2) (W. J. Smith, Modern Optical
        // Engineering, 4th ed.) by the gradient of r^3 cos at the rim.
        const double whole = angle * mirror_radius / (16 * N * N) / corrector_green;
        for (const double share : {0.0, 0.6, 1.0}) {
            CAPTURE(share);
            Wavefront wavefront = star(bare, field, sunflower(300));
            correct_by(wavefront, share, bare, field);
            const Aberrations left = aberrations(
                wavefront, best_sphere_centre(std::array{WeightedWavefront{&wavefront}}));
            // Third order; the next is about (1 / 4N)^2 of it, a few times.
            CHECK(near(left.coma, (1 - share) * whole, 0.015 * whole));
        }
    }
}

TEST_CASE("rays land where the corrected wavefront sends them: tangential coma is gone") {
    const BareMirror bare = bare_mirror();
    const FieldSlope field{0, 0.005};
    const double N = mirror_focal_length / (2 * mirror_radius);
    const double expected = 3 * field.y * mirror_focal_length / (16 * N * N);  // Smith, as above
    // Two more rays to either side tell the map of the pupil in both directions.
    const std::vector<glm::dvec2> pupil{{0, 1}, {0, -1}, {0, 0}, {1, 0}, {-1, 0}};
    Wavefront meridian = star(bare, field, pupil);
    CHECK(near(std::abs(tangential_coma(meridian)), expected, 0.01 * expected));  // third order
    correct_by(meridian, 1, bare, field);
    CHECK(std::abs(tangential_coma(meridian)) < 0.015 * expected);
}

TEST_CASE("outside its window a corrector takes 3 x / d less for every x mm, and never less than "
          "nothing") {
    ComaCorrection one{.wanted = {55}, .window = {2}, .spacing = {56.9}, .lens_to_image = {90}};
    CHECK(one.beyond().value == 0);
    CHECK(one.share() == 1);
    one.spacing = {60};
    CHECK(near(one.beyond().value, 3, rounding));
    CHECK(near(one.share(), 1 - 3 * 3 / 90.0, rounding));
    one.spacing = {50};
    CHECK(near(one.beyond().value, -3, rounding));
    CHECK(near(one.share(), 1 - 3 * 3 / 90.0, rounding));
    one.spacing = {120};
    CHECK(one.share() == 0);
}

TEST_CASE("its spacing is all the light path that stands behind its shoulder") {
    const Report plain = report_with(with_corrector(at_spacing(100)));
    REQUIRE(plain.coma_corrections.size() == 1);
    CHECK(near(plain.coma_corrections[0].spacing.value, path_behind_shoulder(plain), rounding));

    Setup longer = with_corrector(at_spacing(100));
    the<Spacer>(longer).length = {17};
    const Report report = report_with(longer);
    CHECK(near((report.coma_corrections[0].spacing - plain.coma_corrections[0].spacing).value, 12,
               rounding));

    // A short-sighted observer wants the image f_e^2 / 1000 mm per dioptre farther out.
    Setup short_sighted = with_corrector(at_spacing(100));
    the<Observer>(short_sighted).left = {-2};
    the<Observer>(short_sighted).right = {-2};
    const double dioptres = the<Observer>(short_sighted).correction(Eye::left).value;
    const double per_dioptre =
        std::pow(the<EyepiecePair>(short_sighted).focal_length.value, 2) / 1000;
    CHECK(near(
        (report_with(short_sighted).coma_corrections[0].spacing - plain.coma_corrections[0].spacing)
            .value,
        -dioptres * per_dioptre, rounding));
}

TEST_CASE("at its spacing it magnifies as stated and gives back d - d / M of light path") {
    const Report plain = report_with(with_corrector(at_spacing(100)));
    const double spacing = plain.coma_corrections[0].spacing.value;
    const Report report = report_with(with_corrector(at_spacing(spacing, 1.15)));
    CHECK(near(report.magnification.shifter_factor, 1.15, 1e-9));
    CHECK(near(report.magnification.focal_ratio, 5 * 1.15, 1e-9));
    const double d = 20 + spacing;  // lens at the entry face, 20 mm before the shoulder
    CHECK(near(report.budget.wanted_drawtube.value - plain.budget.wanted_drawtube.value,
               d - d / 1.15, 1e-9));
    for (const RealFocus& focus : report.real_focus)
        CHECK(near(focus.near_axis.value, 0, 0.002));  // glass at f/500
    // Another real distance d': M = 1 + (M0 - 1) d' / d of the same thin lens.
    Setup longer = with_corrector(at_spacing(spacing, 1.15));
    the<Spacer>(longer).length = {15};
    CHECK(near(report_with(longer).magnification.shifter_factor, 1 + 0.15 * (d + 10) / d, 1e-9));
}

TEST_CASE("a factor of 1 leaves focus and power as they are") {
    const Report with = report_with(with_corrector(at_spacing(100)));
    Setup spacer = with_corrector(at_spacing(100));
    spacer.parts[index_of<ComaCorrector>(spacer)].body = Spacer{{20}, {100}};
    const Report without = report_with(spacer);
    CHECK(near(with.budget.wanted_drawtube.value, without.budget.wanted_drawtube.value, rounding));
    CHECK(near(with.magnification.magnification, without.magnification.magnification, rounding));
    CHECK(
        near(with.image_quality[0].axis.seen_peak, without.image_quality[0].axis.seen_peak, 1e-9));
}

TEST_CASE("behind a whole train the head's glass keeps its own coma and the mirror's is gone") {
    const Report far = report_with(with_corrector(at_spacing(300)));
    const double spacing = far.coma_corrections[0].spacing.value;
    const Report at = report_with(with_corrector(at_spacing(spacing)));
    double glass = 0;
    for (const LightPath& path : at.train.light_paths)
        glass += path.glass;
    const double n =
        refractive_index(
            standard_catalogue().find(part_as<SplitterHead>(with_corrector({}), 4).glass).value(),
            spectral_line::e)
            .value();
    const double edge = at.clipping[0].field_stop.value / 2 / mirror_focal_length;
    const double mirror = edge * mirror_radius / (16 * 25) / corrector_green;
    const double u = mirror_radius / mirror_focal_length;
    // W. J. Smith, sec. 7.8: sagittal coma t u^2 up (n^2 - 1) / (2 n^3), times u.
    const double plates =
        glass * u * u * u * edge * (n * n - 1) / (2 * n * n * n) / corrector_green;
    CHECK(near(at.image_quality[0].edge.aberrations.coma, plates,
               0.015 * mirror));  // fifth order of the mirror
    CHECK(far.coma_corrections[0].share() == 0);
    CHECK(far.image_quality[0].edge.aberrations.coma > mirror - 1.1 * plates);
    // W131 / (6 sqrt 2) of rms, from memory: 0.57 of the mirror's coma, beside 0.2 of its astigmatism.
    CHECK(far.image_quality[0].edge.rms_waves > 0.9 * mirror / (6 * std::sqrt(2.0)));
    CHECK(at.image_quality[0].edge.rms_waves < 0.5 * far.image_quality[0].edge.rms_waves);
    CHECK(near(at.image_quality[0].axis.seen_peak, far.image_quality[0].axis.seen_peak, 1e-9));
}

TEST_CASE("what each eye sees has the tail of coma without the corrector and not with it") {
    const auto tail = [](double wanted) {
        const Setup setup = with_corrector(at_spacing(wanted));
        const EyeSight sight = eye_sight(setup, report_with(setup), Eye::left);
        const auto& spots = sight.nodes[1][primary_wavelength];
        glm::dvec2 middle{0};
        for (const glm::dvec2& spot : spots)
            middle += spot / static_cast<double>(spots.size());
        return glm::length(middle);
    };
    const double spacing =
        report_with(with_corrector(at_spacing(100))).coma_corrections[0].spacing.value;
    // The mean of the landing places over the pupil lies a third of the tangential coma from the middle ray's:
    // theta f / (16 N^2), by averaging r^2 (2 + cos 2 phi) over the disc; the secondary hides a quarter of its area,
    // and over the ring that is left r^2 is 5/8 in the mean, not 1/2.
    const double angle = node_radius * EyepiecePair{}.field_stop.value / 2 / mirror_focal_length;
    const double expected = 1.25 * angle * mirror_focal_length / (16 * 25);
    CHECK(near(tail(400), expected, 0.15 * expected));  // the head's glass has 8 % of it
    CHECK(tail(spacing) < 0.15 * expected);
}

TEST_CASE(
    "behind a shifter of factor M the cone is slower, and as much of the coma is out of reach") {
    Setup setup = with_corrector(at_spacing(100));
    setup.parts.insert(setup.parts.begin() + 2, bare_lens(-300, 0));
    const Report report = report_with(with_valid_choice(setup));
    REQUIRE(report.budget.shifters.size() == 2);
    REQUIRE(report.coma_corrections.size() == 1);
    CHECK(near(report.coma_corrections[0].earlier_factor, report.budget.shifters[0].factor, 1e-12));
}

TEST_CASE("too near is told with the spacer that cures it, and it does cure it") {
    const double spacing =
        report_with(with_corrector(at_spacing(100))).coma_corrections[0].spacing.value;
    Setup setup = with_corrector(at_spacing(spacing + 20, 1.1));
    const Report report = report_with(setup);
    const Finding& near_by = finding_of(report, "corrector_spacing");
    CHECK(near_by.severity == Severity::poor);
    CHECK(near_by.sentence.find("19.0 mm too near") != std::string::npos);
    CHECK(near_by.advice.find("A spacer of 20.0 mm") != std::string::npos);

    the<Spacer>(setup).length = {25};
    const Report cured = report_with(setup);
    CHECK(finding_of(cured, "corrector_spacing").severity == Severity::good);
    const double inward = report.budget.wanted_drawtube.value - cured.budget.wanted_drawtube.value;
    CHECK(near_by.advice.find(fmt::format("{:.1f} mm more light path", inward))
          != std::string::npos);
}

TEST_CASE("too far is told with what must become shorter, and no spacer is offered") {
    const double spacing =
        report_with(with_corrector(at_spacing(100))).coma_corrections[0].spacing.value;
    const Report report = report_with(with_corrector(at_spacing(spacing - 30)));
    const Finding& far = finding_of(report, "corrector_spacing");
    CHECK(far.sentence.find("29.0 mm too far") != std::string::npos);
    CHECK(far.advice.find("29.0 mm shorter") != std::string::npos);  // into the window, as too far
    CHECK(far.advice.find("30.0 mm for its middle") != std::string::npos);
    CHECK(far.advice.find("“Ring” is 5.0 mm") != std::string::npos);
    CHECK(far.advice.find("A spacer of") == std::string::npos);
}

TEST_CASE(
    "behind a lens without coma a corrector is told to be out of place, and spoils the edge") {
    const double spacing =
        report_with(with_corrector(at_spacing(100))).coma_corrections[0].spacing.value;
    Setup setup = with_corrector(at_spacing(spacing));
    Refractor lens;
    lens.aperture = {200};
    lens.focal_length = {1000};
    lens.back_focus = {280};
    setup.parts.front().body = lens;
    const Report report = report_with(setup);
    CHECK(finding_of(report, "corrector_without_coma").severity == Severity::poor);
    setup.parts.erase(setup.parts.begin() + 2);
    const Report without = report_with(with_valid_choice(setup));
    CHECK(report.image_quality[0].edge.aberrations.coma
          > 5 * without.image_quality[0].edge.aberrations.coma);
}

TEST_CASE("cures of a wrong spacing bring the corrector into its window") {
    const double spacing =
        report_with(with_corrector(at_spacing(100))).coma_corrections[0].spacing.value;
    for (const double off : {-40.0, 40.0}) {
        CAPTURE(off);
        Setup setup = with_corrector(at_spacing(std::round(spacing) + off));
        the<Spacer>(setup).length = {
            45};  // 40 mm longer, for the corrector made for less to be cured by
        Report report = report_with(setup);
        const double wrong = report.coma_corrections[0].beyond().value;
        if (std::abs(wrong) < 1) continue;
        add_cures(setup, report);
        const Finding& finding = finding_of(report, "corrector_spacing");
        REQUIRE_FALSE(finding.cures.empty());
        for (const Cure& cure : finding.cures) {
            CAPTURE(cure.what);
            const Report after = report_with(cure.setup);
            CHECK(std::abs(after.coma_corrections.at(0).beyond().value) < std::abs(wrong));
            if (cure.removes) CHECK(after.coma_corrections.at(0).beyond().value == 0);
        }
    }
}
