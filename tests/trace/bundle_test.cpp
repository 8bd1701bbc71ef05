// Many rays at once end as the scalar reference ends them one by one: the same fate at the same surface, the same place,
// direction and optical path. The reference itself is held to closed forms by the other tests of this folder.
#include <cmath>
#include <set>

#include "parts/prism_errors.hpp"
#include "parts/prisms.hpp"
#include "parts/roof_prisms.hpp"
#include "parts/splitter_head.hpp"
#include "support/bundle_agreement.hpp"
#include "support/eye_paths.hpp"
#include "support/random_setups.hpp"
#include "trace/bundle.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

// Rays over a disc a little wider than the objective from points all over the field stop and beyond.
RayBundle light_into(const Train& train, Eye eye, Random& random, int fields, int rays) {
    const FieldMap map = field_map(train, eye);
    const double radius = inner_radius(train.path(eye).surfaces.back().aperture);
    RayBundle bundle;
    for (int i = 0; i < fields; ++i) {
        const FieldSlope slope =
            map.slope_at({random.between(-radius, radius), random.between(-radius, radius)});
        for (const glm::dvec2& pupil : sunflower(rays))
            bundle.add(ray_into(train, slope, 1.02 * pupil, 10));
    }
    return bundle;
}

Pose leaning(Random& random, const Pose& pose, double degrees) {
    return pose * rotation_about_x(to_radians(Degrees{random.between(-degrees, degrees)}))
           * rotation_about_y(to_radians(Degrees{random.between(-degrees, degrees)}))
           * rotation_about_z(to_radians(Degrees{random.between(-180, 180)}));
}

Aperture random_edge(Random& random) {
    const double r = random.between(6, 14);
    switch (random.below(5)) {
    case 0: return Unbounded{};
    case 1: return Circle{r};
    case 2: return rectangle(2 * r, random.between(10, 30));
    case 3: return Ellipse{{r, random.between(6, 14)}, {random.between(-2, 2), 1}};
    default: return Polygon{{{-r, -9}, {r, -12}, {14, r}, {-3, 15}}};
    }
}

// A chain of anything, each surface at a lean of its own.
EyePath random_chain(Random& random, double lean) {
    PathMaker maker;
    double z = 20;
    double index = 1;
    for (std::size_t count = 4 + random.below(12); count > 0; --count) {
        const Pose pose = leaning(random, translation(0, 0, z), lean);
        z += random.between(2, 20);
        const double pick = random.between(0, 1);
        if (pick < 0.5) {
            index = random.one_of(std::vector<double>{1, 1.33, 1.5168, 1.5688, 1.85});
            maker.face(pose, index);
        } else if (pick < 0.8) {
            maker.stop(pose, random_edge(random));
        } else {
            maker.thin_lens(pose, random.one_of(std::vector<double>{-120, 300}),
                            random.between(-400, 400));
        }
    }
    EyePath path = maker.ending_at(leaning(random, translation(0, 0, z + 30), 5));
    for (PlacedSurface& surface : path.surfaces) {
        if (surface.kind == SurfaceKind::refraction && random.chance(0.3))
            surface.aperture = random_edge(random);
        if (surface.kind == SurfaceKind::stop && random.chance(0.2))
            surface.kind = SurfaceKind::obstruction;
    }
    path.surfaces.back().kind = SurfaceKind::stop;
    return path;
}

RayBundle random_rays(Random& random, std::size_t count, double radius, double slope) {
    RayBundle bundle;
    for (std::size_t i = 0; i < count; ++i) {
        bundle.add({{random.between(-radius, radius), random.between(-radius, radius), 0},
                    random_direction_near_z(random, slope),
                    random.between(0, 100)});
    }
    return bundle;
}

EyePath bare_prism(const Prism& prism, double index, const Pose& pose = {}) {
    PathMaker maker;
    EyePath path = maker.prism(prism, pose, index)
                       .ending_at(pose * prism.prism_from_exit * translation(0, 0, 1));
    for (std::size_t i = 0; i < prism.surfaces.size(); ++i)
        path.surfaces[i].is_roof = prism.surfaces[i].is_roof;
    return path;
}

bool has_plates(const EyePath& path) {
    const auto straight = straightened(path, primary_wavelength);
    REQUIRE(straight);
    for (const StraightSection& section : straight->sections) {
        if (std::holds_alternative<PlateStack>(section.bend)) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("rays through whole random trains end as the reference says") {
    Random random(61);
    Fates fates;
    int fast = 0;
    constexpr int trains = 40;
    for (int i = 0; i < trains; ++i) {
        CAPTURE(i);
        const Setup setup = test_setups::random_setup(random);
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 60)});
        if (!train) continue;
        for (const Eye eye : both_eyes) {
            const RayBundle bundle = light_into(*train, eye, random, 6, 50);
            for (std::size_t w = 0; w < wavelength_count; ++w)
                fates += check_agreement(train->path(eye), bundle, w);
            fast += BundleTracer(train->path(eye), primary_wavelength).is_fast() ? 1 : 0;
        }
    }
    CHECK(fast > 1.9 * trains * 0.9);  // hardly any is left to the reference
    CHECK(fates.reached > 10000);
    CHECK(fates.clipped > 10000);
}

TEST_CASE(
    "rays through trains with prisms and eyepieces off their place end as the reference says") {
    Random random(62);
    Fates fates;
    for (int i = 0; i < 20; ++i) {
        CAPTURE(i);
        Setup setup = test_setups::random_setup(random);
        auto& head = test_setups::the<SplitterHead>(setup);
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
        for (const Eye eye : both_eyes)
            fates += check_agreement(train->path(eye), light_into(*train, eye, random, 6, 50), 1);
    }
    CHECK(fates.reached > 1000);
    CHECK(fates.clipped > 1000);
}

TEST_CASE("rays through surfaces that all lean end as the reference says") {
    Random random(63);
    Fates fates;
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        const bool is_gentle = i % 2 == 0;
        const EyePath path = random_chain(random, is_gentle ? 5 : 40);
        fates += check_agreement(path, random_rays(random, 67, 8, is_gentle ? 0.1 : 0.5), 1);
    }
    CHECK(fates.reached > 1000);
    CHECK(fates.clipped > 1000);
    CHECK(fates.leaked > 100);  // refracting faces that reflect totally
}

TEST_CASE("rays that really fail to be totally reflected leak where the reference says") {
    Random random(64);
    Fates fates;
    for (const double index : {1.45, 1.5168, 1.5688, 1.7}) {
        for (int i = 0; i < 5; ++i) {
            const Prism diagonal = right_angle_prism(40, {"bare", FaceCoating::bare}, "prism");
            const Prism rhomboid = rhomboid_prism(40, 50, {"bare", FaceCoating::bare}, "prism");
            const Pose pose = i == 0 ? Pose{} : leaning(random, Pose{}, 8);
            for (const Prism& prism : {diagonal, rhomboid}) {
                fates += check_agreement(bare_prism(prism, index, pose),
                                         random_rays(random, 500, 15, 0.4), 1);
            }
        }
    }
    CHECK(fates.leaked > 1000);
    CHECK(fates.reached > 1000);
}

TEST_CASE("rays through roofs, true and out of true, end as the reference says") {
    Random random(65);
    Fates fates;
    for (const double minutes : {0.0, 3.0, 60.0}) {
        for (const Prism& prism : {roof_prism_90(25, {"N-BAK4", FaceCoating::bare}, "roof"),
                                   roof_prism_45(25, {"N-BAK4", FaceCoating::bare}, "roof"),
                                   roof_prism_45(25, {"N-BAK4", FaceCoating::mirrored}, "roof")}) {
            EyePath path = bare_prism(prism, 1.5688, leaning(random, Pose{}, minutes / 60));
            for (PlacedSurface& surface : path.surfaces) {
                if (surface.is_roof) {
                    surface.world_from_surface =
                        leaning(random, surface.world_from_surface, minutes / 60);
                    surface.aperture = Circle{18};
                }
            }
            REQUIRE(BundleTracer(path, 1).is_fast());
            fates += check_agreement(path, random_rays(random, 600, 12, 0.15), 1);
        }
    }
    CHECK(fates.reached > 1000);
    CHECK(fates.clipped > 100);
    CHECK(fates.leaked > 100);
}

TEST_CASE("rays off curved mirrors end as the reference says, those that pass them by as well") {
    Random random(66);
    Fates fates;
    for (const double constant : {-1.7, -1.0, 0.0, 0.4}) {
        for (const double lean : {0.0, 3.0}) {
            PlacedSurface primary =
                placed("primary", SurfaceKind::mirror,
                       leaning(random, translation(0, 0, 100), lean), Circle{70});
            primary.shape = {-1 / 200.0, constant};
            PlacedSurface secondary =
                placed("secondary", SurfaceKind::mirror,
                       leaning(random, translation(0, 0, 30), lean), Ellipse{{40, 30}, {2, 1}});
            secondary.shape = {-1 / 300.0, constant};
            EyePath path;
            path.object_distance = std::numeric_limits<double>::infinity();
            path.surfaces = {
                placed("shadow", SurfaceKind::obstruction, translation(0, 0, 10), Circle{5}),
                primary, secondary, placed("plane", SurfaceKind::stop, translation(0, 0, 120))};
            for (PlacedSurface& surface : path.surfaces)
                surface.index_before = surface.index_after = at_all_wavelengths(1);
            REQUIRE(BundleTracer(path, 1).is_fast());
            fates += check_agreement(path, random_rays(random, 600, 150, 0.3), 1);
        }
    }
    CHECK(fates.reached > 500);
    CHECK(fates.clipped > 500);
    CHECK(fates.missed > 50);
}

TEST_CASE("rays through an ideal corrector plate end as the reference says, in air and in glass") {
    Random random(70);
    Fates fates;
    for (const double index : {1.0, 1.5168}) {
        for (const double lean : {0.0, 3.0}) {
            PlacedSurface plate = placed("plate", SurfaceKind::phase_plate,
                                         leaning(random, translation(0, 0, 50), lean), Circle{30});
            plate.profile.terms = {2e-7, -3e-11, 1e-14, 2e-18, -1e-22};
            EyePath path;
            path.object_distance = std::numeric_limits<double>::infinity();
            path.surfaces = {plate, placed("plane", SurfaceKind::stop, translation(0, 0, 120))};
            for (PlacedSurface& surface : path.surfaces)
                surface.index_before = surface.index_after = at_all_wavelengths(index);
            REQUIRE(BundleTracer(path, 1).is_fast());
            fates += check_agreement(path, random_rays(random, 600, 35, 0.1), 1);
        }
    }
    CHECK(fates.reached > 1000);
    CHECK(fates.clipped > 100);
}

TEST_CASE(
    "rays through ideal lenses end as the reference says, upright and at a lean, far and near") {
    Random random(67);
    for (const double distance : {std::numeric_limits<double>::infinity(), 5000.0}) {
        for (const double lean : {0.0, 4.0}) {
            PathMaker maker;
            EyePath path = maker.from_target(distance)
                               .objective(400, Circle{30})
                               .thin_lens(leaning(random, translation(0, 0, 250), lean), -120, 150)
                               .thin_lens(leaning(random, translation(0, 0, 300), lean), 90, -60)
                               .ending_at(translation(0, 0, 400));
            path.surfaces[0].world_from_surface = leaning(random, Pose{}, lean);
            RayBundle bundle = random_rays(random, 300, 30, 0.03);
            for (double& z : bundle.z)
                z = -20;
            CHECK(check_agreement(path, bundle, 1).reached > 100);
        }
    }
}

TEST_CASE("a ray beside a plane is missed in a bundle as it is alone") {
    PathMaker maker;
    const EyePath path =
        maker.stop(translation(0, 0, 5))
            .face(translation(0, 0, 10) * rotation_about_x(to_radians(Degrees{90})), 1.5)
            .ending_at(translation(0, 0, 20));
    RayBundle bundle;
    bundle.add({{0, 1, 0}, {0, 0, 1}, 0});  // along the face
    bundle.add({{0, 1, 0}, glm::normalize(Direction{0, 0.3, 1}), 0});
    bundle.add({{0, 1, 0}, glm::normalize(Direction{0, 1e-7, 1}), 0});  // hardly meets it
    CHECK(check_agreement(path, bundle, 1).missed == 1);
}

TEST_CASE("a path that the fast form does not describe is traced all the same") {
    const Prism prism = roof_prism_90(25, {"N-BAK4", FaceCoating::bare}, "roof");
    EyePath path = bare_prism(prism, 1.5688);
    const auto roof = std::find_if(path.surfaces.begin(), path.surfaces.end(),
                                   [](const PlacedSurface& surface) { return surface.is_roof; });
    path.surfaces.erase(roof + 2, path.surfaces.end());  // ends within the roof
    CHECK_FALSE(BundleTracer(path, 1).is_fast());
    Random random(68);
    CHECK(check_agreement(path, random_rays(random, 100, 10, 0.1), 1).reached > 50);
}

TEST_CASE("plates are stacked where their faces are square to the axis, and only there") {
    const Prism prism = right_angle_prism(30, {"bare", FaceCoating::bare}, "prism");
    CHECK(has_plates(bare_prism(prism, 1.5168)));
    CHECK(has_plates(bare_prism(prism, 1.5168, rotation_about_z(to_radians(Degrees{30})))));
    constexpr double minute = 1.0 / 60;
    CHECK_FALSE(
        has_plates(bare_prism(prism, 1.5168, rotation_about_x(to_radians(Degrees{minute})))));
    EyePath wedge = bare_prism(prism, 1.5168);
    Pose& exit = wedge.surfaces[2].world_from_surface;
    exit = exit * rotation_about_y(to_radians(Degrees{minute}));
    CHECK_FALSE(has_plates(wedge));
}

TEST_CASE("each set of instructions has a name of its own, the one without vectors among them") {
    std::vector<std::string> names;
    for (const InstructionSet& set : instruction_sets())
        names.push_back(set.name);
    CAPTURE(fmt::format("{}", fmt::join(names, " ")));
    CHECK((names.back() == "EMU128" || names.back() == "SCALAR"));
    CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());
}

TEST_CASE("a bundle of any count is traced whole") {
    const EyePath path =
        bare_prism(right_angle_prism(30, {"bare", FaceCoating::bare}, "prism"), 1.5168);
    Random random(69);
    for (const std::size_t count : {0, 1, 2, 15, 16, 17, 255, 256, 257, 600})
        CHECK(check_agreement(path, random_rays(random, count, 12, 0.1), 1).all() == count);
}
