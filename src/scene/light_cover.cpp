#include "scene/light_cover.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

namespace {

class CoverPainter {
public:
    CoverPainter(LightCover& cover, const Camera& camera, Viewport viewport)
        : cover_(cover), camera_(camera), viewport_(viewport) {}

    void paint(const glm::vec3& from, const glm::vec3& to) {
        const auto a = project(camera_, from, viewport_);
        const auto b = project(camera_, to, viewport_);
        if (!a || !b) return;
        constexpr float longest_cells =
            4096;  // a ray that passes close to the viewer is long in pixels
        const float cells = std::min(longest_cells, glm::distance(*a, *b) / cover_cell_px);
        const int steps = 1 + static_cast<int>(2 * cells);
        for (int i = 0; i <= steps; ++i)
            paint(glm::mix(*a, *b, static_cast<float>(i) / static_cast<float>(steps)));
    }

private:
    void paint(glm::vec2 at) {
        if (!(at.x >= 0 && at.y >= 0 && at.x < viewport_.width && at.y < viewport_.height)) return;
        const int column = static_cast<int>(at.x / cover_cell_px);
        const int row = static_cast<int>(at.y / cover_cell_px);
        cover_.lit[static_cast<std::size_t>(row) * cover_.columns + column] = true;
    }

    LightCover& cover_;
    const Camera& camera_;
    Viewport viewport_;
};

}  // namespace

float LightCover::share_under(glm::vec2 low, glm::vec2 high) const {
    if (lit.empty()) return 0;
    const auto cell = [](float px, int count) {
        return std::clamp(static_cast<int>(px / cover_cell_px), 0, count - 1);
    };
    int covered = 0;
    int all = 0;
    for (int row = cell(low.y, rows); row <= cell(high.y, rows); ++row) {
        for (int column = cell(low.x, columns); column <= cell(high.x, columns); ++column) {
            ++all;
            if (lit[static_cast<std::size_t>(row) * columns + column]) ++covered;
        }
    }
    return static_cast<float>(covered) / static_cast<float>(all);
}

LightCover light_cover(const Frame& frame, const Camera& camera, Viewport viewport) {
    LightCover cover;
    cover.columns = 1 + static_cast<int>(viewport.width / cover_cell_px);
    cover.rows = 1 + static_cast<int>(viewport.height / cover_cell_px);
    cover.lit.assign(static_cast<std::size_t>(cover.columns) * cover.rows, false);
    CoverPainter painter(cover, camera, viewport);
    for (const LightRibbon& ribbon : frame.light)
        painter.paint(ribbon.from, ribbon.to);
    for (const ImageDisc& disc : frame.discs) {
        painter.paint(disc.centre - disc.right, disc.centre + disc.right);
        painter.paint(disc.centre - disc.up, disc.centre + disc.up);
    }
    for (const Line& line : frame.lines) {
        if (line.on_top) painter.paint(line.from, line.to);
    }
    return cover;
}

}  // namespace beamfork
