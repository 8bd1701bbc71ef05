#include "study/light/few_ray_light.hpp"

#include <algorithm>
#include <cmath>

#include "trace/pupil_outline.hpp"

namespace beamfork {

void add_share(std::vector<EndShare>& ends, const EndShare& more) {
    for (EndShare& end : ends) {
        if (end.surface == more.surface && end.is_leak == more.is_leak) {
            end.share += more.share;
            return;
        }
    }
    ends.push_back(more);
}

namespace {

// A ray that runs on to where nothing is defined leaves no numbers.
bool are_numbers(const std::vector<PupilBound>& bounds) {
    return std::all_of(bounds.begin(), bounds.end(), [](const PupilBound& bound) {
        return std::isfinite(bound.u.residual) && std::isfinite(bound.v.residual)
               && (!bound.gate || std::isfinite(bound.gate->residual));
    });
}

std::optional<PointLight>
light_from(const PupilLight& light, const std::vector<PupilBound>& bounds, glm::dvec2 at) {
    PointLight found{{at, 0, {}}, 0};
    for (std::size_t i = 0; i < bounds.size(); ++i) {
        if (bounds[i].shape == PupilBound::Shape::block) found.obstructed += light.lost[i];
    }
    const double open = found.obstructed < 1 ? 1 - found.obstructed : 1;
    if (!(light.doubt <= most_few_ray_doubt * open)) return std::nullopt;
    found.point.relative = std::min(light.lit / open, 1.0);
    for (std::size_t i = 0; i < bounds.size(); ++i) {
        if (bounds[i].shape == PupilBound::Shape::block || light.lost[i] <= 0) continue;
        add_share(found.point.ends, {bounds[i].surface, bounds[i].is_leak, light.lost[i] / open});
    }
    return found;
}

}  // namespace

std::vector<std::optional<PointLight>> few_ray_light(const Train& train,
                                                     const EyePath& path,
                                                     std::span<const glm::dvec2> places,
                                                     std::span<const FieldSlope> slopes) {
    BEAMFORK_EXPECTS(places.size() == slopes.size());
    std::vector<std::optional<PointLight>> found(places.size());
    auto map = PupilMap::of(train, path);
    if (!map) return found;
    std::vector<PupilBound> bounds;
    PupilOutline outline;
    for (std::size_t first = 0; first < slopes.size(); first += fields_at_once) {
        const std::size_t count = std::min(fields_at_once, slopes.size() - first);
        map->look_from(slopes.subspan(first, count));
        for (std::size_t field = 0; field < count; ++field) {
            if (!map->is_known(field)) continue;
            map->bounds_of(field, bounds);
            if (!are_numbers(bounds)) continue;
            found[first + field] = light_from(outline.light(bounds), bounds, places[first + field]);
        }
    }
    return found;
}

}  // namespace beamfork
