#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/erecting_diagonal.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/splitter_head.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/sample_setups.hpp"
#include "scene/unfolded_path/unfolded_path_rows.hpp"
#include "scene/unfolded_path/unfolded_path_view.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

const LightBand& whole_band(const LightCone& cone) {
    REQUIRE(cone.bands.size() == 1);
    REQUIRE(cone.bands.front().fate == RayFate::reached);
    return cone.bands.front();
}

double width_at(const LightBand& band, double place) {
    for (std::size_t i = 1; i < band.places.size(); ++i) {
        const BandPlace& a = band.places[i - 1];
        const BandPlace& b = band.places[i];
        if (b.at < place || b.at == a.at) continue;
        const double t = (place - a.at) / (b.at - a.at);
        return std::abs(glm::mix(a.a - a.b, b.a - b.b, t));
    }
    return 0;
}

// Every kind of fold in the chain: one that is turned aside, and roof prisms.
std::vector<Setup> folded_setups() {
    using namespace test_setups;
    PrismDiagonal turned;
    turned.turned = Degrees{25};
    std::vector<Setup> all{short_setup(),
                           cured_setup(),
                           clipping_setup(),
                           plain_setup({{"Diagonal", turned, {}}}),
                           plain_setup({{"Roof", ErectingDiagonal90{}, {}}}),
                           plain_setup({{"Roof", ErectingDiagonal45{}, {}}})};
    Setup newtonian = plain_setup();
    newtonian.parts[0].body = Newtonian{};
    Setup cassegrain = plain_setup();
    cassegrain.parts[0].body = CassegrainMovingMirror{};
    all.push_back(newtonian);
    all.push_back(cassegrain);
    return all;
}

}  // namespace

TEST_CASE("unfolding keeps the axis straight: every surface that is met on it stands at its place "
          "along it") {
    for (const Setup& setup : folded_setups()) {
        CAPTURE(setup.parts[2].name);
        const Report report = report_of(setup, 16);
        for (const Eye eye : both_eyes) {
            const EyePath& path = report.train.path(eye);
            const UnfoldedAxis axis(path);
            for (std::size_t i = 0; i < path.surfaces.size(); ++i) {
                CAPTURE(path.surfaces[i].name);
                const Point at = axis.before[i].point(path.surfaces[i].world_from_surface.origin);
                // Rounding of a folded axis of 3 m.
                CHECK(near(at.z, path.surfaces[i].axis_position, 1e-9));
                if (path.surfaces[i].kind == SurfaceKind::obstruction) continue;  // beside the axis
                CHECK(near(glm::length(glm::dvec2(at)), 0, 1e-9));
            }
        }
    }
}

TEST_CASE(
    "a traced ray is straight in the unfolded picture wherever it runs in air, whatever folds "
    "it") {
    // A mirror diagonal and no glass before the head: from the objective to the cube one straight line.
    Setup setup = test_setups::wide_setup({{"Diagonal", MirrorDiagonal{}, {}}});
    auto& diagonal = test_setups::the<MirrorDiagonal>(setup);
    diagonal.turned = Degrees{33};
    diagonal.clear_diameter = {120};
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    for (const EyeTrack& track : rows.eyes) {
        const LightBand& band = whole_band(track.cones.front());
        const BandPlace& first = band.places.front();
        const auto cube = track.glass.front().from;
        const auto at_cube = std::find_if(band.places.begin(), band.places.end(),
                                          [&](const BandPlace& p) { return p.at > cube - 1e-9; });
        REQUIRE(at_cube != band.places.end());
        for (auto place = band.places.begin(); place != at_cube; ++place) {
            const double t = (place->at - first.at) / (at_cube->at - first.at);
            CHECK(near(place->a, glm::mix(first.a, at_cube->a, t), 1e-9));
        }
    }
}

TEST_CASE("the reduced lengths of the chain make up what the budget takes from the back focus") {
    // Worked budget of the trade (common practice, no source): 116 - 1 - 35 - 110 = -30.
    Setup setup = short_setup();
    setup.parts[3].body.get<PrismDiagonal>().stated_light_path = Millimetres{35};
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{110};
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    double sum = 0;
    for (const PathStretch& stretch : rows.stretches)
        sum += stretch.reduced;
    CHECK(near(sum, 146, 1e-9));
    CHECK(rows.stretches[0].value == "+116.0 mm");
    CHECK(rows.stretches[3].value == "−35.0 mm");
    CHECK(rows.stretches[4].value == "−110.0 mm");
    for (const EyeTrack& track : rows.eyes) {
        CHECK(near(track.focus.gap, 30, 1e-9));
        CHECK(track.focus.text == "focus 30.0 mm short");
        // 110 mm less 12 mm of air between the glass and 87 mm of N-BAK4: of what is left, 30/44 lie behind it;
        // the rest of the 30 mm lies in glass and is as much longer as its index.
        const double n = 1.571249;  // tests/reference/glass_indices.hpp
        const double air = (110 - 12 - 87 / n) * 30 / 44;
        CHECK(near(track.focus.wanted - track.focus.real, air + (30 - air) * n, 1e-4));
        CHECK(near(track.focus.wanted, track.stop, 1e-9));
    }
}

TEST_CASE("each block of glass counts as its length over its index, and both arms hold twice the "
          "prism width plus the arm's offset") {
    const Setup setup = short_setup();
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    for (const EyeTrack& track : rows.eyes) {
        double head = 0;
        for (const GlassBlock& block : track.glass) {
            // N-BAK4 at the e line to its last printed digit (tests/reference/glass_indices.hpp).
            CHECK(near(block.reduced, block.length / 1.571249, 1e-6 * block.length));
            CHECK(near(block.to - block.from, block.length, 1e-9));
            if (setup.parts[block.part].name == "Splitter head") {
                head += block.length;
                // Half the prism width; the cube lies square to the left arm, so that the right arm's plane, twice
                // the hinge's drop away, cuts it aslant. cos(drop) = 63 / (2 x 37).
                const bool is_cube = &block == &track.glass[1];
                const double turn = 2 * std::acos(63.0 / 74.0);
                const bool aslant = is_cube && track.eye == Eye::right;
                CHECK(near(block.above, aslant ? 12.5 / std::sin(turn) : 12.5, 1e-9));
                CHECK(near(block.below, -block.above, 1e-9));
            }
        }
        CHECK(near(head, 2 * 25 + 37, 1e-9));  // parts/splitter_head.hpp: 2 A + h
    }
}

TEST_CASE(
    "an image that falls before the field stop lights a disc as wide as its distance over the "
    "f-number") {
    Setup setup = test_setups::wide_setup();
    for (const double held : {20.0, 60.0, 90.0}) {
        test_setups::the<Focuser>(setup).held_at = Millimetres{held};
        const Report report = report_of(setup, 16);
        const UnfoldedPathRows rows = unfolded_path_rows(setup, report);
        const double N = 7;  // 700 mm over 100 mm
        for (const EyeTrack& track : rows.eyes) {
            const double width = width_at(whole_band(track.cones.front()), track.stop);
            // The glass moves the marginal focus of f/7 light by some 0.3 mm more than the paraxial one, and the
            // cone's edge is a sine, not a tangent: 0.26 %.
            CHECK(near(width, std::abs(track.focus.gap) / N, 0.1 + 0.003 * width));
        }
    }
}

TEST_CASE("jaws that bite are those that the clipping study names, and no others") {
    for (const Setup& setup : {clipping_setup(), short_setup()}) {
        const Report report = report_of(setup, 512);
        const UnfoldedPathRows rows = unfolded_path_rows(setup, report);
        std::size_t biting = 0;
        for (const EyeTrack& track : rows.eyes) {
            for (const Jaw& jaw : track.jaws) {
                double most = 0;
                for (const LitRing& ring : report.clipping_of(track.eye).rings) {
                    double here = 0;
                    for (const EndShare& end : ring.ends) {
                        if (end_name(setup, report.train.path(track.eye), end) == jaw.name)
                            here += end.share;
                    }
                    most = std::max(most, here);
                }
                CAPTURE(jaw.name);
                CHECK(jaw.bites() == (most >= 0.02));
                biting += jaw.bites() ? 1 : 0;
            }
        }
        CHECK(biting > 0);
        const auto worst = worst_jaws(rows, both_eyes, 2);
        CHECK(worst.front().jaw.loss.share >= worst.back().jaw.loss.share);
    }
}

TEST_CASE("a ray that is clipped ends on the edge of the jaw that clips it") {
    const Setup setup = clipping_setup();
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 64));
    std::size_t ended = 0;
    for (const EyeTrack& track : rows.eyes) {
        for (const LightCone& cone : track.cones) {
            for (const LightBand& band : cone.bands) {
                if (band.fate != RayFate::clipped) continue;
                const auto jaw =
                    std::find_if(track.jaws.begin(), track.jaws.end(),
                                 [&](const Jaw& each) { return each.surface == band.surface; });
                REQUIRE(jaw != track.jaws.end());
                const BandPlace& end = band.places.back();
                const double inner = std::min(std::abs(end.a), std::abs(end.b));
                // The border is found to a ten-thousandth of 130 mm; a leaning fold cuts its two rays apart.
                const double slack = jaw->kind == JawKind::fold ? 1.5 : 0.02;
                CHECK(inner >= std::min(jaw->above.y, -jaw->below.y) - slack);
                ++ended;
            }
        }
    }
    CHECK(ended > 0);
}

TEST_CASE("the light that arrives in the section is what is left after its bands have ended") {
    for (const Setup& setup : folded_setups()) {
        const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
        for (const EyeTrack& track : rows.eyes) {
            REQUIRE(track.cones.size() == 3);
            CHECK(track.cones[0].field == 0);
            // The darker edge of the field comes first.
            CHECK(track.cones[1].arriving() <= track.cones[2].arriving() + 2e-3);
            for (const LightCone& cone : track.cones) {
                double width = 0;
                for (const LightBand& band : cone.bands)
                    width += band.width;
                CHECK(width <= 1 + 1e-9);
                CHECK(cone.arriving() <= width + 1e-12);
            }
        }
    }
}

TEST_CASE("openings are cut in the plane in which the arm folds: squares at their flats, a leaning "
          "fold at its slope") {
    const Setup setup = short_setup();
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    const EyeTrack& left = rows.eyes.front();
    const auto jaw_named = [&](const std::string& name) {
        const auto found = std::find_if(left.jaws.begin(), left.jaws.end(), [&](const Jaw& jaw) {
            return jaw.name == "Splitter head: " + name;
        });
        REQUIRE(found != left.jaws.end());
        return *found;
    };
    const Jaw collar = jaw_named("entry collar");
    CHECK(near(collar.above.y, 12.5, 1e-9));
    CHECK(near(collar.below.y, -12.5, 1e-9));
    CHECK(collar.kind == JawKind::opening);
    const Jaw fold = jaw_named("cube interface");
    CHECK(fold.kind == JawKind::fold);
    CHECK(near(std::abs(fold.above.x - fold.below.x), 25,
               1e-9));  // 45 degrees through a cube of 25 mm
    CHECK(near(fold.above.y - fold.below.y, 25, 1e-9));
}

TEST_CASE(
    "a grip moves its length by halves of a millimetre and stays within what the part accepts") {
    const Setup setup = cured_setup();
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    REQUIRE(rows.grips.size() == 3);  // drawtube, adapter, shifter
    const Grip& adapter = rows.grips[1];
    CHECK(adapter.key == "length_mm");
    CHECK(adapter.value == 1);
    CHECK(near(adapter.at - adapter.anchor, 1, 1e-12));
    CHECK(moved_value(adapter, 3.3, Steps::halves) == 4.5);
    CHECK(near(moved_value(adapter, 3.32, Steps::fine), 4.3, 1e-12));
    CHECK(moved_value(adapter, -40, Steps::halves) == 0);
    const Grip& drawtube = rows.grips[0];
    CHECK(drawtube.key == "held_at_mm");
    CHECK(moved_value(drawtube, 1000, Steps::halves) == 80);  // no farther than the travel
    CHECK(rows.grips[2].key == "lens_offset_mm");
    CHECK(near(rows.drawtube.racked_out - rows.drawtube.racked_in, 80, 1e-9));
}

TEST_CASE("the first look shows everything, heights never less than half to scale") {
    const Setup setup = short_setup();
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report_of(setup, 16));
    for (const auto& [width, height] : {std::pair{900.0, 150.0}, {230.0, 120.0}, {1600.0, 150.0}}) {
        const UnfoldedView view = fit_view(rows, width, height);
        CHECK(view.x_of(rows.fit_to) <= width + 1e-9);
        CHECK(view.x_of(rows.fit_from) >= -1e-9);
        CHECK(view.y_of(-rows.fit_height) <= height / 2 + 1e-9);
        CHECK(view.across >= 0.5);
    }
}

TEST_CASE("zooming keeps the place under the pointer, panning carries it along") {
    const UnfoldedView view{400, 2.5, 3, 1};
    const UnfoldedView nearer = zoomed(view, 1.7, 333, -21);
    CHECK(near(nearer.place_at(333), view.place_at(333), 1e-9));
    CHECK(near(nearer.height_at(-21), view.height_at(-21), 1e-9));
    CHECK(near(nearer.px_per_mm, 2.5 * 1.7, 1e-12));
    const UnfoldedView moved = panned(view, 40, 15);
    CHECK(near(moved.x_of(view.place_at(100)), 140, 1e-9));
    CHECK(near(moved.y_of(view.height_at(7)), 22, 1e-9));
    CHECK(tick_step(view, 60) == 50);  // 24 mm at least: 50 of the 1-2-5 row
    CHECK(tick_step({0, 60, 1, 0}, 60) == 1);
}

TEST_CASE("words in a lane stay in order, apart from each other and inside the room") {
    const std::vector<LaneWord> words{{10, 40}, {30, 40}, {35, 40}, {200, 40}, {298, 40}};
    const auto places = lane_places(words, 300, 4);
    REQUIRE(places.size() == words.size());
    CHECK(places.front() >= 0);
    CHECK(places.back() + 40 <= 300 + 1e-9);
    for (std::size_t i = 1; i < places.size(); ++i)
        CHECK(places[i] >= places[i - 1] + 44 - 1e-9);
    CHECK(near(places[3], 180, 1e-9));  // nothing in its way: centred
}
