// Light on the graphics card: one instance per ribbon, in groups, so that a pass draws a share of the rays, with or
// without those that are clipped, as one range each.
#pragma once

#include "render/instance_buffer.hpp"
#include "render/palette.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

class GpuLight {
public:
    void create();
    void upload(const Frame& frame, const Palette& palette);

    /// Of the rays that share, as LightRibbon::rank says: a quarter, half, or all of them.
    void draw(bool with_clipped, float rays) const;
    /// With RibbonExtras as attributes 4 and 5; `upload_extras` has been called since the last upload.
    void draw_with_extras(bool with_clipped, float rays) const;
    /// Once for each upload: light that neither is painted nor moves does without.
    void upload_extras();

    [[nodiscard]] int ray_count() const { return ray_count_; }
    /// Breadth of the light across the train, for its brightness, in mm.
    [[nodiscard]] float breadth_mm() const { return breadth_mm_; }

private:
    void append(const LightRibbon& ribbon, const Palette& palette);
    [[nodiscard]] InstanceRange range(bool clipped, float rays) const;

    InstanceBuffer<RibbonInstance> ribbons_;
    InstanceBuffer<RibbonExtras> extras_;
    VertexArray array_with_extras_;
    bool extras_are_uploaded_ = false;
    InstanceRange groups_[2][3];  // [clipped][up to a quarter of the rays, half, all]
    int ray_count_ = 1;
    float breadth_mm_ = 1;
};

}  // namespace beamfork
