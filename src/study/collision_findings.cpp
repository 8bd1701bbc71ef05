#include <cmath>

#include "study/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

// An opening or a lens that stands behind the face it should be in front of: its part is too long.
void collision_findings(const FindingScope& scope) {
    for (const EyePath& path : scope.report.train.paths) {
        const PlacedSurface* face = nullptr;
        for (const PlacedSurface& surface : path.surfaces) {
            const bool is_open =
                surface.kind == SurfaceKind::stop || surface.kind == SurfaceKind::thin_lens;
            const double depth = face ? face->axis_position - surface.axis_position : 0;
            if (is_open && depth > 0.01 && surface.part != face->part) {
                scope.add(
                    Severity::fails, "parts_collide",
                    fmt::format("{}: its {} would reach {:.1f} mm into the {} of {}.",
                                scope.name(surface.part), surface.name, depth, face->name,
                                scope.name(face->part)),
                    fmt::format("Shorten it, or put a spacer of {:.0f} mm or more between the two.",
                                std::ceil(depth)),
                    surface.part);
                return;
            }
            if (!is_open) face = &surface;
        }
    }
}

}  // namespace beamfork
