// Light on the field stop against the closed form of two overlapping circles, for one stop in a known place.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "reference/vignetting.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/light/clipping.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train train_in_focus(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    REQUIRE(budget->reaches);
    auto train = build_train(setup, setup.chosen, budget->drawtube);
    REQUIRE(train.has_value());
    return *std::move(train);
}

// A telescope in focus whose light meets no opening but the objective, one round stop, and the field stop.
struct OneStop {
    Setup setup;
    Train train;
    std::array<std::size_t, 2> stop{};  // index of the stop in each eye's path
};

OneStop one_stop(
    double aperture, double focal_length, double stop, double before_focus, double field_stop) {
    OneStop made{plain_setup({{"Known", Spacer{Millimetres{0}, Millimetres{stop}}, {}},
                              {"Distance", Spacer{Millimetres{0}, Millimetres{200}}, {}}}),
                 {},
                 {}};
    auto& telescope = the<Refractor>(made.setup);
    telescope.aperture = {aperture};
    telescope.focal_length = {focal_length};
    telescope.back_focus = {200};
    the<Focuser>(made.setup).travel = {200};
    auto& head = the<SplitterHead>(made.setup);  // small, so that the stop can stand near the focus
    head.prism_width = {10};
    head.arm_offset = {35};
    head.entry_air = Millimetres{2};
    head.seat_height = Millimetres{5};
    the<EyepiecePair>(made.setup).field_stop = {field_stop};
    const auto glass = standard_catalogue().find(head.glass).value();
    const double head_path =
        2 + 25 + 5 + (2 * 10 + 35) / refractive_index(glass, spectral_line::e).value();
    made.setup.parts[3].body.get<Spacer>().length = {before_focus - head_path};
    made.train = train_in_focus(made.setup);
    for (std::size_t side = 0; side < 2; ++side) {
        EyePath& path = made.train.paths[side];
        for (std::size_t i = 1; i + 1 < path.surfaces.size(); ++i) {
            PlacedSurface& surface = path.surfaces[i];
            if (surface.part == 2 && surface.name == "front opening") {
                made.stop[side] = i;
                continue;
            }
            surface.aperture = Unbounded{};
            if (surface.kind == SurfaceKind::total_reflection) surface.kind = SurfaceKind::mirror;
        }
    }
    return made;
}

// The closed forms take the cone's slope as D / 2F; by the sine condition its tangent is larger by this share.
double cone_excess(double aperture, double focal_length) {
    const double sine = aperture / 2 / focal_length;
    return 1 / std::sqrt(1 - sine * sine) - 1;
}

double share_of(const std::vector<EndShare>& ends) {
    double sum = 0;
    for (const EndShare& end : ends)
        sum += end.share;
    return sum;
}

}  // namespace

TEST_CASE("a stop in a known place dims the field as two circles overlap") {
    for (const auto& row : reference::field_illuminations) {
        CAPTURE(row.radius);
        const OneStop made = one_stop(100, 700, 28, 100, 2 * row.radius);
        for (std::size_t side = 0; side < 2; ++side) {
            const EyeClipping light = clipping(made.train, both_eyes[side], {2048});
            // Sampling by 2048 rays, 0.3 %, and the cone's tangent against its sine, 0.3 % of its radius.
            CHECK(near(light.edge_relative, row.share, 0.005));
            CHECK(near(light.points.front().relative, 1, 0));
            for (const EndShare& end : light.rings.back().ends) {
                CHECK(end.surface == made.stop[side]);  // the stop, and nothing else, took the rest
                CHECK_FALSE(end.is_leak);
            }
        }
    }
}

TEST_CASE("across the whole field the light falls off as the closed form does, and more rays come "
          "nearer to it") {
    const OneStop made = one_stop(100, 700, 28, 100, 46);
    const auto worst = [&](int rays) {
        const EyeClipping light = clipping(made.train, Eye::left, {rays});
        double error = 0;
        for (const LitPoint& point : light.points) {
            const double y = glm::length(point.at) * 23;
            const double expected =
                overlap_share(14, 100.0 * 50 / 700 * (1 + cone_excess(100, 700)), y * 600 / 700);
            error = std::max(error, std::abs(point.relative - expected));
        }
        return error;
    };
    CHECK(worst(4096) < 0.004);
    CHECK(worst(1024) < 0.01);
    CHECK(worst(4096) < worst(64));
}

TEST_CASE("the fully lit field of one stop is (aF - zD) / (F - z)") {
    for (const auto& row : reference::fields_behind_stops) {
        CAPTURE(row.aperture);
        CAPTURE(row.before_focus);
        const OneStop made =
            one_stop(row.aperture, row.focal_length, row.stop, row.before_focus, 50);
        const double cone = row.before_focus * row.aperture / (row.focal_length - row.before_focus);
        for (const Eye eye : both_eyes) {
            // The cone's tangent against its sine, and twelve halvings of 50 mm.
            const double within =
                1.1 * cone * cone_excess(row.aperture, row.focal_length) + 50.0 / 4096;
            CHECK(near(clipping(made.train, eye, {64}).fully_illuminated_diameter.value,
                       row.fully_lit, within));
        }
    }
}

TEST_CASE("the fully lit field is the largest circle that is lit all round: a slit bounds it "
          "across, not along") {
    const auto& row = reference::fields_behind_stops.front();
    for (const Polygon& slit : {rectangle(200, row.stop), rectangle(row.stop, 200)}) {
        OneStop made = one_stop(row.aperture, row.focal_length, row.stop, row.before_focus, 50);
        for (std::size_t side = 0; side < 2; ++side) {
            made.train.paths[side].surfaces[made.stop[side]].aperture = slit;
            // As for the round stop: tangent against sine, and twelve halvings of 50 mm.
            CHECK(near(clipping(made.train, both_eyes[side], {64}).fully_illuminated_diameter.value,
                       row.fully_lit, 0.06));
        }
    }
}

TEST_CASE("the chief ray meets the rim of one stop at aF / (F - z), and beyond (aF + zD) / (F - z) "
          "all is dark") {
    for (const auto& row : reference::fields_behind_stops) {
        CAPTURE(row.aperture);
        CAPTURE(row.before_focus);
        const OneStop made =
            one_stop(row.aperture, row.focal_length, row.stop, row.before_focus, 50);
        const EyePath& path = made.train.path(Eye::left);
        const auto passes = [&](double diameter, const std::vector<glm::dvec2>& pupil) {
            const FieldSlope slope{0, diameter / 2 / row.focal_length};
            return std::ranges::count_if(pupil, [&](const glm::dvec2& place) {
                return trace_ray(path, ray_into(made.train, slope, place, 10), primary_wavelength)
                           .fate
                       == RayFate::reached;
            });
        };
        CHECK(passes(row.chief_on_rim - 1e-5, {{0, 0}}) == 1);  // last printed digit
        CHECK(passes(row.chief_on_rim + 1e-5, {{0, 0}}) == 0);
        // A marginal ray nears the image as if from F cosU instead of F: the formula's change with z, times that share.
        const double left = row.focal_length - row.before_focus;
        const double excess = 1.1 * row.focal_length * (row.aperture + row.stop) * row.before_focus
                              / (left * left) * cone_excess(row.aperture, row.focal_length);
        std::vector<glm::dvec2> pupil = rim(360);
        for (glm::dvec2& place : pupil)
            place *= 1 - 1e-9;
        CHECK(passes(row.dark + excess, pupil) == 0);
        CHECK(passes(row.dark - excess, pupil) > 0);
    }
}

TEST_CASE(
    "on axis a stop narrower than the cone leaves the aperture that its circle lets through") {
    // The cone 140 mm before the focus of a 100 mm f/7 is 20 mm wide; a stop of 10 mm leaves half of the aperture.
    const OneStop made = one_stop(100, 700, 10, 140, 20);
    for (const Eye eye : both_eyes) {
        const EyeClipping light = clipping(made.train, eye, {4096});
        CHECK(near(light.working_aperture.value, 50,
                   0.3));  // sampling, and tangent against sine of this zone
        CHECK(near(light.points.front().relative, 0.25, 0.003));
        CHECK(light.fully_illuminated_diameter.value == 0);
    }
}

TEST_CASE("no light is gained: what arrives and what each opening took make up the whole at every "
          "point") {
    for (const auto& chain :
         {std::vector<Part>{}, {{"Diagonal", PrismDiagonal{}, {}}}, {{"Shifter", Shifter{}, {}}}}) {
        Setup setup = plain_setup(chain);
        the<SplitterHead>(setup).glass = "N-BK7";
        const auto train = build_train(setup, setup.chosen, Millimetres{0});
        REQUIRE(train.has_value());
        for (const Eye eye : both_eyes) {
            const EyeClipping light = clipping(*train, eye, {200});
            CHECK(light.points.size() == 1 + lit_ring_count * lit_azimuth_count);
            CHECK(light.rings.size() == 1 + lit_ring_count);
            for (const LitPoint& point : light.points) {
                CHECK(point.relative >= 0);
                CHECK(point.relative <= 1);
                CHECK(near(point.relative + share_of(point.ends), 1, 1e-12));
            }
            for (const LitRing& ring : light.rings) {
                CHECK(near(ring.relative + share_of(ring.ends), 1, 1e-12));
                CHECK(ring.lowest <= ring.relative + 1e-12);
                CHECK(std::ranges::is_sorted(ring.ends, std::greater{}, &EndShare::share));
            }
        }
    }
}

TEST_CASE("wide parts light the whole field of both eyes in full") {
    const Train train = train_in_focus(wide_setup());
    for (const Eye eye : both_eyes) {
        const EyeClipping light = clipping(train, eye, {256});
        CHECK(light.eye == eye);
        CHECK(light.field_stop.value == 21);
        CHECK(light.fully_illuminated_diameter.value == 21);
        CHECK(near(light.edge_relative, 1, 1e-12));
        CHECK(light.working_aperture.value == 100);
    }
}

TEST_CASE("both arms of a perfect head are lit alike: their prisms are each other's mirror image") {
    Setup setup = plain_setup();
    the<Refractor>(setup).focal_length = Millimetres{400};
    the<EyepiecePair>(setup).field_stop = Millimetres{24};
    the<SplitterHead>(setup).glass = "N-BK7";
    const auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE(train.has_value());
    const EyeClipping left = clipping(*train, Eye::left, {4096});
    const EyeClipping right = clipping(*train, Eye::right, {4096});
    CHECK(left.edge_relative < 0.9);
    for (std::size_t i = 0; i < left.rings.size(); ++i) {
        CAPTURE(i);
        // The cube belongs to the left arm's side, so the mirror image is whole only about its round openings;
        // sampling by 4096 rays at six azimuths.
        CHECK(near(left.rings[i].relative, right.rings[i].relative, 0.01));
    }
}

TEST_CASE("between its points the light is interpolated, at its points it is what was traced") {
    const OneStop made = one_stop(100, 700, 28, 100, 40);
    const EyeClipping light = clipping(made.train, Eye::left, {256});
    for (const LitPoint& point : light.points)
        CHECK(near(relative_at(light, point.at), point.relative, 1e-12));
    const double between = relative_at(light, {0.05, 0});
    CHECK(between <= light.points.front().relative);
    CHECK(relative_at(light, {3, 0})
          == relative_at(light, {1, 0}));  // no light is known beyond the edge
}

TEST_CASE("what took the light is named by part and opening, and a leak is called one") {
    const OneStop made = one_stop(100, 700, 28, 100, 40);
    const EyePath& path = made.train.path(Eye::left);
    CHECK(end_name(made.setup, path, {made.stop[0], false, 0.1}) == "Known: front opening");
    CHECK(end_name(made.setup, path, {made.stop[0], true, 0.1}) == "Known: leak at front opening");
}
