// The beam as the rays that are really traced: drawn once up to the dividing face, then in the hue of each
// arm. A ray that dies at an opening ends in a cross, one that leaks out of a face in a ring with a stub of light
// behind the face; its last stretch is drawn in the clipping colour.
#include <algorithm>
#include <cmath>

#include "parts/observer.hpp"
#include "scene/picture/eye_place.hpp"
#include "scene/picture/light_arrival.hpp"
#include "scene/picture/picture_input.hpp"
#include "trace/forked_ray.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

namespace {

constexpr double inside_eye_mm = 14;     // how far a ray is followed behind the eye's pupil
constexpr double dying_stretch_mm = 60;  // of a ray that dies in the common beam
constexpr double leak_stub_mm = 9;       // drawn of the light that leaks out of a face
constexpr float edge_strength = 0.35F;   // of rays from the edge of the field
constexpr float arm_share = 0.5F;        // each arm's share of the light

struct Stroke {
    ColourRole role = ColourRole::undivided_beam;
    float strength = 1;
    bool clipped = false;
    float from_share = 1;  // of the strength, at the stroke's two ends
    float to_share = 1;
};

using Places = std::vector<RayCorner>;

// Farther on in a medium of that index.
RayCorner onward(const RayCorner& from, const Direction& step, double index) {
    const double path = from.path_out + index * glm::length(step);
    return {from.surface, from.at + step, from.at + step, path, path};
}

// The last `length` mm of a line, and what comes before.
struct Cut {
    Places before;
    Places last;
};

Cut cut_from_end(const Places& line, double length) {
    for (std::size_t i = line.size() - 1; i > 0; --i) {
        const double stretch = glm::distance(line[i].at, line[i - 1].at);
        if (stretch < length) {
            length -= stretch;
            continue;
        }
        const double share = length / stretch;
        const double path = glm::mix(line[i].path_in, line[i - 1].path_out, share);
        const Point place = glm::mix(line[i].at, line[i - 1].at, share);
        const RayCorner at{line[i].surface, place, place, path, path};
        Cut cut{{line.begin(), line.begin() + static_cast<std::ptrdiff_t>(i)}, {at}};
        cut.before.push_back(at);
        cut.last.insert(cut.last.end(), line.begin() + static_cast<std::ptrdiff_t>(i), line.end());
        return cut;
    }
    return {{}, line};
}

// Steps round the circle of length 1 by a number that any run of them fills evenly (the inverse of the real root of
// x^3 = x + 1), and that has nothing to do with the golden angle by which rays follow each other in a sunflower.
float rank_of(std::size_t ray) {
    const double turns = static_cast<double>(ray) * 0.7548776662466927;
    return static_cast<float>(turns - std::floor(turns));
}

const EyepiecePair& eyepiece_of(const PictureInput& input) {
    return part_as<EyepiecePair>(input.setup, input.train().choice.eyepiece);
}

// In which roles light is drawn that arrives, and how that which does not.
struct Hues {
    ColourRole common = ColourRole::undivided_beam;
    std::array<ColourRole, 2> arms{ColourRole::left_arm, ColourRole::right_arm};
    bool lost_throughout =
        false;  ///< rays that come to no eye bear the clipping colour all the way
};

class LightDrawer {
public:
    LightDrawer(Frame& frame, const PictureInput& input, const Hues& hues = {})
        : frame_(frame),
          input_(input),
          hues_(hues),
          dividing_(dividing_surface(input.train())),
          place_(eye_place(eyepiece_of(input))),
          focal_length_(eyepiece_of(input).focal_length.value),
          eye_pupil_radius_(
              part_as<Observer>(input.setup, input.train().choice.observer).eye_pupil.value / 2),
          tracer_(input.train(), primary_wavelength) {}

    void draw(FieldSlope field, std::span<const glm::dvec2> pupil, float strength) {
        const Train& train = input_.train();
        const double ahead = 2.0 * train.objective_radius;  // in front of the dew shade
        const RayBundle bundle = bundle_into(train, field, pupil, ahead);
        const std::vector<ForkedRay> rays = tracer_.follow(bundle);
        const Ray chief = ray_into(train, field, {0, 0}, ahead);
        at_objective_ = chief.path + glm::distance(chief.origin, Point{0, 0, train.pupil_plane});
        for (std::size_t i = 0; i < bundle.size(); ++i) {
            pupil_ = glm::vec2(pupil[i]);
            rank_ = rank_of(i);
            draw_ray(rays[i], strength);
        }
    }

private:
    void draw_ray(const ForkedRay& ray, float strength) {
        const auto& [left, right] = ray.arms;
        const Places& common = ray.common;  // the start and where it ends or turns at least
        const bool both_die = left.is_lost() && right.is_lost();
        const ColourRole role =
            hues_.lost_throughout && both_die ? ColourRole::clipped : hues_.common;
        draw_fading_in(common, {role, strength, dies_in_common_beam(left)});
        if (is_in_shadow(left)) {  // of the telescope's own secondary: no loss
            draw_fading_in(common, {hues_.common, strength, false});
            return;
        }
        if (dies_in_common_beam(left)) {
            draw_dying({common.begin() + 1, common.end()}, {role, strength, true});
            mark_end(Eye::left, left.end, common.back(), strength);
            return;
        }
        draw_line({common.begin() + 1, common.end()}, {role, strength, both_die});
        draw_arm(Eye::left, left, common.back(), strength);
        draw_arm(Eye::right, right, common.back(), strength);
    }

    [[nodiscard]] ColourRole hue_of(Eye eye) const { return hues_.arms[side_of(eye)]; }

    [[nodiscard]] bool dies_in_common_beam(const TracedRay& ray) const {
        return ray.is_lost() && ray.end.surface <= dividing_;
    }

    [[nodiscard]] bool is_in_shadow(const TracedRay& ray) const {
        const auto& surfaces = input_.train().path(Eye::left).surfaces;
        return ray.is_lost() && surfaces[ray.end.surface].kind == SurfaceKind::obstruction;
    }

    void draw_arm(Eye eye, const TracedRay& ray, const RayCorner& from, float strength) {
        Places places{from};
        places.insert(places.end(), ray.corners.begin(), ray.corners.end());
        const float share = arm_share * strength;
        if (ray.is_lost()) {
            draw_line(places, {ColourRole::clipped, share, true});
            mark_end(eye, ray.end, places.back(), share);
            return;
        }
        draw_line(places, {hue_of(eye), share, false});
        draw_into_eye(ray, eye, share);
    }

    void draw_line(const Places& places, const Stroke& stroke) {
        for (std::size_t i = 1; i < places.size(); ++i) {
            const RayCorner& from = places[i - 1];
            const RayCorner& to = places[i];
            frame_.light.push_back({glm::vec3(from.at), glm::vec3(to.at), stroke.role,
                                    stroke.strength, stroke.clipped, rank_, pupil_,
                                    static_cast<float>(from.path_out - at_objective_),
                                    static_cast<float>(to.path_in - at_objective_),
                                    stroke.from_share, stroke.to_share});
        }
    }

    // In front of the telescope the beam comes out of the dark.
    void draw_fading_in(const Places& common, const Stroke& whole) {
        // Light runs through the whole tube to a mirror at its end: it has come out of the dark by then.
        const double length = glm::distance(common[0].at, common[1].at);
        const double inside = input_.train().pupil_plane - input_.train().light_enters;
        const double fading =
            inside > 0 ? std::min(1.0, 2 * input_.train().objective_radius / length) : 1;
        const RayCorner bright = onward(common[0], fading * (common[1].at - common[0].at), 1);
        draw_line({common[0], bright}, {whole.role, whole.strength, whole.clipped, 0, 1});
        if (inside > 0) draw_line({bright, common[1]}, whole);
    }

    void draw_dying(const Places& places, const Stroke& alive) {
        const Cut cut = cut_from_end(places, dying_stretch_mm);
        draw_line(cut.before, alive);
        draw_line(cut.last, {ColourRole::clipped, alive.strength, true});
    }

    // The eyepiece is drawn as what it is to geometrical optics: light that met the field stop at x with slope u comes to
    // the exit pupil at f u with slope -x / f (an ideal lens of focal length f with the stop in its focal plane).
    void draw_into_eye(const TracedRay& ray, Eye eye, float strength) {
        const Pose& stop = input_.train().path(eye).world_from_field_stop;
        const Direction way = stop.direction_in(ray.end.ray.direction);
        if (way.z <= 0) return;
        const glm::dvec2 slope = glm::dvec2(way) / way.z;
        const glm::dvec2 met = glm::dvec2(stop.point_in(ray.corners.back().at));
        const glm::dvec2 at_pupil = focal_length_ * slope;
        const auto to = [&](const RayCorner& from, const glm::dvec2& across, double behind) {
            return onward(from, stop.point_out({across, behind}) - from.at, 1);
        };
        const RayCorner lens =
            to(ray.corners.back(), met + place_.eye_lens * slope, place_.eye_lens);
        const RayCorner pupil = to(lens, at_pupil, place_.pupil);
        draw_line({ray.corners.back(), lens, pupil}, {hue_of(eye), strength, false});
        if (glm::length(at_pupil) > eye_pupil_radius_) return;  // it falls on the iris
        const RayCorner inside =
            to(pupil, at_pupil - inside_eye_mm * met / focal_length_, place_.pupil + inside_eye_mm);
        draw_line({pupil, inside}, {hue_of(eye), strength, false, 1, 0});
    }

    void mark_end(Eye eye, const RayEnd& told, const RayCorner& end, float strength) {
        const bool is_leak = told.fate == RayFate::leaked;
        frame_.marks.push_back({glm::vec3(end.at), ColourRole::clipped, is_leak ? 8.0F : 7.0F,
                                is_leak ? MarkShape::ring : MarkShape::cross, false, true});
        if (!is_leak) return;
        const PlacedSurface& face = input_.train().path(eye).surfaces[told.surface];
        const Pose& pose = face.world_from_surface;
        const auto outside = refracted(pose.direction_in(told.ray.direction),
                                       face.index_before[primary_wavelength], 1.0);
        if (!outside) return;
        const RayCorner stub = onward(end, leak_stub_mm * pose.direction_out(*outside), 1);
        draw_line({end, stub}, {ColourRole::clipped, strength, true});
    }

    Frame& frame_;
    const PictureInput& input_;
    Hues hues_;
    std::size_t dividing_;
    EyeBehindEyepiece place_;
    double focal_length_;      ///< of the eyepieces
    double eye_pupil_radius_;  ///< of the observer
    glm::vec2 pupil_{0};       ///< of the ray that is drawn
    float rank_ = 0;           ///< likewise
    double at_objective_ = 0;  ///< optical path of its wavefront at the objective's middle
    ForkedTracer tracer_;
};

}  // namespace

void add_star_light(Frame& frame, const PictureInput& input, const StarLight& star) {
    const Hues hues{star.role, {star.role, star.role}, true};
    LightDrawer(frame, input, hues).draw(star.field, sunflower(star.rays), star.strength);
    frame.ray_count = star.rays;
}

void add_light(Frame& frame, const PictureInput& input) {
    const PictureEffort& effort = input.effort;
    constexpr int stretches = 24;  // of a ray that comes to both eyes, about
    const int rays = effort.axis_rays + effort.rim_rays + effort.edge_points * effort.edge_rays;
    frame.light.reserve(frame.light.size() + static_cast<std::size_t>(stretches * rays));
    LightDrawer drawer(frame, input);
    drawer.draw({0, 0}, sunflower(effort.axis_rays), 1);
    constexpr double inside_the_rim = 0.999;  // the objective's edge itself takes nothing
    auto pupil_rim = rim(effort.rim_rays);
    for (glm::dvec2& pupil : pupil_rim)
        pupil *= inside_the_rim;
    drawer.draw({0, 0}, pupil_rim, 1);

    // One place on the sky lights both field stops: where it falls is read from the left one.
    const FieldMap map = field_map(input.train(), Eye::left);
    const double radius = inner_radius(input.train().path(Eye::left).surfaces.back().aperture);
    const std::vector<glm::dvec2> edge{{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    const auto edge_pupil = sunflower(effort.edge_rays);
    for (int i = 0; i < effort.edge_points; ++i) {
        const FieldSlope slope = map.slope_at(radius * edge.at(static_cast<std::size_t>(i)));
        drawer.draw(slope, edge_pupil, edge_strength);
    }
    frame.ray_count = effort.axis_rays + effort.rim_rays;
    frame.arrival = light_arrival(input.train());
}

}  // namespace beamfork
