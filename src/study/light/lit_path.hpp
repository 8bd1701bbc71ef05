// One eye's path made ready for light: rays from a field point through the whole pupil, one field point after the other.
#pragma once

#include "study/light/leaky_faces.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// Keeps references to the train and its path. Columns serve one field point after the other.
struct LitPath {
    const Train& train;
    const EyePath& path;
    FieldMap map;
    double radius;  ///< of the field stop, mm
    BundleTracer tracer;
    RayBundle bundle{};
    BundleEnds ends{};
    std::optional<LeakyFaces> leaky{};  ///< made when the first ray leaks

    LitPath(const Train& light_train, Eye eye)
        : train(light_train),
          path(light_train.path(eye)),
          map(field_map(light_train, eye)),
          radius(inner_radius(path.surfaces.back().aperture)),
          tracer(path, primary_wavelength) {}

    /// `at` in units of the field stop's radius, in its frame.
    [[nodiscard]] FieldSlope slope_of(glm::dvec2 at) const { return map.slope_at(at * radius); }

    /// Rays from there to those points of the pupil. Until the next call.
    const BundleEnds& trace(glm::dvec2 at, std::span<const glm::dvec2> pupil) {
        fill_bundle(bundle, train, slope_of(at), pupil);
        tracer.trace(bundle, ends);
        return ends;
    }

    /// Share that leaky faces keep of that ray's light and that arrives.
    double kept(glm::dvec2 at, glm::dvec2 pupil) {
        if (!leaky) leaky.emplace(path);
        constexpr double ahead = 10;  // as all rays start
        return leaky->kept(ray_into(train, slope_of(at), pupil, ahead));
    }
};

}  // namespace beamfork
