// What few rays say of a path's bounds, held against rays one by one.
#include <cmath>

#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"
#include "trace/pupil_kernel.hpp"
#include "trace/pupil_map.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

PupilCubic random_cubic(Random& random) {
    PupilCubic cubic;
    for (double& term : cubic.terms)
        term = random.between(-1, 1);
    return cubic;
}

glm::dvec2 random_place(Random& random) {
    const double radius = std::sqrt(random.between(0, 1));
    const double turn = random.between(0, 6.3);
    return radius * glm::dvec2{std::cos(turn), std::sin(turn)};
}

// The end that the bounds tell of a ray: the first that stops it; nothing where the place is too near to an edge to
// tell. `reached` is told as the path's last surface.
std::optional<RayEnd>
told_end(const std::vector<PupilBound>& bounds, std::size_t last, glm::dvec2 place) {
    for (const PupilBound& bound : bounds) {
        if (bound.gate) {
            const double gate = bound.gate->at(place);
            if (std::abs(gate) < 0.02 + 10 * bound.gate->residual) return std::nullopt;
            if (gate < 0) continue;
        }
        const double u = bound.u.at(place);
        const double v = bound.v.at(place);
        const bool is_half = bound.shape == PupilBound::Shape::half;
        const double inside = is_half ? u : 1 - std::hypot(u, v);
        const double unsure = 1e-6 + 4 * (bound.u.residual + (is_half ? 0 : bound.v.residual));
        if (std::abs(inside) < unsure) return std::nullopt;
        if ((inside < 0) != (bound.shape == PupilBound::Shape::block))
            return RayEnd{bound.is_leak ? RayFate::leaked : RayFate::clipped, bound.surface, {}};
    }
    return RayEnd{RayFate::reached, last, {}};
}

struct Told {
    std::size_t rays = 0;
    std::size_t told = 0;
    std::array<std::size_t, 4> fates{};  ///< by RayFate
};

void hold_against_rays(const Train& train, const EyePath& path, Random& random, Told& sum) {
    auto map = PupilMap::of(train, path);
    if (!map) return;
    std::vector<FieldSlope> slopes;
    for (std::size_t i = 0; i < fields_at_once; ++i)
        slopes.emplace_back(random.between(-0.01, 0.01), random.between(-0.01, 0.01));
    map->look_from(slopes);
    std::vector<PupilBound> bounds;
    for (std::size_t field = 0; field < slopes.size(); ++field) {
        if (!map->is_known(field)) continue;
        map->bounds_of(field, bounds);
        for (int k = 0; k < 20; ++k) {
            const glm::dvec2 place = random_place(random);
            const RayEnd end =
                trace_ray(path, ray_into(train, slopes[field], place, 10), primary_wavelength);
            ++sum.rays;
            const auto told = told_end(bounds, path.surfaces.size() - 1, place);
            if (!told) continue;
            ++sum.told;
            ++sum.fates.at(static_cast<std::size_t>(end.fate));
            CHECK(told->fate == end.fate);
            CHECK(told->surface == end.surface);
        }
    }
}

}  // namespace

TEST_CASE(
    "every cubic of the pupil is found again from its nodes, and what is more shows as residual") {
    Random random(81);
    const PupilNodes nodes = pupil_nodes();
    const CubicFit fit = cubic_fit();
    for (int i = 0; i < 20; ++i) {
        const PupilCubic made = random_cubic(random);
        PupilCubic found;
        double off = 0;
        for (std::size_t term = 0; term < cubic_term_count; ++term) {
            for (std::size_t node = 0; node < nodes.size(); ++node)
                found.terms.at(term) +=
                    fit.terms_from_values.at(term).at(node) * made.at(nodes[node]);
            off = std::max(off, std::abs(found.terms.at(term) - made.terms.at(term)));
        }
        CHECK(off < 1e-12);
    }
    // r^4 of size 1 cannot be made of 1, r^2 and the rest: from 0 to 1 the best of these is off by 1/8 (Chebyshev's T_2
    // of r^2), at nodes somewhat less.
    PupilEdge edge;
    edge.u.along = {1, 0, 0};
    edge.u.from = 1;  // so that the bound takes light and is fitted
    std::vector<double> column;
    for (const glm::dvec2& node : nodes)
        column.insert(column.end(), fields_at_once, std::pow(glm::length(node), 4));
    const std::vector<double> none(column.size());
    BoundLanes found;
    fit_bound(edge, {{column.data(), none.data(), none.data()}, {}}, fit, found);
    CHECK(found.u.residual[0] > 0.05);
    CHECK(found.u.residual[0] < 0.25);
    CHECK(found.u.residual[fields_at_once - 1] == found.u.residual[0]);
}

TEST_CASE("a cubic seen from another place is the same function") {
    Random random(82);
    for (int i = 0; i < 50; ++i) {
        const PupilCubic cubic = random_cubic(random);
        const glm::dvec2 centre = random_place(random);
        const glm::dvec2 place = random_place(random);
        CHECK(near(cubic.about(centre).at(place - centre), cubic.at(place), 1e-12));
    }
}

TEST_CASE("rays of random trains end where the bounds from few rays say") {
    Random random(83);
    Told sum;
    for (int i = 0; i < 60; ++i) {
        CAPTURE(i);
        const Setup setup = test_setups::random_setup(random);
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 60)});
        if (!train) continue;
        for (const Eye eye : both_eyes)
            hold_against_rays(*train, train->path(eye), random, sum);
    }
    CHECK(sum.told > 0.95 * static_cast<double>(sum.rays));
    CHECK(sum.fates[0] > 2000);
    CHECK(sum.fates[1] > 2000);
}

TEST_CASE("faces that leak do so where the bounds from few rays say") {
    Random random(84);
    Told sum;
    for (int i = 0; i < 20; ++i) {
        CAPTURE(i);
        Setup setup = test_setups::wide_setup({{"Diagonal", PrismDiagonal{}, {}}});
        auto& telescope = test_setups::the<Refractor>(setup);
        telescope.focal_length = {random.between(280, 450)};  // steep enough to leak in BK7
        auto& diagonal = test_setups::the<PrismDiagonal>(setup);
        diagonal.glass = "N-BK7";
        diagonal.prism_width = {80};
        diagonal.clear_diameter = {78};
        const auto train = build_train(setup, setup.chosen, Millimetres{0});
        REQUIRE(train.has_value());
        hold_against_rays(*train, train->path(Eye::left), random, sum);
    }
    CHECK(sum.fates[2] > 100);
}

TEST_CASE("an obstruction with corners is left to counted rays") {
    const Setup setup = test_setups::wide_setup();
    auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE(train.has_value());
    EyePath& path = train->paths[0];
    CHECK(PupilMap::of(*train, path).has_value());
    path.surfaces[1].kind = SurfaceKind::obstruction;
    path.surfaces[1].aperture = rectangle(3, 4);
    CHECK_FALSE(PupilMap::of(*train, path).has_value());
}
