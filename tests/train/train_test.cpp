#include <algorithm>
#include <cmath>

#include "parts/filter_plate.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "reference/visual_telescope.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "train/train.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train built(const Setup& setup, double drawtube = 0) {
    auto train = build_train(setup, setup.chosen, Millimetres{drawtube});
    REQUIRE(train.has_value());
    return *std::move(train);
}

std::string refusal(const Setup& setup) {
    const auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE_FALSE(train.has_value());
    CHECK(train.error().code == ErrorCode::impossible);
    return train.error().what;
}

const PlacedSurface& surface(const EyePath& path, const std::string& name) {
    const auto found = std::ranges::find(path.surfaces, name, &PlacedSurface::name);
    REQUIRE(found != path.surfaces.end());
    return *found;
}

double index_at_e(const char* glass) {
    return refractive_index(standard_catalogue().find(glass).value(), spectral_line::e).value();
}

}  // namespace

TEST_CASE("a near target focuses farther out than the sky by Newton's rule") {
    for (const auto& row : reference::near_targets) {
        CAPTURE(row.distance);
        const auto shift =
            near_target_shift(Millimetres{row.focal_length}, Millimetres{row.distance});
        CHECK(near(shift.value, row.shift, 1e-5));  // last printed digit
    }
}

TEST_CASE("the near target moves the image the train has to work with") {
    Setup setup = plain_setup();
    the<Target>(setup).distance = Metres{20};
    const Train train = built(setup);
    CHECK(near(train.back_focus, 120 + 480.0 * 480 / (20000 - 480), rounding));
    CHECK(train.object_distance == 20000);
    CHECK(std::isinf(built(plain_setup()).object_distance));
}

TEST_CASE("every eye's path begins at the objective and ends at its field stop, in order along the "
          "axis") {
    for (const Setup& setup :
         {plain_setup(), wide_setup({{"Diagonal", PrismDiagonal{}, {}}, {"Ring", Spacer{}, {}}})}) {
        const Train train = built(setup, 10);
        for (const Eye eye : both_eyes) {
            const EyePath& path = train.path(eye);
            CHECK(path.eye == eye);
            CHECK(path.surfaces.front().kind == SurfaceKind::objective);
            CHECK(path.surfaces.back().name == "field stop");
            CHECK(path.surfaces.back().world_from_surface == path.world_from_field_stop);
        }
    }
}

TEST_CASE(
    "openings of neighbouring parts that share one air space are met in the order of their place") {
    Setup setup = wide_setup({{"Ring", Spacer{Millimetres{30}, Millimetres{60}}, {}}});
    the<SplitterHead>(setup).nose_length = Millimetres{20};  // ends 10 mm behind the ring's front
    const EyePath path = built(setup).path(Eye::left);
    const auto place = [&](std::size_t part, const std::string& name) {
        const auto found = std::ranges::find_if(path.surfaces, [&](const PlacedSurface& s) {
            return s.part == part && s.name == name;
        });
        REQUIRE(found != path.surfaces.end());
        return found - path.surfaces.begin();
    };
    CHECK(place(2, "front opening") < place(3, "nose"));
    CHECK(place(3, "nose") < place(2, "rear opening"));
    CHECK(place(2, "rear opening") < place(3, "entry collar"));
    double before = -1;
    for (const PlacedSurface& each : path.surfaces) {
        CHECK(each.axis_position >= before);
        before = each.axis_position;
    }
}

TEST_CASE("the axial steps lead from the drawtube's rear face to the field stop without a gap") {
    const Setup setup = plain_setup({{"Diagonal", PrismDiagonal{}, {}}, {"Lens", Shifter{}, {}}});
    const Train train = built(setup, 25);
    for (const EyePath& path : train.paths) {
        CHECK(glm::distance(path.steps.front().from, {0, 0, 480 - 120 + 25}) < rounding);
        for (std::size_t i = 1; i < path.steps.size(); ++i) {
            CHECK(glm::distance(path.steps[i].from, path.steps[i - 1].to) < rounding);
            CHECK(near(glm::distance(path.steps[i].from, path.steps[i].to),
                       std::abs(path.steps[i].length), rounding));
        }
        CHECK(glm::distance(path.steps.back().to, path.world_from_field_stop.origin) < rounding);
    }
}

TEST_CASE("a part's light path is its air and its glass over the index") {
    const Setup setup =
        plain_setup({{"Diagonal", PrismDiagonal{}, {}}, {"Filter", FilterPlate{}, {}}});
    const Train train = built(setup);
    REQUIRE(train.light_paths.size() == 4);
    const LightPath& diagonal = train.light_paths[0];
    CHECK(near(diagonal.glass, 25, rounding));  // the prism's width, by its tunnel diagram
    CHECK(near(diagonal.derived_left, 22 + 22 - 25 + 25 / index_at_e("N-BAK4"), rounding));
    CHECK(near(train.light_paths[1].derived_left, 6 - 2 + 2 / index_at_e("N-BK7"), rounding));
    const LightPath& head = train.light_paths[2];
    CHECK(near(head.glass, 2 * 25 + 37, rounding));
    CHECK(near(head.derived_left, 14 + (37 - 25) + 30 + (2 * 25 + 37) / index_at_e("N-BAK4"),
               rounding));
    CHECK(near(head.derived_right, head.derived_left, rounding));
}

TEST_CASE("a stated light path wins over the derived one and the difference becomes air at the "
          "part's end") {
    Setup setup = plain_setup({{"Diagonal", PrismDiagonal{}, {}}});
    const Train before = built(setup);
    the<PrismDiagonal>(setup).stated_light_path = Millimetres{41};
    const Train after = built(setup);
    const LightPath& path = after.light_paths[0];
    CHECK(path.counted() == 41);
    CHECK(near(path.derived_left, before.light_paths[0].derived_left, rounding));
    const double extra = 41 - path.derived_left;
    for (const Eye eye : both_eyes) {
        const Point moved = after.path(eye).world_from_field_stop.origin
                            - before.path(eye).world_from_field_stop.origin;
        CHECK(glm::distance(moved, {0, extra, 0}) < rounding);  // the diagonal looks up
    }
}

TEST_CASE(
    "a stated light path of the head is one air space for both arms: unequal arms stay unequal") {
    Setup setup = plain_setup();
    the<SplitterHead>(setup).compensator = Millimetres{20};
    the<SplitterHead>(setup).seat_travel = Millimetres{0};  // which would take up some of it
    const auto difference = [](const Train& train) {
        double left = 0;
        double right = 0;
        for (const AxialStep& step : train.path(Eye::left).steps)
            left += step.reduced();
        for (const AxialStep& step : train.path(Eye::right).steps)
            right += step.reduced();
        return left - right;
    };
    const double derived = difference(built(setup));
    CHECK(near(derived, -17 / index_at_e("N-BAK4"), rounding));
    the<SplitterHead>(setup).stated_light_path = Millimetres{112};
    CHECK(near(difference(built(setup)), derived, rounding));
}

TEST_CASE("each seat takes half of the difference between the eyes, the drawtube their mean") {
    Setup setup = plain_setup();
    auto& observer = the<Observer>(setup);
    observer.left = prescribed(-3);
    observer.right = prescribed(1);
    const Train train = built(setup);
    const double travel =
        0.625;  // f = 25: f^2 / 1000 (Smith, Modern Optical Engineering, 4th ed., p. 290)
    CHECK(near(train.focus_offset, (3 * travel - 1 * travel) / 2, rounding));
    // The short-sighted eye wants the image behind the eyepiece's own focus: its eyepiece moves inward.
    CHECK(near(train.path(Eye::left).seat_shift, -2 * travel, rounding));
    CHECK(near(train.path(Eye::right).seat_shift, 2 * travel, rounding));
    CHECK(near(train.path(Eye::left).wanted_image, 3 * travel, rounding));
    CHECK(near(train.path(Eye::right).wanted_image, -1 * travel, rounding));
    the<SplitterHead>(setup).seat_travel = Millimetres{1};
    const Train limited = built(setup);
    CHECK(limited.path(Eye::left).seat_shift == -1);
    CHECK(near(limited.path(Eye::left).seat_shift_wanted, -2 * travel, rounding));
}

TEST_CASE("the exit pupils stand the observer's pupil distance apart") {
    Setup setup = plain_setup({{"Diagonal", MirrorDiagonal{}, {}}});
    for (const double distance : {55.0, 63.0, 70.0}) {
        the<Observer>(setup).pupil_distance = Millimetres{distance};
        const Train train = built(setup);
        const Point left = train.path(Eye::left).world_from_field_stop.origin;
        const Point right = train.path(Eye::right).world_from_field_stop.origin;
        CHECK(near(right.x - left.x, distance, rounding));  // the left eye at -x
        CHECK(glm::distance(left, right) < distance + rounding);
    }
}

TEST_CASE("a lens finds the image it works on where the parts before it leave it") {
    // Back focus 120, drawtube 10, ring 30, lens 5 behind it: the image lies 75 mm behind the lens.
    const Setup setup =
        plain_setup({{"Ring", Spacer{Millimetres{30}, Millimetres{42}}, {}}, bare_lens(-100, 5)});
    const Train train = built(setup, 10);
    for (const EyePath& path : train.paths)
        CHECK(near(surface(path, "shifter lens").object_distance, 75, rounding));
}

TEST_CASE("glass before a lens brings its image nearer by the glass over its index only") {
    const Setup setup = plain_setup({{"Diagonal", PrismDiagonal{}, {}}, bare_lens(-100, 5)});
    const Train train = built(setup);
    const double diagonal = 22 + 22 - 25 + 25 / index_at_e("N-BAK4");
    for (const EyePath& path : train.paths) {
        CHECK(near(surface(path, "shifter lens").object_distance, 120 - diagonal - 5, rounding));
    }
}

TEST_CASE("glass faces know the index on both sides at each traced wavelength") {
    const Train train = built(plain_setup({{"Diagonal", PrismDiagonal{}, {}}}));
    const auto bak4 = standard_catalogue().find("N-BAK4").value();
    const PlacedSurface entry = surface(train.path(Eye::left), "prism entry face");
    const PlacedSurface exit = surface(train.path(Eye::left), "prism exit face");
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        CHECK(entry.index_before[w] == 1);
        CHECK(entry.index_after[w] == refractive_index(bak4, traced_wavelengths[w]).value());
        CHECK(exit.index_before[w] == entry.index_after[w]);
        CHECK(exit.index_after[w] == 1);
    }
}

TEST_CASE("what cannot be a train is refused with a reason") {
    Setup close = plain_setup();
    the<Target>(close).distance = Metres{0.9};
    CHECK(refusal(close).find("nearer than twice") != std::string::npos);
    Setup headless = plain_setup();
    headless.parts.erase(headless.parts.begin() + 2);
    CHECK(refusal(with_valid_choice(headless)) == "the setup has no splitter head");
    Setup unknown = plain_setup({{"Diagonal", PrismDiagonal{}, {}}});
    the<PrismDiagonal>(unknown).glass = "N-BAK5";
    const auto train = build_train(unknown, unknown.chosen, Millimetres{0});
    REQUIRE_FALSE(train.has_value());
    CHECK(train.error().what.find("did you mean 'N-BAK4'?") != std::string::npos);
}

TEST_CASE("parts ahead of the split are placed once, those behind it once for each eye") {
    const Train train = built(plain_setup({{"Ring", Spacer{}, {}}}));
    const auto count = [&](std::size_t part) {
        return std::ranges::count(train.placed, part, &PlacedPart::part);
    };
    CHECK(count(0) == 1);
    CHECK(count(1) == 1);
    CHECK(count(2) == 1);
    CHECK(count(3) == 2);
    CHECK(count(4) == 2);
    CHECK(count(5) == 0);
}
