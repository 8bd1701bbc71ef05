#include "train/lens_room.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

double LensRoom::placed() const {
    return std::clamp(stated, before.place, std::max(before.place, behind.place));
}

double LensRoom::lowest() const { return std::ceil(100 * before.place - 1e-9) / 100; }

double LensRoom::highest() const { return std::floor(100 * behind.place + 1e-9) / 100; }

double LensRoom::inside() const {
    constexpr double rounding = 1e-9;  // a lens that touches a face still has room
    const double beyond = std::abs(stated - placed());
    return beyond > rounding ? beyond : 0;
}

const Surface* lens_of(const PartLayout& layout) {
    const auto found =
        std::find_if(layout.surfaces.begin(), layout.surfaces.end(),
                     [](const Surface& surface) { return surface.kind == SurfaceKind::thin_lens; });
    return found == layout.surfaces.end() ? nullptr : &*found;
}

std::optional<LensNeighbour> next_face(const Setup& setup,
                                       const std::vector<std::size_t>& in_light,
                                       const std::vector<PartLayout>& layouts,
                                       std::size_t lens) {
    // Up to there all is air and straight: a stated light path is a length.
    const auto length_of = [&](std::size_t i) {
        const auto stated = stated_light_path(setup.parts[in_light[i]].body);
        return stated ? stated->value : layouts[i].part_from_exit.origin.z;
    };
    double entry = length_of(lens);
    for (std::size_t i = lens + 1; i < layouts.size(); ++i) {
        for (const Surface& surface : layouts[i].surfaces) {
            if (is_opening(surface.kind)) continue;
            return LensNeighbour{in_light[i], surface.name,
                                 entry + surface.part_from_surface.origin.z};
        }
        entry += length_of(i);
    }
    return std::nullopt;
}

}  // namespace beamfork
