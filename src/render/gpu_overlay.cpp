#include "render/gpu_overlay.hpp"

namespace beamfork {

void GpuLines::upload(const std::vector<Line>& lines, const Palette& palette) {
    lines_.clear();
    for (const bool on_top : {false, true}) {
        const std::size_t first = lines_.size();
        auto& groups = groups_[on_top ? 1 : 0];
        groups.clear();
        for (const Line& line : lines) {
            if (line.on_top != on_top) continue;
            const bool goes_on = !groups.empty() && groups.back().part == line.part
                                 && groups.back().is_result == line.is_result;
            if (!goes_on) groups.push_back({line.part, line.is_result, {lines_.size(), 0}});
            ++groups.back().range.count;
            lines_.add({line.from, line.to, palette.of(line.role) * line.shade, line.width_px,
                        line.dashed ? 1.0F : 0.0F});
        }
        ranges_[on_top ? 1 : 0] = {first, static_cast<GLsizei>(lines_.size() - first)};
    }
    lines_.upload();
}

void GpuMarks::upload(const std::vector<Mark>& marks, const Palette& palette) {
    marks_.clear();
    for (const bool on_top : {false, true}) {
        for (const bool clipped : {false, true}) {
            const std::size_t first = marks_.size();
            for (const Mark& mark : marks) {
                if (mark.on_top != on_top || mark.clipped != clipped) continue;
                marks_.add(
                    {mark.at, palette.of(mark.role), mark.size_px, static_cast<float>(mark.shape)});
            }
            ranges_[on_top ? 1 : 0][clipped ? 1 : 0] = {
                first, static_cast<GLsizei>(marks_.size() - first)};
        }
    }
    marks_.upload();
}

void GpuMarks::draw(bool on_top, bool with_clipped) const {
    marks_.draw(ranges_[on_top ? 1 : 0][0]);
    if (with_clipped) marks_.draw(ranges_[on_top ? 1 : 0][1]);
}

}  // namespace beamfork
