// Few rays against many: the light that few_ray_light finds is held against counted rays at every field point.
#pragma once

#include <algorithm>
#include <cmath>

#include "study/light/few_ray_light.hpp"

namespace test_light {

using namespace beamfork;

/// Counted rays that tell a share to within a thousandth (of 2048 known errors are below 0.43 % everywhere; the error
/// of a sunflower falls nearly as the inverse of its count).
constexpr int many_rays = 16384;

/// The agreed bound: of the objective's light, at every field point.
constexpr double agreed = 0.005;

struct LightAgreement {
    int points = 0;
    int by_few_rays = 0;     ///< of them, those whose rays did not have to be counted
    int in_between = 0;      ///< of them, those lit neither wholly nor not at all
    double worst = 0;        ///< share of the objective's light
    double worst_end = 0;    ///< likewise of what one surface takes
    double worst_field = 0;  ///< of the fully lit diameter, in field stops

    void operator+=(const LightAgreement& more) {
        points += more.points;
        by_few_rays += more.by_few_rays;
        in_between += more.in_between;
        worst = std::max(worst, more.worst);
        worst_end = std::max(worst_end, more.worst_end);
        worst_field = std::max(worst_field, more.worst_field);
    }
};

inline double share_at(const LitPoint& point, const EndShare& end) {
    const auto same =
        std::find_if(point.ends.begin(), point.ends.end(), [&](const EndShare& other) {
            return other.surface == end.surface && other.is_leak == end.is_leak;
        });
    return same == point.ends.end() ? 0 : same->share;
}

inline double worst_end(const LitPoint& a, const LitPoint& b) {
    double worst = 0;
    for (const EndShare& end : a.ends)
        worst = std::max(worst, std::abs(end.share - share_at(b, end)));
    for (const EndShare& end : b.ends)
        worst = std::max(worst, std::abs(end.share - share_at(a, end)));
    return worst;
}

inline int described_by_few_rays(const Train& train, Eye eye, const EyeClipping& settled) {
    const FieldMap map = field_map(train, eye);
    std::vector<glm::dvec2> places;
    std::vector<FieldSlope> slopes;
    for (const LitPoint& point : settled.points) {
        places.push_back(point.at);
        slopes.push_back(map.slope_at(point.at * (settled.field_stop.value / 2)));
    }
    const auto found = few_ray_light(train, train.path(eye), places, slopes);
    return static_cast<int>(std::count_if(found.begin(), found.end(),
                                          [](const auto& light) { return light.has_value(); }));
}

/// As a drag shows it, against the settled form.
inline LightAgreement light_agreement(const Train& train, Eye eye) {
    const EyeClipping settled = clipping(train, eye, {many_rays});
    const EyeClipping quick = clipping(train, eye, {192, LightForm::few_rays});
    LightAgreement found;
    found.points = static_cast<int>(quick.points.size());
    found.by_few_rays = described_by_few_rays(train, eye, settled);
    for (std::size_t i = 0; i < settled.points.size(); ++i) {
        const LitPoint& a = quick.points[i];
        const LitPoint& b = settled.points[i];
        found.worst = std::max(found.worst, std::abs(a.relative - b.relative));
        found.worst_end = std::max(found.worst_end, worst_end(a, b));
        if (b.relative > 0 && b.relative < 1) ++found.in_between;
    }
    found.worst_field =
        std::abs((quick.fully_illuminated_diameter - settled.fully_illuminated_diameter)
                 / settled.field_stop);
    return found;
}

inline LightAgreement light_agreement(const Train& train) {
    LightAgreement found;
    for (const Eye eye : both_eyes)
        found += light_agreement(train, eye);
    return found;
}

}  // namespace test_light
