// A moving-mirror Cassegrain focused away from its design: the spherical aberration of its mirrors with their corrector,
// without any other glass, against the third-order theory of two-mirror telescopes and an exact trace worked elsewhere.
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "reference/moved_mirrors.hpp"
#include "study/image/aberrations.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr double design_back_focus = 130;

CassegrainMovingMirror bare_cassegrain(double aperture) {
    CassegrainMovingMirror mirrors;
    mirrors.aperture = {aperture};
    mirrors.back_focus = {design_back_focus};
    mirrors.figure = MirrorFigure::paraboloid_hyperboloid;
    return mirrors;  // f1 = 400 mm, F = 2000 mm at the design
}

// The two mirrors and the plane of their focus at that back focus, in the telescope's own frame.
struct Focused {
    Train train;
    EyePath path;
    double moved = 0;
};
Focused focused_at(const CassegrainMovingMirror& mirrors, double back_focus) {
    Focused at;
    at.moved = mirrors.moved_for({back_focus}, std::nullopt).value;
    at.train.objective_radius = mirrors.aperture.value / 2;
    at.train.objective_focal_length = mirrors.focus_at({at.moved}, std::nullopt).focal_length.value;
    at.train.object_distance = std::numeric_limits<double>::infinity();
    LayoutContext context;
    context.primary = {at.moved};
    const PartLayout layout = mirrors.layout(context);
    at.train.pupil_plane = layout.pupil_plane;
    at.train.light_enters = layout.light_enters;
    at.path.object_distance = at.train.object_distance;
    for (const Surface& surface : layout.surfaces) {
        if (is_opening(surface.kind)) continue;
        at.path.surfaces.push_back(
            test_paths::placed(surface.name, surface.kind, surface.part_from_surface));
        at.path.surfaces.back().shape = surface.shape;
        at.path.surfaces.back().profile = surface.profile;
    }
    at.path.world_from_field_stop = layout.part_from_exit * translation(0, 0, back_focus);
    at.path.surfaces.push_back(
        test_paths::placed("focus", SurfaceKind::stop, at.path.world_from_field_stop));
    return at;
}

// Optical path to the paraxial focus of the ray at that share of the aperture less the middle ray's, mm.
double rim_path(const Focused& at, double share = 1 - 1e-12) {
    const std::vector<glm::dvec2> pupil{{0, 0}, {0, share}};
    const Wavefront two = trace_wavefront(at.train, at.path, {0, 0}, pupil, primary_wavelength);
    REQUIRE(two.rays.size() == 2);
    return path_to(two.rays[1], {0, 0, 0}) - path_to(two.rays[0], {0, 0, 0});
}

// W040 = y^4 / (4 R^3) [K + ((m + 1) / (m - 1))^2] of a mirror of radius R and conic constant K at magnification m,
// y the height of the rim's ray there (D. J. Schroeder, Astronomical Optics, ch. 6, two-mirror telescopes; from
// memory; it follows from the sags of the two conics, the rim's light travelling twice their difference). The
// primary, a paraboloid for a star, has none; the secondary's K is perfect at the design's magnification only.
// Positive: the rim's path is longer, for the convex secondary falls back more than the perfect one.
double third_order(const CassegrainMovingMirror& mirrors, double moved) {
    const double f1 = mirrors.primary_focal_length.value;
    const double f2 = mirrors.secondary_focal_length().value;
    const double at_design = mirrors.focal_length.value / f1;
    const double eccentricity = (at_design + 1) / (at_design - 1);
    const double object = f1 - mirrors.mirror_distance().value + moved;  // from the secondary
    const double m = f2 / (f2 - object);
    const double y = mirrors.aperture.value / 2 * object / f1;
    const double R = 2 * f2;
    return std::pow(y, 4) / (4 * std::pow(R, 3))
           * (std::pow((m + 1) / (m - 1), 2) - eccentricity * eccentricity);
}

}  // namespace

TEST_CASE("at its design back focus the pair is perfect, away from it it has the third-order "
          "spherical aberration of its secondary") {
    const auto design = bare_cassegrain(100);
    CHECK(near(rim_path(focused_at(design, design_back_focus)), 0, 1e-9));  // rounding of 2 m
    for (const double back_focus : {90.0, 180.0, 230.0}) {
        CAPTURE(back_focus);
        // A slow primary of f/8: the next order is about (y / f1)^2 = 0.4 % of it, a few times.
        const auto slow = bare_cassegrain(50);
        const Focused at = focused_at(slow, back_focus);
        const double expected = third_order(slow, at.moved);
        CHECK(std::abs(expected) > 1e-7);
        CHECK(near(rim_path(at), expected, 0.02 * std::abs(expected)));
        CHECK((expected < 0) == (back_focus > design_back_focus));
    }
}

TEST_CASE("what third order leaves out falls as the square of the aperture") {
    const auto left_out = [](double aperture) {
        const auto mirrors = bare_cassegrain(aperture);
        const Focused at = focused_at(mirrors, 200);
        return rim_path(at) / third_order(mirrors, at.moved) - 1;
    };
    const double narrow = left_out(70);
    const double wide = left_out(140);
    CHECK(std::abs(wide) < 0.15);        // f/2.9: several times (y / f1)^2 = 3 %
    CHECK(near(wide / narrow, 4, 0.4));  // and the order after that
}

TEST_CASE("image quality reads the same aberration off the wavefront's fit") {
    const auto mirrors = bare_cassegrain(100);
    const Focused at = focused_at(mirrors, 210);
    const Wavefront wavefront =
        trace_wavefront(at.train, at.path, {0, 0}, sunflower(200), primary_wavelength);
    const double waves = third_order(mirrors, at.moved) / 546.0740e-6;
    const std::array colours{WeightedWavefront{&wavefront, 1}};
    // Sixth order goes into the fit's W040 with weights of a few; (y / f1)^2 = 1.6 %.
    CHECK(near(aberrations(wavefront, best_sphere_centre(colours)).spherical, waves,
               0.08 * std::abs(waves)));
}

TEST_CASE(
    "every figure's wavefront away from the design is that of the exact trace worked elsewhere") {
    constexpr std::array figures{
        MirrorFigure::spheres_with_plate, MirrorFigure::coma_free_with_plate,
        MirrorFigure::paraboloid_hyperboloid, MirrorFigure::coma_free_hyperboloids};
    for (const reference::MovedMirrors& row : reference::moved_mirrors) {
        CAPTURE(static_cast<int>(row.kind));
        CAPTURE(row.more_back_focus);
        CassegrainMovingMirror mirrors;
        mirrors.aperture = {row.aperture};
        mirrors.focal_length = {row.focal_length};
        mirrors.primary_focal_length = {row.primary_focal_length};
        mirrors.back_focus = {row.back_focus};
        mirrors.rear_face = {row.rear_face};
        mirrors.figure = figures.at(static_cast<std::size_t>(row.kind));
        const Focused at = focused_at(mirrors, row.back_focus + row.more_back_focus);
        constexpr double wave = 546.0740e-6;
        // The fast tracer rounds by up to 1e-9 mm, 2e-6 waves.
        CHECK(near(rim_path(at) / wave, row.rim_waves, 1e-5));
        CHECK(near(rim_path(at, std::sqrt(0.5)) / wave, row.zone_waves, 1e-5));
    }
}

TEST_CASE("behind its corrector a star is perfect at the design focus over the whole aperture") {
    for (const MirrorFigure figure :
         {MirrorFigure::spheres_with_plate, MirrorFigure::coma_free_with_plate,
          MirrorFigure::spheres_with_meniscus}) {
        for (const double aperture : {100.0, 200.0, 300.0}) {  // the main mirror f/4 to f/1.3
            auto mirrors = bare_cassegrain(aperture);
            mirrors.figure = figure;
            const Focused at = focused_at(mirrors, design_back_focus);
            const double wave = 546.0740e-6;
            for (const double share : {0.2, 0.5, 0.7, 0.9, 1.0 - 1e-12}) {
                CAPTURE(share);
                CHECK(near(rim_path(at, share) / wave, 0, 1e-5));
            }
        }
    }
}

TEST_CASE("a coma-free figure has hardly any of the coma of the plain one") {
    // A star half a degree off the axis would do: at the design's focus coma is W131, from the fit.
    const auto coma = [](MirrorFigure figure) {
        auto mirrors = bare_cassegrain(150);
        mirrors.figure = figure;
        const Focused at = focused_at(mirrors, design_back_focus);
        const Wavefront wavefront =
            trace_wavefront(at.train, at.path, {0, 0.004}, sunflower(300), primary_wavelength);
        const std::array colours{WeightedWavefront{&wavefront, 1}};
        return aberrations(wavefront, best_sphere_centre(colours)).coma;
    };
    // A two-mirror telescope that is perfect on the axis by its conics has the coma of a paraboloid of its focal ratio:
    // W131 = field y^3 / (4 F^2) (D. J. Schroeder, Astronomical Optics, ch. 6, from memory).
    const double expected = 0.004 * std::pow(75.0, 3) / (4 * 2000.0 * 2000.0) / 546.0740e-6;
    CHECK(near(std::abs(coma(MirrorFigure::paraboloid_hyperboloid)), expected, 0.03 * expected));
    // The next order is (y / f1)^2 = 3.5 % of a main mirror's own, times a few.
    CHECK(std::abs(coma(MirrorFigure::coma_free_hyperboloids)) < 0.1 * expected);
    CHECK(std::abs(coma(MirrorFigure::coma_free_with_plate)) < 0.1 * expected);
    CHECK(std::abs(coma(MirrorFigure::spheres_with_plate)) > 0.5 * expected);
}
