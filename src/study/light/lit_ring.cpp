#include "study/light/lit_ring.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace beamfork {

namespace {

bool is_obstructed(const EyePath& path, const BundleEnds& ends, std::size_t ray) {
    return ends.fate[ray] == RayFate::clipped
           && path.surfaces[ends.surface[ray]].kind == SurfaceKind::obstruction;
}

// What bare faces keep of the light that leaks there, by some of the rays that do, arrives after all.
void give_back_leaks(LitPath& way, LitPoint& point, std::span<const glm::dvec2> pupil) {
    constexpr std::size_t enough = 256;
    for (EndShare& end : point.ends) {
        if (!end.is_leak) continue;
        std::vector<std::size_t> leaked;
        for (std::size_t i = 0; i < way.ends.size(); ++i) {
            if (way.ends.fate[i] == RayFate::leaked && way.ends.surface[i] == end.surface)
                leaked.push_back(i);
        }
        if (leaked.empty()) continue;
        const std::size_t every = (leaked.size() + enough - 1) / enough;
        double kept = 0;
        std::size_t count = 0;
        for (std::size_t i = 0; i < leaked.size(); i += every, ++count)
            kept += way.kept(point.at, pupil[leaked[i]]);
        const double back = end.share * kept / static_cast<double>(count);
        end.share -= back;
        point.relative += back;
    }
}

PointLight counted_light(LitPath& way, glm::dvec2 at, const std::vector<glm::dvec2>& pupil) {
    PointLight found{{at, 0, {}}, 0};
    std::size_t reached = 0;
    std::size_t obstructed = 0;
    const BundleEnds& ends = way.trace(at, pupil);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (ends.reached(i)) {
            ++reached;
        } else if (is_obstructed(way.path, ends, i)) {
            ++obstructed;
        } else {
            add_share(found.point.ends, {ends.surface[i], ends.fate[i] == RayFate::leaked, 1});
        }
    }
    const auto all = static_cast<double>(pupil.size());
    found.obstructed = static_cast<double>(obstructed) / all;
    const double open = obstructed < pupil.size() ? all - static_cast<double>(obstructed) : 1;
    found.point.relative = static_cast<double>(reached) / open;
    for (EndShare& end : found.point.ends)
        end.share /= open;
    give_back_leaks(way, found.point, pupil);
    return found;
}

// For field points that few rays do not describe: so many that the worst point stays well within half a percent.
constexpr int rays_where_few_fail = 4096;
// For those where light leaks: what is kept of it is weighed by rays.
constexpr int rays_to_weigh_leaks = 1024;

std::vector<PointLight>
light_points(LitPath& way, std::span<const glm::dvec2> places, ClippingEffort effort) {
    std::vector<FieldSlope> slopes;
    slopes.reserve(places.size());
    for (const glm::dvec2& at : places)
        slopes.push_back(way.slope_of(at));
    const bool is_few = effort.form == LightForm::few_rays;
    std::vector<std::optional<PointLight>> few(places.size());
    if (is_few) few = few_ray_light(way.train, way.path, places, slopes);
    std::vector<glm::dvec2> pupil;
    std::vector<glm::dvec2> leaks;
    std::vector<PointLight> lights;
    lights.reserve(places.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (few[i]) {
            lights.push_back(*std::move(few[i]));
            LitPoint& point = lights.back().point;
            if (std::any_of(point.ends.begin(), point.ends.end(),
                            [](const EndShare& end) { return end.is_leak; })) {
                if (leaks.empty()) leaks = sunflower(rays_to_weigh_leaks);
                way.trace(point.at, leaks);
                give_back_leaks(way, point, leaks);
            }
            continue;
        }
        if (pupil.empty()) pupil = sunflower(is_few ? rays_where_few_fail : effort.rays_per_point);
        lights.push_back(counted_light(way, places[i], pupil));
    }
    return lights;
}

// A direction of one ring, in turns, and its light.
struct RingDirection {
    double turn = 0;
    LitPoint light;
};

struct Ring {
    double fraction = 0;                    ///< of the field stop's radius
    std::vector<RingDirection> directions;  ///< by rising turn
    [[nodiscard]] glm::dvec2 place(double turn) const {
        const double angle = 2 * std::numbers::pi * turn;
        return fraction * glm::dvec2{std::cos(angle), std::sin(angle)};
    }
    /// To the next direction, round the ring.
    [[nodiscard]] double gap_after(std::size_t i) const {
        const double next =
            i + 1 < directions.size() ? directions[i + 1].turn : directions.front().turn + 1;
        return next - directions[i].turn;
    }
    [[nodiscard]] const LitPoint& after(std::size_t i) const {
        return directions[(i + 1) % directions.size()].light;
    }
};

// Every other ring is turned by half a step.
Ring ring_of(int number) {
    Ring ring{static_cast<double>(number) / lit_ring_count, {}};
    const int count = number == 0 ? 1 : lit_azimuth_count;
    for (int i = 0; i < count; ++i) {
        const double turn = number == 0 ? 0 : (i + (number % 2) * 0.5) / lit_azimuth_count;
        ring.directions.push_back({turn, {ring.place(turn), 1, {}}});
    }
    return ring;
}

// Light that comes or goes by as much between neighbours may do so anywhere between them.
constexpr double steep = 0.4;
constexpr std::size_t most_directions = 135;

bool is_steep(const Ring& ring) {
    if (ring.directions.size() < 2 || 3 * ring.directions.size() > most_directions) return false;
    for (std::size_t i = 0; i < ring.directions.size(); ++i) {
        if (std::abs(ring.directions[i].light.relative - ring.after(i).relative) > steep)
            return true;
    }
    return false;
}

// Three times as many directions for each ring that needs them: even steps all round, for only those see a square's four
// sides as many times. False when no ring does.
bool look_closer(LitPath& way, std::span<Ring> rings, ClippingEffort effort) {
    std::vector<glm::dvec2> places;
    const auto between = [](const Ring& ring, std::size_t i, int third) {
        return ring.directions[i].turn + ring.gap_after(i) * third / 3;
    };
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; is_steep(ring) && i < ring.directions.size(); ++i) {
            for (const int third : {1, 2})
                places.push_back(ring.place(between(ring, i, third)));
        }
    }
    if (places.empty()) return false;
    auto found = light_points(way, places, effort);
    std::size_t next = 0;
    for (Ring& ring : rings) {
        if (!is_steep(ring)) continue;
        std::vector<RingDirection> finer;
        for (std::size_t i = 0; i < ring.directions.size(); ++i) {
            finer.push_back(ring.directions[i]);
            for (const int third : {1, 2})
                finer.push_back({between(ring, i, third), std::move(found[next++].point)});
        }
        ring.directions = std::move(finer);
    }
    return true;
}

// Straight from each direction to the next.
LitRing gather(const Ring& ring) {
    LitRing sum{ring.fraction, 0, 1, {}};
    const std::size_t count = ring.directions.size();
    for (std::size_t i = 0; i < count; ++i) {
        const LitPoint& point = ring.directions[i].light;
        const double share = (ring.gap_after(i) + ring.gap_after((i + count - 1) % count)) / 2;
        sum.relative += point.relative * share;
        sum.lowest = std::min(sum.lowest, point.relative);
        for (EndShare end : point.ends) {
            end.share *= share;
            add_share(sum.ends, end);
        }
    }
    std::sort(sum.ends.begin(), sum.ends.end(),
              [](const EndShare& a, const EndShare& b) { return a.share > b.share; });
    return sum;
}

}  // namespace

RingLight
ring_light(LitPath& way, std::span<const int> numbers, double fully_lit, ClippingEffort effort) {
    BEAMFORK_EXPECTS(!numbers.empty());
    std::vector<Ring> rings;
    std::vector<glm::dvec2> places;
    for (const int number : numbers) {
        rings.push_back(ring_of(number));
        if (rings.size() > 1 && rings.back().fraction <= fully_lit) continue;
        for (const RingDirection& direction : rings.back().directions)
            places.push_back(direction.light.at);
    }
    auto lights = light_points(way, places, effort);
    RingLight found;
    found.obstructed = lights.front().obstructed;
    std::size_t next = 0;
    for (Ring& ring : rings) {
        const bool is_known = &ring != rings.data() && ring.fraction <= fully_lit;
        for (RingDirection& direction : ring.directions) {
            if (!is_known) direction.light = std::move(lights[next++].point);
            found.points.push_back(direction.light);
        }
    }
    while (look_closer(way, rings, effort)) {
    }
    for (const Ring& ring : rings)
        found.rings.push_back(gather(ring));
    return found;
}

}  // namespace beamfork
