// The train pulled apart: every part stands alone, on the axis, and nothing untrue is drawn.
#include <limits>

#include "scene/kit/colours.hpp"
#include "scene/picture/picking.hpp"
#include "scene/picture/pulled_apart.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double float_mm = 2e-3;  // places are floats near 1 m

struct Stretch {
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
};

// Of all that is seen of a part, along a direction.
Stretch stretch_of(const Frame& frame, std::size_t part, const Direction& along) {
    Stretch stretch;
    for (const Mesh& mesh : frame.meshes) {
        if (mesh.part != static_cast<int>(part)) continue;
        for (const MeshVertex& vertex : mesh.vertices) {
            const double at = glm::dot(Point(vertex.position), along);
            stretch.low = std::min(stretch.low, at);
            stretch.high = std::max(stretch.high, at);
        }
    }
    return stretch;
}

const Label& name_of_part(const Frame& frame, std::size_t part) {
    for (const Label& label : frame.labels) {
        if (label.role == LabelRole::part && label.part == static_cast<int>(part)) return label;
    }
    throw std::logic_error("no name");
}

std::size_t index_of_head(const Setup& setup) {
    return parts_with_role(setup, Role::splitter).front();
}

}  // namespace

TEST_CASE("pulled apart by nothing, it is the picture itself") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    CHECK(pulled_apart(setup, report, 0).revision == build_frame(setup, report).revision);
}

TEST_CASE(
    "pulled apart, neighbours have the room between them that a plane square to the axis fits "
    "into") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Report report = report_of(setup);
        const Frame frame = pulled_apart(setup, report, 1);
        int joints = 0;
        const auto& placed = report.train.placed;
        for (std::size_t i = 0; i + 1 < placed.size(); ++i) {
            if (placed[i].eye != Eye::left || placed[i + 1].eye != Eye::left) continue;
            const Direction along = placed[i].world_from_exit.z();
            const double gap = stretch_of(frame, placed[i + 1].part, along).low
                               - stretch_of(frame, placed[i].part, along).high;
            CAPTURE(setup.parts[placed[i].part].name);
            CHECK(gap > 20);
            ++joints;
        }
        CHECK(joints >= 5);
    }
}

TEST_CASE("each part goes along the axis there, its name with it, and the head stays") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const Frame together = build_frame(setup, report);
    const Frame half = pulled_apart(setup, report, 0.5F);
    const Frame whole = pulled_apart(setup, report, 1);
    const std::size_t head = index_of_head(setup);
    CHECK(near(glm::distance(together.part_bounds[head].low, whole.part_bounds[head].low), 0,
               float_mm));
    const std::vector<Direction> places = pulled_places(setup, report.train);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const PlacedPart& placed = report.train.placed[i];
        if (placed.eye == Eye::right) continue;
        const glm::vec3 before = name_of_part(together, placed.part).at;
        const glm::vec3 half_way = name_of_part(half, placed.part).at - before;
        const glm::vec3 all_the_way = name_of_part(whole, placed.part).at - before;
        CHECK(near(glm::distance(Point(all_the_way), places[i]), 0, float_mm));
        CHECK(near(glm::distance(2.0F * half_way, all_the_way), 0, 2 * float_mm));
    }
    // A refractor's light runs along +z up to the diagonal: what lies before it moves along z alone, towards the sky.
    CHECK(places[0].z < -100);
    CHECK(near(places[0].x, 0, 1e-9));
}

TEST_CASE("no light, no cross and no focus are drawn of a train that is not together") {
    const Setup setup = clipping_setup();
    const Report report = report_of(setup);
    const Frame frame = pulled_apart(setup, report, 1);
    CHECK(frame.light.empty());
    CHECK_FALSE(frame.arrival.is_known);
    for (const Mark& mark : frame.marks)
        CHECK(mark.shape != MarkShape::cross);
    // On its way the light of the closed train fades.
    const auto sum = [](const Frame& seen) {
        float strength = 0;
        for (const LightRibbon& ribbon : seen.light)
            strength += ribbon.strength;
        return strength;
    };
    const float whole = sum(build_frame(setup, report));
    const float fading = sum(pulled_apart(setup, report, light_fades_until / 2));
    CHECK(near(fading, whole / 2, 0.01 * whole));
}

TEST_CASE("thin dashed lines along the axis join what belongs together") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const auto dashes = [](const Frame& frame) {
        std::vector<Line> found;
        for (const Line& line : frame.lines) {
            if (line.dashed && line.role == ColourRole::dimension) found.push_back(line);
        }
        return found;
    };
    REQUIRE(dashes(build_frame(setup, report)).empty());
    const auto lines = dashes(pulled_apart(setup, report, 1));
    // Telescope, focuser, adapter, diagonal, head: four joints; the head is placed once for each eye, which adds one,
    // and has an eyepiece for each.
    CHECK(lines.size() == 4 + 1 + 2);
    for (const Line& line : lines)
        CHECK(glm::distance(line.from, line.to) > 20);
}

TEST_CASE("a part is picked where it is seen") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const Frame together = build_frame(setup, report);
    const Frame frame = pulled_apart(setup, report, 1);
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    ViewOptions whole;
    whole.shells = ShellView::whole;
    const auto from_above = [](const Bounds& bounds) {
        // Beside the axis, where metal is, near the end that stands toward the sky.
        const glm::vec3 at{0, 500, bounds.low.z + 30};
        return ViewRay{at, {0, -1, 0}};
    };
    const ViewRay ray = from_above(frame.part_bounds[telescope]);
    CHECK(part_at(frame, ray, whole) == static_cast<int>(telescope));
    CHECK_FALSE(part_at(together, ray, whole).has_value());
}

TEST_CASE("parts start and stop gently") {
    CHECK(apart_after(0) == 0);
    CHECK(apart_after(1) == 1);
    CHECK(apart_after(0.5F) == 0.5F);
    CHECK(apart_after(0.05F) < 0.01F);
    CHECK(apart_after(-1) == 0);
    CHECK(apart_after(2) == 1);
}
