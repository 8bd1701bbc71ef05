#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/eyepiece_pair.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/prism_errors.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr double arcminute = std::numbers::pi / 180 / 60;

Alignment aligned(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, {16});
    REQUIRE(report.has_value());
    return report->alignment;
}

Setup off(double PrismErrors::*error, double amount, PrismErrors SplitterHead::*prism) {
    Setup setup = wide_setup();
    auto& head = the<SplitterHead>(setup);
    head.prisms_stand = PrismsStand::slightly_off;
    head.*prism.*error = amount;
    return setup;
}

// Displacement on the field stop, mm, from an apparent angle behind eyepieces of 25 mm.
double at_stop(double arcminutes) { return 25 * std::tan(arcminutes * arcminute); }

double index_e(const std::string& glass) {
    return *refractive_index(*standard_catalogue().find(glass), spectral_line::e);
}

const ErrorAllowance& tolerance_of(const Alignment& alignment, const std::string& key) {
    const auto found = std::ranges::find(alignment.tolerances, key, &ErrorAllowance::key);
    REQUIRE(found != alignment.tolerances.end());
    return *found;
}

}  // namespace

TEST_CASE("a head whose prisms stand true gives both eyes one image, at any pupil distance") {
    for (const double distance : {55.0, 63.0, 70.0}) {
        Setup setup = wide_setup({{"Diagonal", MirrorDiagonal{}, {}}});
        the<Observer>(setup).pupil_distance = {distance};
        const Alignment alignment = aligned(setup);
        // Rays near the axis through some 15 faces: rounding of 1e-12 mm over 25 mm is far below 1e-6 arcminutes.
        CHECK(near(alignment.seen.inward, 0, 1e-6));
        CHECK(near(alignment.seen.left_up, 0, 1e-6));
        CHECK(near(alignment.seen.rotation, 0, 1e-6));
        CHECK(near(alignment.seen.size, 0, 1e-6));
        CHECK(near(alignment.focus_difference, 0, 1e-9));
        CHECK(alignment.same_handed);
        CHECK(alignment.worst() == Merging::good);
        CHECK(alignment.main_cause() == nullptr);
    }
}

TEST_CASE("an eyepiece 0.10 mm off its seat moves its image by 34.4' at 10 mm and 13.8' at 25 mm") {
    // atan(y / f) in arcminutes.
    struct Row {
        double focal_length;
        double arcminutes;
    };
    for (const Row& row : {Row{10, 34.3763}, Row{20, 17.1886}, Row{25, 13.7509}}) {
        Setup setup = wide_setup();
        auto& pair = the<EyepiecePair>(setup);
        pair.focal_length = {row.focal_length};
        pair.right_play_x = {0.1};  // the right image then stands to the left of its middle
        const Alignment aside = aligned(setup);
        CHECK(near(aside.seen.inward, row.arcminutes, 1e-3));
        CHECK(near(aside.seen.left_up, 0, 1e-6));
        pair.right_play_x = {0};
        pair.left_play_y = {0.1};  // the left image then stands lower
        CHECK(near(aligned(setup).seen.left_up, -row.arcminutes, 1e-3));
    }
}

TEST_CASE("a tilt of the arm prism about its own fold sends the light off by twice the tilt") {
    // A right-angle prism tilted in its bend: its two faces, seen along the folded light, stay parallel to each
    // other, so that it acts as a mirror tilted in air (2 alpha) and a plate tilted by alpha before and behind it.
    Setup setup = off(&PrismErrors::tilt_x, 1, &SplitterHead::arm_prism_errors);
    auto& head = the<SplitterHead>(setup);
    head.glass = "N-BK7";
    head.compensator = Millimetres{0};
    head.seat_travel = Millimetres{0};  // which would follow the arms' difference
    const double n = index_e("N-BK7");
    const double width = head.prism_width.value;
    // Unfolded, with everything to first order: behind the fold in the middle of the prism the light runs 2 alpha
    // off in glass towards a face that is tilted by alpha the other way round. Snell at each face, written out.
    const double alpha = arcminute;
    const double in_glass_before = alpha - alpha / n;  // direction after the tilted entry face
    const double after_fold =
        -in_glass_before + 2 * alpha;  // the mirror turns it round and adds twice its tilt
    const double to_exit_normal = after_fold - alpha;  // against the normal of the exit face
    const double leaving = alpha + n * to_exit_normal;
    CHECK(near(leaving / alpha, 2, 1e-9));
    const double air = head.seat_height->value - the<EyepiecePair>(setup).field_stop_depth.value;
    const double moved = width / 2 * (-in_glass_before) + width / 2 * after_fold + air * leaving;
    const Alignment alignment = aligned(setup);
    const double seen =
        std::hypot(at_stop(alignment.seen.inward.value), at_stop(alignment.seen.left_up.value));
    CHECK(near(seen, std::abs(moved),
               2e-5));  // second order: alpha^2 times 30 mm, and the shift of the fold
    CHECK(near(alignment.seen.rotation, 0, 1e-3));
}

TEST_CASE("turning the rhomboid in its bends leaves the light's direction, and only shifts it") {
    // Two parallel mirrors: direction unchanged (Smith, Modern Optical Engineering, 4th ed., sec. 7.13-7.14).
    // Tested by where the image goes when the seat is raised: it does not move further.
    for (const auto error : {&PrismErrors::tilt_x, &PrismErrors::roll}) {
        Setup near_seat = off(error, 10, &SplitterHead::rhomboid_errors);
        Setup far_seat = near_seat;
        the<SplitterHead>(far_seat).seat_height = Millimetres{90};
        const Misalignment near_seen = aligned(near_seat).seen;
        const Misalignment far_seen = aligned(far_seat).seen;
        // The middle ray's direction is kept to rounding; 60 mm of 1e-9 radians would show as 1e-5 arcminutes.
        CHECK(near(near_seen.inward, far_seen.inward, 1e-3));
        CHECK(near(near_seen.left_up, far_seen.left_up, 1e-3));
        CHECK(std::hypot(near_seen.inward.value, near_seen.left_up.value) > 1);
        CHECK(near(near_seen.rotation, 0, 1e-6));
    }
}

TEST_CASE("rolling the rhomboid by e swings its exit by 2 h sin(e / 2)") {
    const double e = 10 * arcminute;
    Setup setup = off(&PrismErrors::roll, 10, &SplitterHead::rhomboid_errors);
    const double offset = the<SplitterHead>(setup).arm_offset.value;
    const Misalignment seen = aligned(setup).seen;
    const double moved = std::hypot(at_stop(seen.inward.value), at_stop(seen.left_up.value));
    CHECK(near(moved, 2 * offset * std::sin(e / 2), 1e-5));  // rounding of arc tangents apart
}

TEST_CASE("a roll of the arm prism by e turns the image by e") {
    for (const double roll : {-30.0, 6.0, 60.0}) {
        const Setup setup = off(&PrismErrors::roll, roll, &SplitterHead::arm_prism_errors);
        // The beam leaves obliquely by e as well: the turn seen on a plane differs by e^2 / 2 relative.
        CHECK(near(abs(aligned(setup).seen.rotation), std::abs(roll) / 60, 1e-3));
    }
}

TEST_CASE("shifting the arm prism along its light shifts the image by as much") {
    // Two mirrors at 45 degrees, one of them moved by s along the light between them: the exit moves by s.
    const Setup setup = off(&PrismErrors::shift_z, 0.2, &SplitterHead::arm_prism_errors);
    const Misalignment seen = aligned(setup).seen;
    CHECK(near(std::hypot(at_stop(seen.inward.value), at_stop(seen.left_up.value)), 0.2, 1e-6));
}

TEST_CASE("unequal arms behind a lens make one image larger, by thin-lens algebra") {
    // A chief ray of slope u leaves the lens at height u L with slope u (1 + L / |f|), L from objective to lens, and
    // is u [L + d (1 + L / |f|)] high at a distance d behind it. The compensator's lack of glass changes d by delta.
    // (Near L = F >> |f| that is delta / (d + |f|).)
    Setup setup = wide_setup({bare_lens(-120, 0)});
    auto& head = the<SplitterHead>(setup);
    head.compensator = Millimetres{head.arm_offset.value - 3};
    head.seat_travel = Millimetres{0};  // which would go to the images, and both be alike
    auto report = make_report(setup, setup.chosen, {16});
    REQUIRE(report.has_value());
    REQUIRE(report->budget.shortfall == Millimetres{});
    const double delta = report->budget.arm_difference.value;
    REQUIRE(std::abs(delta) > 0.5);
    const ShifterAtWork& lens = report->budget.shifters.front();
    const double spread = 1 + (700 - lens.image_distance.value / lens.factor) / 120;
    const double height =
        700 - lens.image_distance.value / lens.factor + lens.image_distance.value * spread;
    // Either arm may be the one to which d belongs: (delta / 260)^2 of second order, 0.006 %.
    CHECK(near(report->alignment.seen.size, 100 * delta * spread / height, 0.01));
    // Focus between the eyes: 1000 / f_e^2 dioptres for each mm (Smith, p. 290).
    CHECK(near(abs(report->alignment.focus_difference),
               std::abs(report->image_behind_stop[0].value - report->image_behind_stop[1].value)
                   * 1000 / (25 * 25),
               1e-9));
}

TEST_CASE(
    "limits: a third is good, the high-performance row comfortable, the general row the end") {
    CHECK(merging(Arcminutes{6.6}, height_limit) == Merging::good);
    CHECK(merging(Arcminutes{-6.8}, height_limit) == Merging::comfortable);
    CHECK(merging(Arcminutes{20.1}, height_limit) == Merging::hard);
    CHECK(merging(Arcminutes{-30.1}, height_limit) == Merging::impossible);
    Alignment alignment;
    alignment.seen.inward = {50};
    CHECK(alignment.worst() == Merging::comfortable);
    alignment.seen.inward = {-50};  // outward is borne far less
    CHECK(alignment.worst() == Merging::impossible);
}

TEST_CASE("the tolerance table tells for each error how much of it alone reaches the limit") {
    const Alignment still = aligned(wide_setup());
    CHECK(still.tolerances.size() == 3 * 6 + 4);
    for (const char* key :
         {"arm_prism_tilt_x_arcmin", "arm_prism_roll_arcmin", "cube_tilt_x_arcmin",
          "rhomboid_shift_x_mm", "cube_shift_z_mm", "right_play_y_mm"}) {
        CAPTURE(key);
        const ErrorAllowance& tolerance = tolerance_of(still, key);
        if (std::isinf(tolerance.allowed)) continue;
        CHECK_FALSE(tolerance.limited_by.empty());
        Setup setup = wide_setup();
        the<SplitterHead>(setup).prisms_stand = PrismsStand::slightly_off;
        auto& body = setup.parts[tolerance.part].body;
        body = *with_field(body, key, tolerance.allowed);
        const Misalignment seen = aligned(setup).seen;
        const double reached =
            std::max({abs(seen.left_up) / height_limit.fair, abs(seen.inward) / outward_limit.fair,
                      abs(seen.rotation) / rotation_limit.fair});
        CHECK(near(reached, 1, 0.02));  // the table is linear; the trace is not
        CHECK(aligned(setup).main_cause()->key == key);
    }
    const auto harmless = tolerance_of(still, "cube_shift_x_mm");
    CHECK(std::isinf(harmless.allowed));  // along its own faces a prism may stand where it likes
}

TEST_CASE(
    "findings name what is apart and which part it comes from, and none comes from a true head") {
    const auto found = [](const Setup& setup) {
        auto report = make_report(setup, setup.chosen, {16});
        REQUIRE(report.has_value());
        for (const Finding& finding : report->findings) {
            if (finding.id.starts_with("images_")) return finding;
        }
        return Finding{};
    };
    CHECK(found(wide_setup()).id.empty());
    Setup setup = wide_setup();
    auto& pair = the<EyepiecePair>(setup);
    const double minute = 25 * arcminute;
    pair.left_play_y = {10 * minute};
    CHECK(found(setup).id == "images_slightly_apart");
    pair.left_play_y = {25 * minute};
    CHECK(found(setup).id == "images_hard_to_merge");
    CHECK(found(setup).advice.find("left eyepiece") != std::string::npos);
    pair.left_play_y = {35 * minute};
    CHECK(found(setup).id == "images_do_not_merge");
    CHECK(found(setup).severity == Severity::fails);
    CHECK(found(setup).sentence.find("right image stands 35") != std::string::npos);
}
