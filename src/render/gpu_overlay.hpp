// Lines and marks on the graphics card, those that lie on top behind those that bodies may hide.
#pragma once

#include <vector>

#include "render/instance_buffer.hpp"
#include "render/palette.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

/// Lines that stand out or fade together, next to each other in the buffer.
struct LineGroup {
    int part = -1;
    bool is_result = false;
    InstanceRange range;
};

class GpuLines {
public:
    void create() { lines_.create(); }
    void upload(const std::vector<Line>& lines, const Palette& palette);
    void draw(bool on_top) const { lines_.draw(ranges_[on_top ? 1 : 0]); }
    [[nodiscard]] const std::vector<LineGroup>& groups(bool on_top) const {
        return groups_[on_top ? 1 : 0];
    }
    void draw(const LineGroup& group) const { lines_.draw(group.range); }

private:
    InstanceBuffer<LineInstance> lines_;
    InstanceRange ranges_[2];           // [on top]
    std::vector<LineGroup> groups_[2];  // [on top]
};

class GpuMarks {
public:
    void create() { marks_.create(); }
    void upload(const std::vector<Mark>& marks, const Palette& palette);
    void draw(bool on_top, bool with_clipped) const;

private:
    InstanceBuffer<MarkInstance> marks_;
    InstanceRange ranges_[2][2];  // [on top][clipped]
};

}  // namespace beamfork
