#include "ui/light/field_stop_picture.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "study/findings/report.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

namespace {

constexpr int rings = lit_ring_count;
constexpr int sectors = 24;

ImU32 light_ink(double relative) {
    // Half the light looks half as bright when the linear value is encoded for the screen (sRGB, about 1/2.2).
    const double shown = std::pow(std::clamp(relative, 0.0, 1.0), 1 / 2.2);
    const std::uint32_t full = srgb_hex(ColourRole::undivided_beam);
    const auto channel = [&](int shift) {
        return static_cast<int>(std::lround(((full >> shift) & 255) * shown));
    };
    return IM_COL32(channel(16), channel(8), channel(0), 255);
}

}  // namespace

void draw_field_stop(
    ImDrawList& list, const Report& report, Eye eye, ImVec2 centre, float radius, ColourRole rim) {
    const EyeClipping& clipping = report.clipping_of(eye);
    list.AddCircleFilled(centre, radius, colour(Tone::ground));
    const float inner = radius - grid(0.75F);
    const ImVec2 white = ImGui::GetFontTexUvWhitePixel();
    list.PrimReserve(rings * sectors * 6, (rings + 1) * sectors);
    const auto base = list._VtxCurrentIdx;  // reserving may begin a new run of vertices
    for (int ring = 0; ring <= rings; ++ring) {
        for (int sector = 0; sector < sectors; ++sector) {
            const double r = static_cast<double>(ring) / rings;
            const double angle = 2 * std::numbers::pi * sector / sectors;
            const glm::dvec2 at{r * std::cos(angle), r * std::sin(angle)};
            list.PrimWriteVtx({centre.x + inner * static_cast<float>(at.x),
                               centre.y - inner * static_cast<float>(at.y)},
                              white, light_ink(relative_at(clipping, at)));
        }
    }
    for (int ring = 0; ring < rings; ++ring) {
        for (int sector = 0; sector < sectors; ++sector) {
            const int next = (sector + 1) % sectors;
            const auto index = [&](int r, int s) {
                return static_cast<ImDrawIdx>(base + r * sectors + s);
            };
            for (const ImDrawIdx corner :
                 {index(ring, sector), index(ring + 1, sector), index(ring + 1, next),
                  index(ring, sector), index(ring + 1, next), index(ring, next)}) {
                list.PrimWriteIdx(corner);
            }
        }
    }
    list.AddCircle(centre, inner + grid(0.4F), colour(rim), 0, grid(0.5F));
}

}  // namespace beamfork
