#include "study/focus/real_focus.hpp"

#include <cmath>

namespace beamfork {

namespace {

struct Crossing {
    glm::dvec2 at{0};     ///< on the field stop's plane
    glm::dvec2 slope{0};  ///< sideways per mm along the axis
};

std::vector<Crossing> crossings(const Train& train,
                                const EyePath& open,
                                const std::vector<glm::dvec2>& pupil,
                                std::size_t wavelength) {
    std::vector<Crossing> found;
    const BundleEnds ends = BundleTracer(open, wavelength).trace(bundle_into(train, {0, 0}, pupil));
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (!ends.reached(i)) continue;
        const Direction along = ends.along(i);
        found.push_back({ends.spot(i), glm::dvec2(along) / along.z});
    }
    return found;
}

struct Spot {
    double distance = 0;
    double rms = 0;
    glm::dvec2 centre{0};
};

// Least squares: the distance z at which the points at + z slope lie closest about their mean.
Spot smallest_spot(const std::vector<Crossing>& rays) {
    if (rays.empty()) return {};
    const auto count = static_cast<double>(rays.size());
    Crossing mean;
    for (const Crossing& ray : rays) {
        mean.at += ray.at / count;
        mean.slope += ray.slope / count;
    }
    double cross = 0;
    double square = 0;
    for (const Crossing& ray : rays) {
        cross += glm::dot(ray.at - mean.at, ray.slope - mean.slope);
        square += glm::dot(ray.slope - mean.slope, ray.slope - mean.slope);
    }
    Spot spot;
    spot.distance = square > 0 ? -cross / square : 0;
    spot.centre = mean.at + spot.distance * mean.slope;
    double blur = 0;
    for (const Crossing& ray : rays) {
        const glm::dvec2 off = ray.at + spot.distance * ray.slope - spot.centre;
        blur += glm::dot(off, off) / count;
    }
    spot.rms = std::sqrt(blur);
    return spot;
}

}  // namespace

RealFocus real_focus(const Train& train, Eye eye, std::size_t wavelength) {
    const EyePath open = without_stops(train.path(eye));
    const auto at_zone = [&](double zone) {
        std::vector<glm::dvec2> pupil = rim(8);
        for (glm::dvec2& point : pupil)
            point *= zone;
        return Millimetres{smallest_spot(crossings(train, open, pupil, wavelength)).distance};
    };
    // The middle of an obstructed aperture gives no light to the spot.
    auto lit_pupil = sunflower(64);
    std::erase_if(lit_pupil, [&](const glm::dvec2& point) {
        return glm::length(point) * train.objective_radius < train.obstruction_radius;
    });
    const Spot best = smallest_spot(crossings(train, open, lit_pupil, wavelength));
    return {at_zone(0.01), {best.distance}, at_zone(1), {best.rms}, best.centre};
}

}  // namespace beamfork
