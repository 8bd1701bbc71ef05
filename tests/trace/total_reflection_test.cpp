// A bare 45 degree face holds a slow cone and leaks the steep side of a fast one.
#include <cmath>

#include "parts/prisms.hpp"
#include "reference/total_reflection.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

EyePath prism_path(double index) {
    Prism prism = right_angle_prism(200, {"bare", FaceCoating::bare}, "prism");
    for (Surface& surface : prism.surfaces)
        surface.aperture = Unbounded{};
    PathMaker maker;
    return maker.prism(prism, Pose{}, index)
        .ending_at(prism.prism_from_exit * translation(0, 0, 1));
}

RayFate fate(const EyePath& path, double slope_x, double slope_y) {
    const Direction along = glm::normalize(Direction{slope_x, slope_y, 1});
    const RayEnd end = trace_ray(path, {Point{0, 0, 0} - along, along, 0}, primary_wavelength);
    if (end.fate == RayFate::leaked) CHECK(path.surfaces[end.surface].name == "prism hypotenuse");
    return end.fate;
}

// Share of an even grid over the pupil whose rays leak, its chief ray leaning by `lean` degrees towards the side that
// leaks first.
double lost_share(double index, double f_number, double lean) {
    const EyePath path = prism_path(index);
    constexpr int cells = 300;
    const double edge = 1 / (2 * f_number);
    const double chief = std::tan(to_radians(Degrees{lean}).value);
    int in_pupil = 0;
    int lost = 0;
    for (int i = 0; i < cells; ++i) {
        for (int j = 0; j < cells; ++j) {
            const double x = (2 * (i + 0.5) / cells - 1) * edge;
            const double y = (2 * (j + 0.5) / cells - 1) * edge;
            if (x * x + y * y > edge * edge) continue;
            ++in_pupil;
            lost += fate(path, x, y - chief) == RayFate::leaked ? 1 : 0;
        }
    }
    return static_cast<double>(lost) / in_pupil;
}

}  // namespace

TEST_CASE("the steepest ray a bare 45 degree face holds is the handbook's limit") {
    for (const auto& row : reference::reflection_limits) {
        CAPTURE(row.index);
        const EyePath path = prism_path(row.index);
        const auto slope = [&](double angle) { return std::tan(to_radians(Degrees{angle}).value); };
        // The fold goes towards +y: light that leans away from there meets the face less steeply and leaks first.
        CHECK(fate(path, 0, -slope(row.half_cone - 1e-4))
              == RayFate::reached);  // last printed digit
        CHECK(fate(path, 0, -slope(row.half_cone + 1e-4)) == RayFate::leaked);
        CHECK(fate(path, 0, slope(row.half_cone + 1e-4)) == RayFate::reached);
        CHECK(fate(path, 0, -1 / (2 * (row.fastest - 2e-4))) == RayFate::leaked);
        CHECK(fate(path, 0, -1 / (2 * (row.fastest + 2e-4))) == RayFate::reached);
        CHECK(near(to_degrees(Radians{std::asin(1 / row.index)}).value, row.critical_angle, 6e-5));
    }
}

TEST_CASE("a cone faster than the limit loses part of the pupil, on one side") {
    for (const auto& row : reference::reflection_losses) {
        CAPTURE(row.index);
        CAPTURE(row.f_number);
        CAPTURE(row.lean);
        CHECK(near(lost_share(row.index, row.f_number, row.lean), row.share,
                   0.003));  // the grid of the source
        if (row.lean > 0) CHECK(lost_share(row.index, row.f_number, -row.lean) < row.share - 0.05);
    }
}

TEST_CASE("a slower cone loses nothing, and a mirrored face loses nothing however fast the cone") {
    CHECK(lost_share(1.5168, 5.1, 0) == 0);
    CHECK(lost_share(1.56883, 3.4, 0) == 0);
    Prism mirrored_prism = right_angle_prism(200, {"coated", FaceCoating::mirrored}, "prism");
    PathMaker maker;
    const EyePath path = maker.prism(mirrored_prism, Pose{}, 1.5168)
                             .ending_at(mirrored_prism.prism_from_exit * translation(0, 0, 1));
    CHECK(trace_ray(path, {{0, 1, -2}, glm::normalize(Direction{0, -0.5, 1}), 0}, 1).fate
          == RayFate::reached);
}
