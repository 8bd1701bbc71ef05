#include <cmath>
#include <set>
#include <utility>

#include "parts/focuser.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "scene/picture/eye_place.hpp"
#include "scene/picture/picture_input.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// World places are floats: 1 um at 1 m is eight of their last digits.
constexpr double float_rounding_mm = 2e-3;

bool is_finite(const glm::vec3& v) {
    return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z);
}

bool lies_on_a_surface(const Train& train, const glm::vec3& at) {
    for (const EyePath& path : train.paths) {
        for (const PlacedSurface& surface : path.surfaces) {
            if (std::abs(surface.world_from_surface.point_in(Point(at)).z) < float_rounding_mm)
                return true;
        }
    }
    return false;
}

// A ray that is drawn in pieces goes straight on where they meet.
bool is_joint(const Frame& frame, const LightRibbon& ribbon, bool at_end) {
    const glm::vec3 place = at_end ? ribbon.to : ribbon.from;
    const glm::vec3 along = glm::normalize(ribbon.to - ribbon.from);
    for (const LightRibbon& other : frame.light) {
        const glm::vec3 meets = at_end ? other.from : other.to;
        if (meets != place) continue;
        if (glm::dot(along, glm::normalize(other.to - other.from)) > 0.99999F) return true;
    }
    return false;
}

// At the eyepiece's last lens, where the drawn ray bends, or between there and the inside of the eye.
bool is_at_an_eye(const Setup& setup, const Train& train, const glm::vec3& at) {
    const EyeBehindEyepiece place = eye_place(part_as<EyepiecePair>(setup, train.choice.eyepiece));
    for (const EyePath& path : train.paths) {
        const double behind = path.world_from_field_stop.point_in(Point(at)).z;
        if (behind > place.eye_lens - rounding_mm && behind < place.pupil + 20) return true;
    }
    return false;
}

std::size_t surface_named(const EyePath& path, const std::string& name) {
    for (std::size_t i = 0; i < path.surfaces.size(); ++i) {
        if (path.surfaces[i].name == name) return i;
    }
    return path.surfaces.size();
}

// The crosses that the picture must hold, counted without its help.
std::size_t dead_ends(const Train& train, const PictureEffort& effort) {
    std::size_t count = 0;
    const auto add = [&](FieldSlope slope, glm::dvec2 pupil) {
        const Ray start = ray_into(train, slope, pupil, 2 * train.objective_radius);
        const EyePath& left = train.path(Eye::left);
        const RayEnd in_left = trace_ray(left, start, primary_wavelength);
        const RayEnd in_right = trace_ray(train.path(Eye::right), start, primary_wavelength);
        const std::size_t divided_at = surface_named(left, "cube interface");
        if (in_left.fate != RayFate::reached) ++count;
        const bool shared = in_left.fate != RayFate::reached && in_left.surface <= divided_at;
        if (in_right.fate != RayFate::reached && !shared) ++count;
    };
    for (const glm::dvec2& pupil : sunflower(effort.axis_rays))
        add({0, 0}, pupil);
    for (const glm::dvec2& pupil : rim(effort.rim_rays))
        add({0, 0}, 0.999 * pupil);
    const FieldMap map = field_map(train, Eye::left);
    const double radius = inner_radius(train.path(Eye::left).surfaces.back().aperture);
    for (const glm::dvec2& edge : {glm::dvec2{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
        for (const glm::dvec2& pupil : sunflower(effort.edge_rays))
            add(map.slope_at(radius * edge), pupil);
    }
    return count;
}

double strength_through_objective(const Frame& frame) {
    double sum = 0;
    for (const LightRibbon& ribbon : frame.light) {
        if (std::abs(ribbon.from.z) < float_rounding_mm && ribbon.to.z > 1) sum += ribbon.strength;
    }
    return sum;
}

double strength_onto_stop(const Frame& frame, const EyePath& path) {
    double sum = 0;
    for (const LightRibbon& ribbon : frame.light) {
        const double from = path.world_from_field_stop.point_in(Point(ribbon.from)).z;
        const Point to = path.world_from_field_stop.point_in(Point(ribbon.to));
        const bool arrives =
            from < -1 && std::abs(to.z) < float_rounding_mm && glm::length(glm::dvec2(to)) < 30;
        if (arrives && !ribbon.clipped) sum += ribbon.strength;
    }
    return sum;
}

}  // namespace

// A fair share of a disc has its middle in the middle of the disc, and a mean square of 1/2 as the whole disc has.
TEST_CASE("a quarter and half of the rays lie evenly over the objective") {
    const Setup setup = cured_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    for (const float share : {0.25F, 0.5F}) {
        CAPTURE(share);
        std::set<std::pair<float, float>> all;
        std::set<std::pair<float, float>> few;
        for (const LightRibbon& ribbon : frame.light) {
            const std::pair place{ribbon.pupil.x, ribbon.pupil.y};
            if (glm::length(ribbon.pupil) > 0.99F) continue;  // the rim is drawn besides
            all.insert(place);
            if (ribbon.rank < share) few.insert(place);
        }
        REQUIRE(all.size() > 60);
        const auto count = static_cast<double>(few.size());
        CHECK(near(count / static_cast<double>(all.size()), static_cast<double>(share), 0.1));
        glm::dvec2 middle{0};
        double square = 0;
        for (const auto& [x, y] : few) {
            middle += glm::dvec2(x, y) / count;
            square += glm::dot(glm::dvec2(x, y), glm::dvec2(x, y)) / count;
        }
        CHECK(glm::length(middle) < 0.12);  // a few dozen rays
        CHECK(near(square, 0.5, 0.06));
    }
}

TEST_CASE(
    "every stretch of light ends on a surface, at a joint of a straight ray, at the eye, or in "
    "front of the telescope") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Report report = report_of(setup);
        const Frame frame = build_frame(setup, report);
        REQUIRE(frame.light.size() > 500);
        for (const LightRibbon& ribbon : frame.light) {
            REQUIRE(is_finite(ribbon.from));
            REQUIRE(is_finite(ribbon.to));
            const bool starts = ribbon.from.z < -50;  // in front of the objective
            CHECK((starts || lies_on_a_surface(report.train, ribbon.from)
                   || is_joint(frame, ribbon, false)
                   || is_at_an_eye(setup, report.train, ribbon.from)));
            CHECK((lies_on_a_surface(report.train, ribbon.to) || is_joint(frame, ribbon, true)
                   || is_at_an_eye(setup, report.train, ribbon.to)));
        }
    }
}

TEST_CASE("every ray that dies, and no other, ends in a cross or, where it leaks, in a ring") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Report report = report_of(setup);
        const PictureEffort effort;
        const Frame frame = build_frame(setup, report, effort);
        std::size_t crosses = 0;
        for (const Mark& mark : frame.marks) {
            if (mark.shape != MarkShape::cross && mark.shape != MarkShape::ring) continue;
            ++crosses;
            CHECK(mark.clipped);
            CHECK(mark.role == ColourRole::clipped);
            CHECK(lies_on_a_surface(report.train, mark.at));
        }
        CHECK(crosses == dead_ends(report.train, effort));
    }
    const Setup setup = clipping_setup();
    CHECK(dead_ends(report_of(setup).train, PictureEffort{})
          > 50);  // the case is put to the test at all
}

TEST_CASE("a leaking face sends a stub of light out of the glass") {
    Setup setup = short_setup();
    auto& telescope = setup.parts[0].body.get<Refractor>();
    telescope.focal_length = {400};  // f/4 meets bare BK7 too steeply for total reflection
    telescope.back_focus = {160};
    setup.parts[1].body.get<Focuser>().drawtube_diameter = {90};  // lets the steep light through
    auto& diagonal = setup.parts[3].body.get<PrismDiagonal>();
    diagonal.glass = "N-BK7";
    diagonal.prism_width = {40};
    diagonal.clear_diameter = {40};
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    std::size_t leaks = 0;
    std::size_t stubs = 0;
    const EyePath& path = report.train.path(Eye::left);
    const PlacedSurface& face = path.surfaces.at(surface_named(path, "prism hypotenuse"));
    for (const glm::dvec2& pupil : sunflower(PictureEffort{}.axis_rays)) {
        const RayEnd end =
            trace_ray(path, ray_into(report.train, {0, 0}, pupil, 100), primary_wavelength);
        if (end.fate == RayFate::leaked) ++leaks;
    }
    for (const LightRibbon& ribbon : frame.light) {
        const double from = face.world_from_surface.point_in(Point(ribbon.from)).z;
        const double to = face.world_from_surface.point_in(Point(ribbon.to)).z;
        const bool is_here = glm::distance(Point(ribbon.from), face.world_from_surface.origin) < 30;
        if (is_here && ribbon.clipped && std::abs(from) < float_rounding_mm && to > 0.5) ++stubs;
    }
    CHECK(leaks > 0);
    CHECK(stubs >= leaks);  // rays from the edge of the field leak as well

    // Each of them ends in a ring, which no clipped ray does, and the face says so once. Stubs that graze the face
    // or start beyond 30 mm are not counted above.
    std::size_t rings = 0;
    for (const Mark& mark : frame.marks) {
        if (mark.shape != MarkShape::ring) continue;
        const double off = face.world_from_surface.point_in(Point(mark.at)).z;
        if (std::abs(off) < float_rounding_mm) ++rings;
    }
    CHECK(rings >= stubs);
    CHECK(rings >= leaks);
    const auto says_so = [](const Label& label) {
        return label.text.find("prism hypotenuse leaks") == 0 && label.role == LabelRole::clipped;
    };
    CHECK(std::count_if(frame.labels.begin(), frame.labels.end(), says_so) == 1);
}

TEST_CASE("where nothing is clipped, the two arms together carry what came through the objective") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    PictureEffort effort;
    effort.edge_points = 0;
    const Frame frame = build_frame(setup, report, effort);
    REQUIRE(report.clipping[0].points.front().relative == 1);
    const double whole = strength_through_objective(frame);
    const double within = 1e-3;  // a sum of floats
    CHECK(near(whole, effort.axis_rays + effort.rim_rays, within));
    CHECK(near(strength_onto_stop(frame, report.train.path(Eye::left)), whole / 2, within));
    CHECK(near(strength_onto_stop(frame, report.train.path(Eye::right)), whole / 2, within));
}

TEST_CASE("light is undivided up to the dividing face, then the left eye's and the right eye's"
          " own") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    std::size_t left = 0;
    std::size_t right = 0;
    for (const LightRibbon& ribbon : frame.light) {
        if (ribbon.clipped) continue;
        if (ribbon.to.z < 400) CHECK(ribbon.role == ColourRole::undivided_beam);
        for (const EyePath& path : report.train.paths) {
            const Point end = path.world_from_field_stop.point_in(Point(ribbon.to));
            if (std::abs(end.z) > float_rounding_mm || glm::length(glm::dvec2(end)) > 20) continue;
            const bool is_left = path.eye == Eye::left;
            CHECK(ribbon.role == (is_left ? ColourRole::left_arm : ColourRole::right_arm));
            CHECK((ribbon.to.x < 0) == is_left);  // the left eye's arm lies at -x
            ++(is_left ? left : right);
        }
    }
    CHECK(left > 50);
    CHECK(right == left);
}

TEST_CASE("the drawn rays cross where the focus is marked") {
    Setup setup = short_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {
        128};  // the focus falls in air, before the stop
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    REQUIRE(report.gap(Eye::left).value > 5);
    REQUIRE(report.gap(Eye::left).value < 29);
    for (const EyePath& path : report.train.paths) {
        const Point focus =
            point_near_stop(path, report.image_behind_stop[path.eye == Eye::left ? 0 : 1]);
        std::size_t rays = 0;
        for (const LightRibbon& ribbon : frame.light) {
            const Point to = path.world_from_field_stop.point_in(Point(ribbon.to));
            const bool arrives =
                std::abs(to.z) < float_rounding_mm && glm::length(glm::dvec2(to)) < 10;
            if (!arrives || ribbon.strength < 0.45F) continue;  // not from the edge of the field
            const Direction along = glm::normalize(Point(ribbon.to) - Point(ribbon.from));
            const Point off = focus - Point(ribbon.from);
            // Spherical aberration of 111 mm of glass at f/7.4 is 0.1 mm along, 0.007 mm across.
            CHECK(near(glm::length(off - glm::dot(off, along) * along), 0, 0.01));
            ++rays;
        }
        CHECK(rays > 50);
    }
}
