#include "scene/unfolded_path/unfolded_cones.hpp"

#include <algorithm>
#include <cmath>

#include "trace/bundle.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

namespace {

constexpr int fan_rays = 17;         // before the borders between fates are looked for
constexpr int border_halvings = 10;  // a border is known to a ten-thousandth of the aperture
constexpr double rim_margin = 1e-6;  // so that the objective's edge itself takes nothing

struct FanRay {
    double pupil = 0;  ///< -1 .. 1
    RayFate fate = RayFate::reached;
    std::size_t surface = 0;
    bool is_shadowed = false;       ///< by the telescope's own obstruction: no loss
    std::vector<AxisPlace> places;  ///< empty when it ends before the drawn light begins

    [[nodiscard]] bool ends_as(const FanRay& other) const {
        return fate == other.fate && surface == other.surface
               && places.empty() == other.places.empty();
    }
};

class FanTracer {
public:
    FanTracer(const Train& train,
              const EyePath& path,
              const UnfoldedAxis& axis,
              glm::dvec2 across,
              double end)
        : train_(train),
          path_(path),
          axis_(axis),
          across_(across),
          end_(end),
          tracer_(path, primary_wavelength),
          first_(last_telescope_surface(path)) {}

    [[nodiscard]] std::vector<FanRay> fan(FieldSlope slope) const {
        std::vector<FanRay> rays;
        for (int i = 0; i < fan_rays; ++i) {
            FanRay ray = trace(slope, (1 - rim_margin) * (2.0 * i / (fan_rays - 1) - 1));
            if (!rays.empty() && !rays.back().ends_as(ray)) add_border(slope, rays, ray);
            rays.push_back(std::move(ray));
        }
        return rays;
    }

private:
    // The last ray that ends as the one before and the first that ends as the one behind the border.
    void add_border(FieldSlope slope, std::vector<FanRay>& rays, const FanRay& behind) const {
        FanRay low = rays.back();
        FanRay high = behind;
        for (int i = 0; i < border_halvings; ++i) {
            FanRay middle = trace(slope, (low.pupil + high.pupil) / 2);
            (middle.ends_as(low) ? low : high) = std::move(middle);
        }
        rays.push_back(std::move(low));
        rays.push_back(std::move(high));
    }

    [[nodiscard]] AxisPlace place(const Point& unfolded) const {
        return {unfolded.z, glm::dot(glm::dvec2(unfolded), across_)};
    }

    [[nodiscard]] FanRay trace(FieldSlope slope, double pupil) const {
        constexpr double ahead = 10;  // of the telescope, mm
        const Ray start = ray_into(train_, slope, pupil * across_, ahead);
        RayBundle bundle;
        bundle.add(start);
        const TracedRay traced = tracer_.follow(bundle).front();
        const std::size_t last = traced.end.surface;
        FanRay ray{pupil, traced.end.fate, last, false, {}};
        ray.is_shadowed = traced.is_lost() && path_.surfaces[last].kind == SurfaceKind::obstruction;
        bool is_second_of_roof = false;
        for (const RayCorner& corner : traced.corners) {
            if (!corner.surface || *corner.surface < first_) continue;
            const std::size_t i = *corner.surface;
            const bool is_roof = path_.surfaces[i].is_roof;
            const Unfolding& unfolding = i == first_ ? axis_.behind[i]
                                         : is_roof   ? roof_unfolding(i, is_second_of_roof)
                                                     : axis_.before[i];
            is_second_of_roof = is_roof && !is_second_of_roof;
            // An ideal objective lets light go on from a sphere about the image, not from its own plane.
            ray.places.push_back(place(unfolding.point(i == first_ ? corner.leaves : corner.at)));
        }
        if (ray.places.size() < 2) ray.places.clear();
        if (!traced.is_lost()) follow_to_the_end(ray, traced.end.ray);
        return ray;
    }

    // Light meets one face of a roof before the fold of both, the other behind it, in either order.
    [[nodiscard]] const Unfolding& roof_unfolding(std::size_t face, bool is_second) const {
        const std::size_t pair = first_of_roof(path_, face);
        return is_second ? axis_.behind[pair + 1] : axis_.before[pair];
    }

    void follow_to_the_end(FanRay& ray, const Ray& arrived) const {
        const Unfolding& unfolding = axis_.behind.back();
        const Point at = unfolding.point(arrived.origin);
        const Direction along = unfolding.direction(arrived.direction);
        if (end_ > at.z) ray.places.push_back(place(at + (end_ - at.z) / along.z * along));
    }

    const Train& train_;
    const EyePath& path_;
    const UnfoldedAxis& axis_;
    glm::dvec2 across_;
    double end_;
    BundleTracer tracer_;
    std::size_t first_;
};

double height_at(const std::vector<AxisPlace>& places, double at) {
    const auto next = std::find_if(places.begin() + 1, places.end() - 1,
                                   [&](const AxisPlace& place) { return place.x >= at; });
    const AxisPlace& from = *(next - 1);
    const double length = next->x - from.x;
    return length == 0 ? next->y : glm::mix(from.y, next->y, (at - from.x) / length);
}

// Between two places the rays may cross, at a focus.
void add_crossing(std::vector<BandPlace>& places, const BandPlace& next) {
    const BandPlace& last = places.back();
    const double before = last.a - last.b;
    const double behind = next.a - next.b;
    if (before * behind >= 0) return;
    const double t = before / (before - behind);
    const double height = glm::mix(last.a, next.a, t);
    places.push_back({glm::mix(last.at, next.at, t), height, height});
}

// Both rays' corners, as far as both of them go.
LightBand band_between(const FanRay& a, const FanRay& b) {
    LightBand band{a.fate, a.surface, {}, std::abs(b.pupil - a.pupil) / 2};
    const double low = std::max(a.places.front().x, b.places.front().x);
    const double high = std::min(a.places.back().x, b.places.back().x);
    std::vector<double> stations{low, high};
    for (const FanRay* ray : {&a, &b}) {
        for (const AxisPlace& place : ray->places) {
            if (place.x > low && place.x < high) stations.push_back(place.x);
        }
    }
    std::sort(stations.begin(), stations.end());
    for (const double at : stations) {
        const BandPlace next{at, height_at(a.places, at), height_at(b.places, at)};
        if (!band.places.empty()) add_crossing(band.places, next);
        band.places.push_back(next);
    }
    return band;
}

LightCone cone_of(const std::vector<FanRay>& rays, double field) {
    LightCone cone{field, {}};
    for (std::size_t first = 0; first < rays.size();) {
        std::size_t last = first;
        while (last + 1 < rays.size() && rays[last + 1].ends_as(rays[first]))
            ++last;
        if (!rays[first].places.empty() && !rays[first].is_shadowed)
            cone.bands.push_back(band_between(rays[first], rays[last]));
        first = last + 1;
    }
    return cone;
}

}  // namespace

double LightCone::arriving() const {
    double sum = 0;
    for (const LightBand& band : bands)
        sum += band.fate == RayFate::reached ? band.width : 0;
    return sum;
}

std::size_t last_telescope_surface(const EyePath& path) {
    std::size_t last = 0;
    const std::size_t telescope = path.surfaces.front().part;
    for (std::size_t i = 0; i < path.surfaces.size(); ++i) {
        const PlacedSurface& surface = path.surfaces[i];
        if (surface.part == telescope && !is_opening(surface.kind)) last = i;
    }
    return last;
}

std::vector<LightCone> traced_cones(const Train& train,
                                    const EyePath& path,
                                    const UnfoldedAxis& axis,
                                    glm::dvec2 across,
                                    double end) {
    const FanTracer tracer(train, path, axis, across, end);
    const FieldMap map = field_map(train, path.eye);
    const PlacedSurface& stop = path.surfaces.back();
    const Direction aside = axis.behind.back().world_direction({across, 0});
    const glm::dvec2 on_stop{path.world_from_field_stop.direction_in(aside)};
    const double radius = inner_radius(stop.aperture);
    std::vector<LightCone> cones;
    for (const double field : {0.0, 1.0, -1.0})
        cones.push_back(cone_of(tracer.fan(map.slope_at(field * radius * on_stop)), field));
    return cones;
}

}  // namespace beamfork
