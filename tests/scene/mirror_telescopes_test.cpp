// The picture and the rows of telescopes with mirrors.
#include <cmath>
#include <numbers>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/newtonian.hpp"
#include "sample_setups.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/light/magnification_rows.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picking.hpp"
#include "scene/picture/picture.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Setup behind(const PartBody& telescope) {
    Setup setup = short_setup();
    setup.parts[0].body = telescope;
    return setup;
}

// By the divergence theorem; positive when triangles turn outward.
double volume_of(const Mesh& mesh) {
    double sum = 0;
    for (std::size_t i = 0; i < mesh.indices.size(); i += 3) {
        const auto corner = [&](std::size_t k) {
            return glm::dvec3(mesh.vertices[mesh.indices[i + k]].position);
        };
        sum += glm::dot(corner(0), glm::cross(corner(1), corner(2))) / 6;
    }
    return sum;
}

}  // namespace

TEST_CASE("a dish is as much glass as a disc and half of its paraboloid's cylinder") {
    const int n = 128;
    const DishBody dish{50, 10, {-1.0 / 400, -1}, 8};
    const double disc = n * std::sin(2 * std::numbers::pi / n) / 2 * (50 * 50 - 10 * 10);
    Mesh coating;
    add_dish_coating(coating, translation(3, 4, 5), dish, 0.3, n);
    CHECK(near(volume_of(coating), 0.3 * disc, 0.05));  // float corners
    Mesh backing;
    add_dish_backing(backing, translation(3, 4, 5), dish, 0.3, n);
    // Mean height of the rim side over the ring, r^2 / (2 R) averaged: (50^2 + 10^2) / 2 / 800 = 1.625.
    CHECK(
        near(volume_of(backing), (8 - 0.3 + 1.625) * disc, 0.001 * 8 * disc));  // 12 straight zones
}

TEST_CASE("a Newtonian's eyepieces look up beside its tube and its mirrors can be picked") {
    const Setup setup = behind(Newtonian{});
    const Report report = report_of(setup, 64);
    const Frame frame = build_frame(setup, report);
    CHECK(frame.rear_bounds.low.y > 159);  // behind the drawtube, 160 mm off the axis
    CHECK(frame.head_bounds.high.y == frame.bounds.high.y);
    ViewOptions options;
    options.shells = ShellView::hidden;
    // Down the open tube, beside the secondary: the main mirror.
    CHECK(part_at(frame, {{70, 0, -2000}, {0, 0, 1}}, options) == std::optional{0});
}

TEST_CASE("light that ends on a secondary's back is no loss and gets no cross") {
    const Setup setup = behind(Newtonian{});
    const Report report = report_of(setup, 64);
    const Frame frame = build_frame(setup, report);
    const double shadow_at = -(1000.0 - 190.0);
    for (const Mark& mark : frame.marks) {
        if (mark.shape != MarkShape::cross) continue;
        const bool in_its_plane = std::abs(static_cast<double>(mark.at.z) - shadow_at) < 0.1;
        CHECK_FALSE((in_its_plane && std::hypot(mark.at.x, mark.at.y + 2.6F) < 26.1F));
    }
    CHECK(report.clipping[0].obstructed_share > 0);  // there is light that ends there
}

TEST_CASE("a moving mirror's travel is told instead of the drawtube's") {
    CassegrainMovingMirror telescope;
    telescope.back_focus = {100};
    telescope.travel_up = {6};
    telescope.travel_down = {2};
    const Report report = report_of(behind(telescope), 16);
    const FocusBudgetRows rows = focus_budget_rows(report);
    const PrimaryFocus& primary = *report.budget.primary;
    CHECK(near(rows.travel.travel, 8, 1e-12));
    CHECK(near(rows.travel.wanted, 6 - primary.wanted.value, 1e-12));  // 0 is fully up
    CHECK(rows.travel.sentence.find("main mirror") != std::string::npos);
    CHECK(rows.travel.margin_in.find("more light path") != std::string::npos);
    const auto values = magnification_rows(report);
    CHECK(values.back().label == "Focal length gained");
    const Frame frame = build_frame(behind(telescope), report);
    bool told = false;
    for (const Label& label : frame.labels) {
        told = told || label.text.find("main mirror") == 0;
        CHECK(label.text.find("drawtube") != 0);
    }
    CHECK(told);
}
