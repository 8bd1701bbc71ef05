#include <algorithm>
#include <cmath>

#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "study/light/brightness.hpp"
#include "study/ways_to_focus/way_light.hpp"
#include "study/ways_to_focus/ways_to_focus.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// A twentieth of a percent of the aperture's light is one ray of 2048; a cut edge runs past some tens of them.
constexpr ClippingEffort many_rays{2048};
constexpr double sampled = 0.005;

WayToFocus the_way(const Setup& setup, const std::string& id) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const auto ways = ways_to_focus(setup, setup.chosen, *budget, many_rays);
    const auto found =
        std::find_if(ways.begin(), ways.end(), [&](const WayToFocus& way) { return way.id == id; });
    REQUIRE(found != ways.end());
    return *found;
}

// A refractor too short for what hangs behind it; nothing clips.
Setup short_of_focus(double back_focus, const std::vector<Part>& chain = {}) {
    Setup setup = wide_setup(chain);
    the<Refractor>(setup).back_focus = {back_focus};
    return setup;
}

Setup short_newtonian() {
    Setup setup = wide_setup();
    Newtonian telescope;
    telescope.focal_length = {2000};  // so long that a mirror may be moved by all that is short
    telescope.secondary_minor_axis = {
        26};  // more than its cone is wide where it stands, 200 * 190 / 2000
    setup.parts.front().body = telescope;
    the<Focuser>(setup).drawtube_length = {20};
    return setup;
}

Part wide_mirror() {
    MirrorDiagonal diagonal;
    diagonal.clear_diameter = {80};
    diagonal.coating = MirrorCoating::aluminium;  // 0.88, glass/coating.hpp
    return {"Diagonal", diagonal, {}, {}};
}

double gained(const std::optional<double>& lost) { return -lost.value_or(1e9); }

}  // namespace

TEST_CASE("a main mirror moved up loses the light that its wider cone puts past the secondary") {
    const WayToFocus way = the_way(short_newtonian(), "primary_moved_up");
    Setup after = way.setup;
    const auto& telescope = the<Newtonian>(after);
    const double aperture = telescope.aperture.value;
    const double s = telescope.secondary_to_focus().value;
    // Similar triangles from the rim, which stands higher than the vertex.
    const double cone =
        aperture * s / (telescope.focal_length.value - telescope.rim_height().value);
    const double held = telescope.secondary_minor_axis.value / cone;
    REQUIRE(held < 0.95);
    const double hidden = telescope.obstruction().value / aperture;
    // Of the ring outside the secondary's shadow; seen along the cone the flat is a circle but for its tilt.
    const double kept = (held * held - hidden * hidden) / (1 - hidden * hidden);
    CHECK(near(way.light.working_aperture, aperture * std::sqrt(kept), 0.01 * aperture));
    CHECK(near(way.light_before.working_aperture, aperture, rounding));
    CHECK(near(way.light.into_eye / way.light_before.into_eye, kept, 0.02));
}

TEST_CASE("a lower focuser and a thinner adapter take no light on axis where nothing clips it") {
    Spacer adapter;
    adapter.length = {20};
    adapter.clear_diameter = {80};
    for (const auto& [setup, id] :
         {std::pair{short_of_focus(100, {{"Adapter", adapter, {}, {}}}), "low_profile_adapter"},
          std::pair{short_newtonian(), "low_profile_focuser"}}) {
        const WayToFocus way = the_way(setup, id);
        CHECK(near(way.light.working_aperture, way.light_before.working_aperture, rounding));
        CHECK(near(way.light.into_eye, way.light_before.into_eye, rounding));
        CHECK(near(way.light.surface, way.light_before.surface, rounding));
        CHECK(way.light.into_eye > 0.2);
    }
}

TEST_CASE("a shifter dims areas by the square of its factor and by its two faces, stars by those") {
    for (const std::string id : {"shifter_in_nose", "shifter_before_diagonal"}) {
        CAPTURE(id);
        const WayToFocus way = the_way(short_of_focus(170, {wide_mirror()}), id);
        const double M = way.magnification_ratio;
        CHECK(M > 1.05);
        const double faces = 0.995 * 0.995;  // multi-layer, glass/coating.hpp
        CHECK(near(way.light.into_eye / way.light_before.into_eye, faces, 1e-9));
        // The exit pupil shrinks by M; conservation of radiance (Smith, sec. 13.1).
        CHECK(near(way.light.surface / way.light_before.surface, faces / (M * M), 1e-9));
        CHECK(near(way.light.working_aperture, 100, rounding));
    }
}

TEST_CASE("a shifter of 26 mm in front of the diagonal stops a fast beam that is wider there") {
    Setup setup = short_of_focus(170, {wide_mirror()});
    the<Refractor>(setup).focal_length = {400};
    the<Observer>(setup).eye_pupil = {8};  // takes in all of the exit pupil
    const WayToFocus way = the_way(setup, "shifter_before_diagonal");
    const auto budget = focus_budget(way.setup, way.setup.chosen);
    REQUIRE(budget.has_value());
    // The telescope's own image lies d / M behind the lens; the sine condition gives the height at the objective.
    const double behind = budget->shifters.at(0).image_distance.value / way.magnification_ratio;
    const double working = 2 * 400 * std::sin(std::atan2(13, behind));
    REQUIRE(working < 95);
    CHECK(near(way.light.working_aperture, working, sampled * 100));
    CHECK(near(gained(magnitudes_lost(way.light_before.into_eye, way.light.into_eye)),
               5 * std::log10(working / 100) + 2.5 * std::log10(0.995 * 0.995),
               2.5 / std::log(10) * 2 * sampled * 100 / working));
}

TEST_CASE(
    "a prism in place of an aluminised mirror gains what the mirror keeps and loses two faces") {
    Setup setup = short_of_focus(170, {wide_mirror()});
    the<Refractor>(setup).focal_length = {1000};
    const WayToFocus way = the_way(setup, "shorter_diagonal");
    // Protected aluminium throws back 0.88 and a multi-layer passes 0.995 (glass/coating.hpp); at f/10 the 24 mm
    // openings take the whole beam on axis, and total reflection in the prism all of it.
    CHECK(near(way.light.working_aperture, 100, rounding));
    CHECK(near(way.light.into_eye / way.light_before.into_eye, 0.995 * 0.995 / 0.88, 1e-9));
    CHECK(way.light.edge <= way.light_before.edge);
}

TEST_CASE("without the diagonal its mirror takes no light") {
    const WayToFocus way = the_way(short_of_focus(170, {wide_mirror()}), "straight_through");
    CHECK(near(way.light.into_eye / way.light_before.into_eye, 1 / 0.88, 1e-9));
}

TEST_CASE("magnitudes are 2.5 times the logarithm of the ratio, and none where it is dark") {
    CHECK(near(magnitudes_lost(1, 0.5).value_or(0), 0.752575, 1e-6));  // 2.5 log10 2
    CHECK(near(magnitudes_lost(0.5, 1).value_or(0), -0.752575, 1e-6));
    CHECK_FALSE(magnitudes_lost(0, 1));
    CHECK_FALSE(magnitudes_lost(1, 0));
}
