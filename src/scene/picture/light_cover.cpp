#include "scene/picture/light_cover.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

namespace {

void cover_place(LightCover& cover, glm::vec2 at) {
    const auto columns = static_cast<float>(cover.columns);
    const auto rows = static_cast<float>(cover.rows);
    const glm::vec2 cell = at / cover_cell_px;
    if (!(cell.x >= 0 && cell.y >= 0 && cell.x < columns && cell.y < rows)) return;
    cover.lit[static_cast<std::size_t>(cell.y) * cover.columns + static_cast<std::size_t>(cell.x)] =
        true;
}

class CoverPainter {
public:
    CoverPainter(LightCover& cover, const Camera& camera, Viewport viewport)
        : cover_(cover), camera_(camera), viewport_(viewport) {}

    void paint(const glm::vec3& from, const glm::vec3& to) {
        const auto a = project(camera_, from, viewport_);
        const auto b = project(camera_, to, viewport_);
        if (a && b) cover_line(cover_, *a, *b);
    }

    // Some of its corners joined: enough to keep words off.
    void paint(const Mesh& mesh) {
        constexpr std::size_t most = 40;
        const std::size_t step = std::max<std::size_t>(1, mesh.vertices.size() / most);
        for (std::size_t i = step; i < mesh.vertices.size(); i += step)
            paint(mesh.vertices[i - step].position, mesh.vertices[i].position);
    }

private:
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

// A stretch meets a box when it can be clipped to it (Liang, Barsky, ACM Trans. Graphics 3(1), 1-22, 1984).
bool crosses(glm::vec2 from, glm::vec2 to, const PixelBox& box) {
    float enter = 0;
    float leave = 1;
    for (int axis = 0; axis < 2; ++axis) {
        const float along = to[axis] - from[axis];
        if (std::abs(along) < 1e-6F) {
            if (from[axis] < box.low[axis] || from[axis] > box.high[axis]) return false;
            continue;
        }
        const float a = (box.low[axis] - from[axis]) / along;
        const float b = (box.high[axis] - from[axis]) / along;
        enter = std::max(enter, std::min(a, b));
        leave = std::min(leave, std::max(a, b));
    }
    return enter <= leave;
}

void cover_line(LightCover& cover, glm::vec2 from, glm::vec2 to) {
    // A ray that passes close to the viewer is long in pixels.
    constexpr float longest_cells = 4096;
    const float cells = std::min(longest_cells, glm::distance(from, to) / cover_cell_px);
    const int steps = 1 + static_cast<int>(2 * cells);
    for (int i = 0; i <= steps; ++i)
        cover_place(cover, glm::mix(from, to, static_cast<float>(i) / static_cast<float>(steps)));
}

namespace {

PixelBox box_round(const Bounds& bounds, const Camera& camera, Viewport viewport) {
    constexpr float far = 1e9F;
    PixelBox box{glm::vec2(far), glm::vec2(-far)};
    for (int corner = 0; corner < 8; ++corner) {
        const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
        const auto at = project(camera, glm::mix(bounds.low, bounds.high, share), viewport);
        if (!at) return {};
        box = {glm::min(box.low, *at), glm::max(box.high, *at)};
    }
    return box;
}

}  // namespace

LightCover light_cover(const Frame& frame, const Camera& camera, Viewport viewport) {
    LightCover cover;
    cover.columns = 1 + static_cast<int>(viewport.width / cover_cell_px);
    cover.rows = 1 + static_cast<int>(viewport.height / cover_cell_px);
    cover.lit.assign(static_cast<std::size_t>(cover.columns) * cover.rows, false);
    cover.core = box_round(frame.head_bounds, camera, viewport);
    CoverPainter painter(cover, camera, viewport);
    for (const LightRibbon& ribbon : frame.light)
        painter.paint(ribbon.from, ribbon.to);
    for (const Mesh& mesh : frame.meshes)
        painter.paint(mesh);
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
