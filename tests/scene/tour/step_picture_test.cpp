#include <algorithm>
#include <cstdlib>

#include "scene/sample_setups.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/step_picture.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

StepPicture shown_by(std::set<TourShow> show, const Setup& setup) {
    TourStep step{StandardView::rear, "", ""};
    step.show = std::move(show);
    return step_picture(step, setup, report_of(setup), {});
}

bool has_role(const Frame& frame, ColourRole role) {
    return std::any_of(frame.light.begin(), frame.light.end(),
                       [&](const LightRibbon& ribbon) { return ribbon.role == role; });
}

}  // namespace

TEST_CASE("a step that asks for nothing of its own leaves the picture to the setup") {
    CHECK_FALSE(shown_by({TourShow::motion, TourShow::fields}, short_setup()).frame);
    CHECK(shown_by({}, short_setup()).sight == nullptr);
}

TEST_CASE("as much of the painted objective is lost as the edge of the field lacks") {
    const Setup setup = clipping_setup();
    const Report report = report_of(setup);
    const auto shown = shown_by({TourShow::stars}, setup);
    REQUIRE(shown.frame);
    REQUIRE(shown.frame->discs.size() == 1);
    const ImageDisc& disc = shown.frame->discs.front();
    // Only within the objective: the corners of the square lie outside it.
    double arrives = 0;
    double lost = 0;
    for (int row = 0; row < disc.size; ++row) {
        for (int column = 0; column < disc.size; ++column) {
            const glm::dvec2 at{(column + 0.5) / disc.size * 2 - 1,
                                (row + 0.5) / disc.size * 2 - 1};
            if (glm::length(at) > 1) continue;
            const auto pixel = static_cast<std::size_t>(row * disc.size + column);
            arrives += disc.light[pixel];
            lost += disc.lost[pixel];
        }
    }
    // One direction of fifteen stands for their mean; 96 pixels across and 1024 rays a point: 0.03 in all.
    CHECK(near(arrives / (arrives + lost), darker_at_edge(report).edge_relative, 0.03));
}

TEST_CASE("two stars alone are drawn in two hues, and what is lost of them in a third") {
    const auto shown = shown_by({TourShow::stars}, clipping_setup());
    REQUIRE(shown.frame);
    CHECK(has_role(*shown.frame, ColourRole::undivided_beam));
    CHECK(has_role(*shown.frame, ColourRole::edge_star));
    CHECK(has_role(*shown.frame, ColourRole::clipped));
    CHECK_FALSE(has_role(*shown.frame, ColourRole::left_arm));
}

TEST_CASE("the Moon is blurred at a step out of focus and sharp with its cure") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const auto tours = built_in_tours(setup, report);
    const auto found = find_tour(tours, "why-it-will-not-focus");
    REQUIRE(found);
    std::vector<int> steepest;  // of one picture's grey, between neighbours in a row
    for (const TourStep& step : (*found)->steps) {
        if (!step.show.contains(TourShow::sight)) continue;
        const auto shown = step_picture(step, setup, report, {});
        REQUIRE(shown.sight);
        const SightImage& image = *shown.sight;
        CHECK(image.width == 2 * image.height);
        int most = 0;
        for (std::size_t i = 4; i < image.rgba.size(); i += 4)
            most = std::max(most, std::abs(image.rgba[i] - image.rgba[i - 4]));
        steepest.push_back(most);
    }
    REQUIRE(steepest.size() >= 2);
    CHECK(steepest.back() > steepest.front());
}

TEST_CASE("what was before is a ghost beside what has become of it") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const auto tours = built_in_tours(setup, report);
    const auto found = find_tour(tours, "what-a-shifter-does");
    REQUIRE(found);
    int ghosts = 0;
    for (const TourStep& step : (*found)->steps) {
        const auto shown = step_picture(step, setup, report, {});
        REQUIRE(shown.frame);
        const bool has_ghost = step.instead && step.instead->ghost;
        CHECK(has_role(*shown.frame, ColourRole::ghost) == has_ghost);
        ghosts += has_ghost ? 1 : 0;
    }
    CHECK(ghosts == 1);
}
