// Laws that hold for every setup, tried on many random ones with fixed seeds.
#include <algorithm>
#include <cmath>

#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

double light_path(const EyePath& path) {
    double sum = 0;
    for (const AxialStep& step : path.steps)
        sum += step.reduced();
    return sum;
}

double glass_path(const EyePath& path) {
    double sum = 0;
    for (const AxialStep& step : path.steps)
        sum += step.index[primary_wavelength] > 1 ? step.length : 0;
    return sum;
}

// Half of the distance to which a sliding head comes, by its own lengths: from the prisms' touching, or from a
// stated slide inward, to the arm offset.
double half_distance_set(Setup& setup) {
    const auto& head = the<SplitterHead>(setup);
    const double widest = head.arm_offset.value;
    const double narrowest = head.slide ? widest - head.slide->value : head.prism_width.value;
    return std::clamp(the<Observer>(setup).pupil_distance.value / 2, narrowest, widest);
}

void check_is_number(double value) { CHECK_FALSE(std::isnan(value)); }

}  // namespace

TEST_CASE("no setup of usual parts gives a number that is none, and no light is gained in any") {
    Random random(71);
    for (int i = 0; i < 40; ++i) {
        CAPTURE(i);
        const Setup setup = random_setup(random);
        const auto report = make_report(setup, setup.chosen, {24});
        if (!report) {
            CHECK(report.error().what.find("target is nearer")
                  != std::string::npos);  // the one way out
            continue;
        }
        const FocusBudget& budget = report->budget;
        for (const double value :
             {budget.wanted_drawtube.value, budget.drawtube.value, budget.margin_in.value,
              budget.margin_out.value, budget.shortfall.value, budget.factor(),
              report->magnification.magnification, report->magnification.true_field.value,
              report->magnification.exit_pupil.value}) {
            check_is_number(value);
        }
        CHECK(near(budget.rows.back().left, budget.wanted_drawtube.value, 1e-6));
        CHECK(budget.drawtube >= Millimetres{});
        CHECK(budget.drawtube.value <= budget.travel.value);
        CHECK(budget.shortfall >= Millimetres{});
        CHECK(budget.reaches
              == (budget.shortfall == Millimetres{} && budget.seats_lack == Millimetres{}));
        for (std::size_t side = 0; side < 2; ++side) {
            const EyeClipping& light = report->clipping[side];
            check_is_number(report->image_behind_stop[side].value);
            check_is_number(report->real_focus[side].near_axis.value);
            check_is_number(report->real_focus[side].best.value);
            check_is_number(report->real_focus[side].marginal.value);
            CHECK(light.fully_illuminated_diameter.value >= 0);
            CHECK(light.fully_illuminated_diameter <= light.field_stop);
            CHECK(light.working_aperture.value <= 2 * report->train.objective_radius * (1 + 1e-12));
            for (const LitPoint& point : light.points) {
                double sum = point.relative;
                for (const EndShare& end : point.ends)
                    sum += end.share;
                CHECK(near(sum, 1, 1e-12));
                CHECK(point.relative >= 0);
            }
        }
        CHECK_FALSE(report->findings.empty());
    }
}

TEST_CASE("in every setup with a matched head both arms have one path, one glass and one image") {
    Random random(72);
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        the<SplitterHead>(setup).compensator = std::nullopt;
        the<Observer>(setup).spectacles = Spectacles::kept_on;
        const auto train = build_train(setup, setup.chosen, Millimetres{5});
        if (!train) continue;
        const EyePath& left = train->path(Eye::left);
        const EyePath& right = train->path(Eye::right);
        CHECK(near(light_path(left), light_path(right), 1e-9));
        CHECK(near(glass_path(left), glass_path(right), 1e-9));
        const double image = image_behind_stop(*train, Eye::left).value;
        CHECK(near(image_behind_stop(*train, Eye::right), image, 1e-9 * (1 + image * image)));
    }
}

TEST_CASE("in no setup does a turn of the hinge change a path, the focus or the drawtube, and slid "
          "apart each path grows by half of what the eyes are") {
    Random random(73);
    int turned = 0;
    int slid = 0;
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        const auto before = focus_budget(setup, setup.chosen);
        if (!before) continue;
        const auto first = build_train(setup, setup.chosen, Millimetres{5});
        const double arms_before = half_distance_set(setup);
        the<Observer>(setup).pupil_distance = {random.between(45, 80)};
        const auto second = build_train(setup, setup.chosen, Millimetres{5});
        const bool slides = the<SplitterHead>(setup).mechanism == Mechanism::sliding;
        const double longer = slides ? half_distance_set(setup) - arms_before : 0;
        for (const Eye eye : both_eyes) {
            CHECK(near(light_path(second->path(eye)) - light_path(first->path(eye)), longer, 1e-9));
        }
        ++(slides ? slid : turned);
        if (slides) continue;  // tests of the pupil distance say what that does to focus
        const double wanted = before->wanted_drawtube.value;
        CHECK(near(focus_budget(setup, setup.chosen)->wanted_drawtube.value, wanted,
                   1e-9 * (1 + wanted * wanted)));
    }
    CHECK(turned > 20);
    CHECK(slid > 20);
}

TEST_CASE(
    "a ray that reaches a field stop returns the way it came through every face of the train") {
    Random random(74);
    int returned = 0;
    const Pose half_turn = rotation_about_x(to_radians(Degrees{180}));
    for (int i = 0; i < 60; ++i) {
        CAPTURE(i);
        Setup setup = random_setup(random);
        setup.parts.front().body = random_body(random, *find_kind(Refractor::key));
        const auto train = build_train(setup, setup.chosen, Millimetres{5});
        if (!train) continue;
        for (const Eye eye : both_eyes) {
            const EyePath open = without_stops(train->path(eye));
            EyePath back;
            for (std::size_t s = open.surfaces.size() - 1; s-- > 1;) {
                PlacedSurface reversed = open.surfaces[s];
                reversed.world_from_surface = reversed.world_from_surface * half_turn;
                std::swap(reversed.index_before, reversed.index_after);
                const double focal = reversed.focal_length[primary_wavelength];
                if (reversed.kind == SurfaceKind::thin_lens) {
                    reversed.object_distance = -1 / (1 / reversed.object_distance + 1 / focal);
                }
                back.surfaces.push_back(reversed);
            }
            EyePath there = open;
            there.surfaces.erase(
                there.surfaces.begin());  // the objective: the ray starts behind it
            PlacedSurface start_plane = open.surfaces.front();
            start_plane.kind = SurfaceKind::stop;
            start_plane.aperture = Unbounded{};
            start_plane.world_from_surface = half_turn;
            back.surfaces.push_back(start_plane);
            const double slope = 1 / (2 * 6.0);
            const Ray start{{random.between(-30, 30), random.between(-30, 30), 0},
                            glm::normalize(Direction{random.between(-slope, slope),
                                                     random.between(-slope, slope), 1}),
                            0};
            const RayEnd end = trace_ray(there, start, primary_wavelength);
            if (end.fate != RayFate::reached) continue;
            const RayEnd home =
                trace_ray(back, {end.ray.origin, -end.ray.direction, 0}, primary_wavelength);
            CHECK(home.fate == RayFate::reached);
            CHECK(glm::distance(home.ray.origin, start.origin)
                  < 1e-5);  // rounding, grown by lenses in a row and 1 m of path
            CHECK(glm::distance(home.ray.direction, -start.direction) < 1e-8);
            ++returned;
        }
    }
    CHECK(returned > 60);
}
