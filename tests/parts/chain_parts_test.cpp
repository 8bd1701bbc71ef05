// Layout of the parts between focuser and head, against their own dimensions.
#include <numbers>

#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double fine_rounding = 1e-12;

bool is_same(const Pose& a, const Pose& b) {
    double apart = glm::distance(a.origin, b.origin);
    for (int i = 0; i < 3; ++i)
        apart += glm::distance(a.axes[i], b.axes[i]);
    return apart < fine_rounding * 100;
}

}  // namespace

TEST_CASE("a spacer is as long as it is, open at both ends") {
    const Spacer spacer{Millimetres{12}, Millimetres{38}};
    const PartLayout layout = spacer.layout({});
    CHECK(layout.part_from_exit == translation(0, 0, 12));
    REQUIRE(layout.surfaces.size() == 2);
    for (const Surface& surface : layout.surfaces)
        CHECK(inner_radius(surface.aperture) == 19);
    CHECK(layout.surfaces[1].part_from_surface == layout.part_from_exit);
}

TEST_CASE("a filter's plate stands in the middle of its ring") {
    FilterPlate filter;
    filter.thickness = Millimetres{2};
    filter.ring_length = Millimetres{6};
    const PartLayout layout = filter.layout({});
    REQUIRE(layout.surfaces.size() == 2);
    CHECK(layout.surfaces[0].part_from_surface == translation(0, 0, 2));
    CHECK(layout.surfaces[1].part_from_surface == translation(0, 0, 4));
    CHECK(layout.surfaces[0].medium_after == filter.glass);
    CHECK(layout.surfaces[1].medium_after.empty());
    CHECK(layout.part_from_exit == translation(0, 0, 6));
}

TEST_CASE("the drawtube carries its rear face out by its extension and its front end with it") {
    const Focuser focuser;
    LayoutContext context;
    context.drawtube = Millimetres{30};
    const PartLayout layout = focuser.layout(context);
    CHECK(layout.part_from_exit == translation(0, 0, 30));
    CHECK(layout.surfaces.at(0).part_from_surface
          == translation(0, 0, 30 - focuser.drawtube_length.value));
    CHECK(layout.surfaces.at(1).part_from_surface == translation(0, 0, 30));
}

TEST_CASE("a refractor's rear face stands its back focus short of the image of a star") {
    Refractor telescope;
    telescope.baffle_diameter = Millimetres{40};
    const PartLayout layout = telescope.layout({});
    CHECK(layout.part_from_exit == translation(0, 0, 480 - 120));
    REQUIRE(layout.surfaces.size() == 2);
    CHECK(layout.surfaces[0].kind == SurfaceKind::objective);
    CHECK(inner_radius(layout.surfaces[0].aperture) == 40);
    CHECK(layout.surfaces[1].part_from_surface == translation(0, 0, 300));
    CHECK(inner_radius(layout.surfaces[1].aperture) == 20);
}

TEST_CASE("a diagonal turns light by a right angle: straight up when it is not turned, aside when "
          "it is") {
    const auto mirror_exit = [](double turned) {
        MirrorDiagonal diagonal;
        diagonal.turned = Degrees{turned};
        return diagonal.layout({}).part_from_exit;
    };
    CHECK(mirror_exit(0).z() == Direction{0, 1, 0});
    CHECK(mirror_exit(0).y() == Direction{0, 0, -1});
    CHECK(mirror_exit(0).x() == Direction{1, 0, 0});
    CHECK(mirror_exit(0).origin == Point{0, 40, 45});
    CHECK(mirror_exit(90).z() == Direction{-1, 0, 0});  // leans to the observer's left
    CHECK(mirror_exit(-90).z() == Direction{1, 0, 0});
    const double half = std::sqrt(0.5);
    CHECK(glm::distance(mirror_exit(45).z(), {-half, half, 0}) < fine_rounding);
}

TEST_CASE("a prism diagonal ends where a mirror diagonal of the same legs ends") {
    for (const double turned : {0.0, 30.0, -135.0}) {
        PrismDiagonal prism;
        prism.entry_leg = Millimetres{20};
        prism.exit_leg = Millimetres{26};
        prism.turned = Degrees{turned};
        MirrorDiagonal mirror;
        mirror.entry_leg = prism.entry_leg;
        mirror.exit_leg = prism.exit_leg;
        mirror.turned = prism.turned;
        CHECK(is_same(prism.layout({}).part_from_exit, mirror.layout({}).part_from_exit));
    }
}

TEST_CASE("the mirror of a diagonal is as wide as its opening and long enough for 45 degrees") {
    const MirrorDiagonal diagonal;
    const Surface mirror = diagonal.layout({}).surfaces.at(1);
    CHECK(mirror.kind == SurfaceKind::mirror);
    CHECK(contains(mirror.aperture, {20, 20 * std::numbers::sqrt2 - 1e-9}));
    CHECK_FALSE(contains(mirror.aperture, {20.001, 0}));
    CHECK_FALSE(contains(mirror.aperture, {0, 20 * std::numbers::sqrt2 + 1e-9}));
}
