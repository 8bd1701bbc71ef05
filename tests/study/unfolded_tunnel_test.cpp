// The same train traced a second way: the unfolded tunnel and the folded prism faces agree on path, place, focus and
// on where each ray ends.
#include <cmath>

#include "parts/coma_corrector.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/prisms.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "study/focus/focus_budget.hpp"
#include "support/near.hpp"
#include "support/random.hpp"
#include "support/unfolded_tunnel.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;
using test_tunnel::Tunnel;
using test_tunnel::TunnelEnd;

namespace {

std::vector<Setup> setups() {
    PrismDiagonal prism;
    prism.turned = Degrees{25};
    prism.glass = "N-BK7";  // leaks at f/6 off axis
    MirrorDiagonal mirror;
    mirror.turned = Degrees{-40};
    Shifter shifter;
    shifter.lens_offset = Millimetres{3};
    shifter.length = Millimetres{12};

    ComaCorrector corrector;
    corrector.stated_light_path = Millimetres{14};

    std::vector<Setup> all{
        plain_setup(),
        plain_setup(
            {{"Diagonal", prism, {}}, {"Ring", Spacer{Millimetres{15}, Millimetres{30}}, {}}}),
        plain_setup(
            {{"Diagonal", mirror, {}}, {"Ring", Spacer{}, {}}, {"Filter", FilterPlate{}, {}}}),
        plain_setup({{"Shifter", shifter, {}}, {"Diagonal", mirror, {}}}),
        plain_setup({{"Diagonal", prism, {}}, {"Shifter", shifter, {}}}),
        wide_setup({{"Diagonal", prism, {}}}),
        plain_setup({{"Corrector", corrector, {}}, {"Ring", Spacer{}, {}}}),
    };
    // A filter leaves 2 mm of air in its ring: no nose may reach farther into it.
    for (Setup& setup : all)
        the<SplitterHead>(setup).nose_length = Millimetres{1.5};
    // Stiff seats: the tunnel knows nothing of what they would make up between unequal arms.
    for (Setup& setup : all)
        the<SplitterHead>(setup).seat_travel = Millimetres{0};
    // Again with everything that an owner may change about them.
    for (std::size_t i = 0; i < 7; ++i) {
        Setup other = all[i];
        the<Refractor>(other).baffle_diameter = Millimetres{45};
        the<Refractor>(other).baffle_position = Millimetres{200};
        auto& head = the<SplitterHead>(other);
        head.stated_light_path = Millimetres{125};
        head.reflecting_faces = FaceCoating::bare;
        head.glass = "N-BK7";
        if (i % 2 == 0) head.compensator = Millimetres{i == 0 ? 0.0 : 20.0};
        the<EyepiecePair>(other).field_stop_depth = Millimetres{4};
        the<Observer>(other).pupil_distance = Millimetres{58};
        if (i == 1 || i == 3) the<Target>(other).distance = Metres{30};
        all.push_back(other);
    }
    return all;
}

bool has_lens(const Setup& setup) {
    return find_part<Shifter>(setup) != nullptr || find_part<ComaCorrector>(setup) != nullptr;
}

// Planes of two parts may touch, and then either may be named for what both clip.
bool is_same_place(const Tunnel& tunnel, std::size_t plane, const PlacedSurface& surface) {
    for (const auto& each : tunnel.planes) {
        if (each.part == surface.part && each.name == surface.name) {
            return std::abs(each.z - tunnel.planes[plane].z) < 1e-9;
        }
    }
    return false;
}

}  // namespace

TEST_CASE("rays end at the same opening, face or place of the field stop in the folded and in the "
          "unfolded train") {
    Random random(61);
    int reached = 0;
    int clipped = 0;
    int leaked = 0;
    std::size_t number = 0;
    for (const Setup& setup : setups()) {
        CAPTURE(number);
        ++number;
        const double drawtube = 20;
        const auto train = build_train(setup, setup.chosen, Millimetres{drawtube});
        REQUIRE(train.has_value());
        for (const Eye eye : both_eyes) {
            const Tunnel tunnel = test_tunnel::unfold(setup, eye, drawtube);
            const EyePath& path = train->path(eye);
            REQUIRE(tunnel.planes.size() + 1 == path.surfaces.size());
            for (int i = 0; i < 600; ++i) {
                const double radius = std::sqrt(random.between(0, 1));
                const double turn = random.between(0, 6.3);
                const glm::dvec2 pupil{radius * std::cos(turn), radius * std::sin(turn)};
                const FieldSlope field{random.between(-0.025, 0.025),
                                       random.between(-0.025, 0.025)};
                const RayEnd folded =
                    trace_ray(path, ray_into(*train, field, pupil, 10), primary_wavelength);
                const Eigen::Vector2d at{pupil.x * tunnel.objective_radius,
                                         pupil.y * tunnel.objective_radius};
                const TunnelEnd straight = test_tunnel::trace(tunnel, {field.x, field.y}, at);
                CHECK((folded.fate == RayFate::reached)
                      == (straight.fate == TunnelEnd::Fate::reached));
                CHECK((folded.fate == RayFate::leaked)
                      == (straight.fate == TunnelEnd::Fate::leaked));
                CHECK(is_same_place(tunnel, straight.plane, path.surfaces[folded.surface]));
                if (!has_lens(setup))
                    CHECK(near(folded.ray.path, straight.path, 1e-8));  // rounding of 1 m, or 30 m
                reached += folded.fate == RayFate::reached ? 1 : 0;
                clipped += folded.fate == RayFate::clipped ? 1 : 0;
                leaked += folded.fate == RayFate::leaked ? 1 : 0;
                if (folded.fate != RayFate::reached) continue;
                const glm::dvec2 place{path.world_from_field_stop.point_in(folded.ray.origin)};
                CHECK(near(place.x, straight.at.x(), 1e-9));
                CHECK(near(place.y, straight.at.y(), 1e-9));
            }
        }
    }
    CHECK(reached > 1000);  // the comparison saw all three
    CHECK(clipped > 1000);
    CHECK(leaked > 20);
}

TEST_CASE("the image falls where a paraxial ray through the unfolded train has it") {
    std::size_t number = 0;
    for (const Setup& setup : setups()) {
        CAPTURE(number);
        ++number;
        for (const double drawtube : {0.0, 17.5, 60.0}) {
            const auto train = build_train(setup, setup.chosen, Millimetres{drawtube});
            REQUIRE(train.has_value());
            for (const Eye eye : both_eyes) {
                const double expected =
                    paraxial_image_behind_stop(test_tunnel::unfold(setup, eye, drawtube));
                // Rounding, grown where the image lies far away.
                CHECK(near(image_behind_stop(*train, eye), expected,
                           1e-9 * (1 + expected * expected)));
            }
        }
    }
}

TEST_CASE("with the drawtube where the budget wants it, the unfolded train has the images of both "
          "arms as far before "
          "one field stop as behind the other") {
    std::size_t number = 0;
    for (const Setup& setup : setups()) {
        CAPTURE(number);
        ++number;
        const auto budget = focus_budget(setup, setup.chosen);
        REQUIRE(budget.has_value());
        double sum = 0;
        for (const Eye eye : both_eyes) {
            sum += paraxial_image_behind_stop(
                test_tunnel::unfold(setup, eye, budget->wanted_drawtube.value));
        }
        CHECK(near(sum, 0, 1e-8));  // rounding, of 0.1 m behind a lens
    }
}
