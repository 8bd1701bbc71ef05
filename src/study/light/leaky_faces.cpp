#include "study/light/leaky_faces.hpp"

#include <algorithm>
#include <cmath>

#include "glass/coating.hpp"

namespace beamfork {

LeakyFaces::LeakyFaces(const EyePath& path) : turned_{path} {
    for (std::size_t i = 0; i < path.surfaces.size(); ++i) {
        if (path.surfaces[i].kind != SurfaceKind::total_reflection) continue;
        faces_.push_back(i);
        turned_.push_back(turned_.back());
        turned_.back().surfaces[i].kind = SurfaceKind::mirror;
    }
}

double LeakyFaces::kept(const Ray& start) const {
    double share = 1;
    std::size_t turned = 0;
    while (share > 0) {
        const RayEnd end = trace_ray(turned_[turned], start, primary_wavelength);
        if (end.fate == RayFate::reached) return share;
        const auto face = std::find(faces_.begin(), faces_.end(), end.surface);
        if (end.fate != RayFate::leaked || face == faces_.end()) return 0;
        const PlacedSurface& surface = turned_[turned].surfaces[end.surface];
        const double cosine = std::abs(glm::dot(end.ray.direction, surface.world_from_surface.z()));
        share *=
            face_reflectance(AntiReflection::uncoated, surface.index_before[primary_wavelength], 1,
                             Radians{std::acos(std::min(cosine, 1.0))});
        turned = static_cast<std::size_t>(face - faces_.begin()) + 1;
    }
    return share;
}

}  // namespace beamfork
