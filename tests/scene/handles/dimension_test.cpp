#include "parts/spacer.hpp"
#include "scene/handles/dimension.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::vector<Dimension> dimensions_of(const Setup& setup, std::size_t part) {
    return part_dimensions(setup, report_of(setup, 16), part);
}

const Dimension* dimension_saying(const std::vector<Dimension>& all, const std::string& text) {
    for (const Dimension& one : all) {
        if (one.text == text) return &one;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("a spacer is dimensioned by its own length and its own opening") {
    Setup setup = short_setup();
    auto& spacer = setup.parts[2].body.get<Spacer>();
    spacer.length = {17.5};
    spacer.clear_diameter = {38};
    const auto all = dimensions_of(setup, 2);
    REQUIRE(all.size() == 2);
    CHECK(all[0].text == "17.5 mm");
    CHECK(all[0].kind == DimensionKind::along);
    CHECK(near(glm::distance(all[0].from, all[0].to), 17.5, rounding));
    CHECK(all[1].text == "ø 38.0 mm clear");
    CHECK(all[1].kind == DimensionKind::across);
    CHECK(near(all[1].clear, 19, rounding));
}

TEST_CASE("what is left of the travel on either side adds up to the travel") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup, 16);
    const auto all = part_dimensions(setup, report, 1);
    REQUIRE(all.size() == 3);
    const double inward = glm::distance(all[0].from, all[0].to);
    const double outward = glm::distance(all[1].from, all[1].to);
    CHECK(near(inward, report.budget.margin_in.value, 1e-6));  // in focus: the budget's own margins
    CHECK(near(outward, report.budget.margin_out.value, 1e-6));
    CHECK(near(inward + outward, 80, rounding));  // Focuser's default travel
    CHECK(all[0].text.ends_with(" mm in"));
}

TEST_CASE("a diagonal has two legs that meet on both of its axes") {
    const Setup setup = short_setup();
    const Report report = report_of(setup, 16);
    const auto all = part_dimensions(setup, report, 3);
    REQUIRE(all.size() == 3);
    CHECK(glm::distance(all[0].to, all[1].from) < 1e-9);
    const PlacedPart& placed = report.train.placed[3];
    REQUIRE(placed.part == 3);
    CHECK(glm::distance(all[0].from, placed.world_from_part.origin) < 1e-9);
    CHECK(glm::distance(all[1].to, placed.world_from_exit.origin) < 1e-9);
    // At a right angle: Pythagoras.
    const double a = glm::distance(all[0].from, all[0].to);
    const double b = glm::distance(all[1].from, all[1].to);
    CHECK(near(
        a * a + b * b,
        std::pow(glm::distance(placed.world_from_part.origin, placed.world_from_exit.origin), 2),
        1e-6));
}

TEST_CASE("the head shows the distance between the eyes, the telescope its aperture") {
    const Setup setup = cured_setup();
    CHECK(dimension_saying(dimensions_of(setup, 5), "63.0 mm between the axes") != nullptr);
    const auto of_telescope = dimensions_of(setup, 0);
    const Dimension* aperture = dimension_saying(of_telescope, "ø 100.0 mm aperture");
    REQUIRE(aperture != nullptr);
    CHECK(near(aperture->clear, 50, rounding));
    CHECK(dimension_saying(dimensions_of(setup, 4), "5.0 mm to the lens") != nullptr);
    CHECK(dimensions_of(setup, 7).empty());  // the observer has no body
}
