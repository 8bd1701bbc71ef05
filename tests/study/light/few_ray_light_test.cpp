// Light from few rays against counted rays, over trains of every kind: within half a percent at every field point.
#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/newtonian.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/prism_errors.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/light/few_ray_light.hpp"
#include "support/light_agreement.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_light;
using namespace test_setups;

namespace {

// What one surface takes ends where the one before and the one behind it begin, and where the light does: it is as
// uncertain at each of the three; the fully lit field is sought to a thousandth.
void check_light(const LightAgreement& found) {
    CHECK(found.worst <= agreed);
    CHECK(found.worst_end <= 3 * agreed);
    CHECK(found.worst_field <= 0.004);
}

double share_by_few_rays(const LightAgreement& found) {
    return static_cast<double>(found.by_few_rays) / found.points;
}

Train light_train(const Setup& setup) {
    return focused_train(setup, setup.chosen, *solved_focus(setup, setup.chosen)).value();
}

template <class Telescope>
void draw_telescope(Random& random, Setup& setup) {
    for (const PartKind& kind : part_kinds()) {
        if (kind.fresh.is<Telescope>()) setup.parts.front().body = random_body(random, kind);
    }
}

}  // namespace

TEST_CASE("few rays tell the light of random trains at every field point, and nearly always can") {
    Random random(91);
    LightAgreement sum;
    for (int i = 0; i < 16; ++i) {
        CAPTURE(i);
        const Setup setup = random_setup(random);
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 60)});
        if (!train) continue;
        const LightAgreement found = light_agreement(*train);
        check_light(found);
        sum += found;
    }
    CHECK(share_by_few_rays(sum) > 0.9);
    CHECK(sum.in_between > 400);
}

TEST_CASE("few rays tell the light of heads whose prisms stand askew") {
    Random random(92);
    LightAgreement sum;
    for (int i = 0; i < 6; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        auto& head = the<SplitterHead>(setup);
        head.prisms_stand = PrismsStand::slightly_off;
        for (PrismErrors* errors :
             {&head.cube_errors, &head.arm_prism_errors, &head.rhomboid_errors}) {
            errors->tilt_x = random.between(-60, 60);
            errors->tilt_y = random.between(-60, 60);
            errors->roll = random.between(-60, 60);
            errors->shift_x = random.between(-1, 1);
        }
        const auto train = build_train(setup, setup.chosen, Millimetres{20});
        if (!train) continue;
        const LightAgreement found = light_agreement(*train);
        check_light(found);
        sum += found;
    }
    CHECK(share_by_few_rays(sum) > 0.8);
    CHECK(sum.in_between > 150);
}

TEST_CASE("few rays tell the light behind openings that all lean") {
    Random random(93);
    LightAgreement sum;
    for (int i = 0; i < 6; ++i) {
        CAPTURE(i);
        Setup setup = plain_setup({{"Extension", Spacer{Millimetres{30}, Millimetres{26}}, {}}});
        Train train = light_train(setup);
        for (EyePath& path : train.paths) {
            for (std::size_t k = 1; k + 1 < path.surfaces.size(); ++k) {
                PlacedSurface& surface = path.surfaces[k];
                if (surface.kind != SurfaceKind::stop) continue;
                surface.world_from_surface =
                    surface.world_from_surface
                    * rotation_about_x(to_radians(Degrees{random.between(-40, 40)}))
                    * rotation_about_y(to_radians(Degrees{random.between(-40, 40)}));
                if (random.chance(0.3)) surface.aperture = rectangle(22, random.between(14, 30));
                if (random.chance(0.2)) surface.aperture = Ellipse{{13, 10}, {1, -1}};
            }
        }
        const LightAgreement found = light_agreement(train);
        check_light(found);
        sum += found;
    }
    CHECK(share_by_few_rays(sum) > 0.9);
    CHECK(sum.in_between > 150);
}

TEST_CASE("few rays tell the light of obstructed telescopes, whose shadow is a hole in the pupil") {
    Random random(94);
    LightAgreement sum;
    for (int i = 0; i < 8; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        if (i % 2 == 0) {
            draw_telescope<Newtonian>(random, setup);
        } else {
            draw_telescope<CassegrainMovingMirror>(random, setup);
        }
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 40)});
        if (!train) continue;
        const LightAgreement found = light_agreement(*train);
        check_light(found);
        sum += found;
        for (const Eye eye : both_eyes) {
            CHECK(near(clipping(*train, eye, {192, LightForm::few_rays}).obstructed_share,
                       clipping(*train, eye, {many_rays}).obstructed_share, 2e-3));
        }
    }
    CHECK(share_by_few_rays(sum) > 0.8);
    CHECK(sum.in_between > 150);
}

TEST_CASE("few rays tell the light of setups in which it is dark") {
    LightAgreement sum;
    for (const double opening : {3.0, 6.0, 10.0}) {
        CAPTURE(opening);
        Setup setup = plain_setup();
        the<SplitterHead>(setup).entry_clear = {opening};
        the<EyepiecePair>(setup).field_stop = {27};
        the<EyepiecePair>(setup).barrel_clear = {27.5};
        const LightAgreement found = light_agreement(light_train(setup));
        check_light(found);
        sum += found;
    }
    CHECK(share_by_few_rays(sum) > 0.9);
    CHECK(sum.in_between > 50);
}

TEST_CASE("few rays tell the light of a prism whose bare face leaks") {
    LightAgreement sum;
    for (const double focal_length : {300.0, 350.0, 420.0}) {
        CAPTURE(focal_length);
        Setup setup = wide_setup({{"Diagonal", PrismDiagonal{}, {}}});
        the<Refractor>(setup).focal_length = {focal_length};
        the<PrismDiagonal>(setup).glass = "N-BK7";
        the<PrismDiagonal>(setup).prism_width = {80};
        the<PrismDiagonal>(setup).clear_diameter = {78};
        const auto train = build_train(setup, setup.chosen, Millimetres{0});
        REQUIRE(train.has_value());
        const LightAgreement found = light_agreement(*train);
        check_light(found);
        sum += found;
        const EyeClipping light = clipping(*train, Eye::left, {192, LightForm::few_rays});
        const auto& ends = light.rings.back().ends;
        CHECK(
            std::any_of(ends.begin(), ends.end(), [](const EndShare& end) { return end.is_leak; }));
    }
    CHECK(share_by_few_rays(sum) > 0.9);
}

TEST_CASE("where nothing clips, few rays find all light, to the last digit") {
    const Train train = light_train(wide_setup());
    for (const Eye eye : both_eyes) {
        const EyeClipping light = clipping(train, eye, {192, LightForm::few_rays});
        for (const LitPoint& point : light.points) {
            CHECK(point.relative == 1);
            CHECK(point.ends.empty());
        }
        CHECK(near(light.edge_relative, 1, 1e-12));
        CHECK(light.working_aperture.value == 100);
        CHECK(light.fully_illuminated_diameter == light.field_stop);
    }
}

TEST_CASE("where everything is clipped, few rays find no light") {
    Train train = light_train(wide_setup());
    for (EyePath& path : train.paths) {
        PlacedSurface& stop = path.surfaces[path.surfaces.size() / 2];
        stop.kind = SurfaceKind::stop;
        stop.aperture = Circle{1};
        stop.world_from_surface = stop.world_from_surface * translation(200, 0, 0);
        const EyeClipping light = clipping(train, path.eye, {192, LightForm::few_rays});
        for (const LitPoint& point : light.points) {
            CHECK(point.relative == 0);
            REQUIRE(point.ends.size() == 1);
            CHECK(near(point.ends[0].share, 1, 1e-12));
            CHECK(point.ends[0].surface == path.surfaces.size() / 2);
        }
        CHECK(light.fully_illuminated_diameter.value == 0);
    }
}

TEST_CASE("a path that few rays do not describe has its rays counted") {
    Train train = light_train(wide_setup());
    EyePath& path = train.paths[0];
    path.surfaces[1].kind = SurfaceKind::obstruction;
    path.surfaces[1].aperture = rectangle(40, 30);
    const LightAgreement found = light_agreement(train, Eye::left);
    CHECK(found.by_few_rays == 0);
    check_light(found);
    CHECK(clipping(train, Eye::left, {192, LightForm::few_rays}).points.front().relative
          == clipping(train, Eye::left, {4096}).points.front().relative);
}

TEST_CASE("a report made of few rays is filled like one of many") {
    const Setup setup = plain_setup();
    const auto quick = make_report(setup, setup.chosen, {192, LightForm::few_rays});
    const auto settled = make_report(setup, setup.chosen, {many_rays});
    REQUIRE(quick.has_value());
    REQUIRE(settled.has_value());
    for (std::size_t side = 0; side < 2; ++side) {
        const EyeClipping& a = quick->clipping[side];
        const EyeClipping& b = settled->clipping[side];
        REQUIRE(a.rings.size() == b.rings.size());
        for (std::size_t ring = 0; ring < a.rings.size(); ++ring) {
            CHECK(near(a.rings[ring].relative, b.rings[ring].relative, agreed));
            CHECK(near(a.rings[ring].lowest, b.rings[ring].lowest, agreed));
            if (b.rings[ring].ends.empty() || b.rings[ring].ends.front().share < 0.02) continue;
            REQUIRE_FALSE(a.rings[ring].ends.empty());
            CHECK(near(a.rings[ring].ends.front().share, b.rings[ring].ends.front().share, agreed));
        }
        CHECK(a.field_stop == b.field_stop);
        CHECK(near(a.edge_relative, b.edge_relative, agreed));
        CHECK(near(a.working_aperture / b.working_aperture, 1, agreed));
        for (const LitPoint& point : a.points) {
            double sum = point.relative;
            for (const EndShare& end : point.ends)
                sum += end.share;
            CHECK(near(sum, 1, 1e-12));
        }
    }
}
