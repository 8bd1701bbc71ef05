#include "render/gpu_light.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

namespace beamfork {

namespace {

// How few rays a picture may have; each group of the buffer holds the rays of the one before, too.
constexpr std::array ray_shares{0.25F, 0.5F, 1.0F};

float breadth_of(const std::vector<LightRibbon>& light) {
    float low = 0;
    float high = 0;
    for (const LightRibbon& ribbon : light) {
        low = std::min({low, ribbon.from.x, ribbon.to.x});
        high = std::max({high, ribbon.from.x, ribbon.to.x});
    }
    return std::max(1.0F, high - low);
}

}  // namespace

void GpuLight::create() {
    ribbons_.create();
    extras_.create();
    array_with_extras_ =
        instance_array(attribute_count<RibbonInstance>() + attribute_count<RibbonExtras>());
}

void GpuLight::append(const LightRibbon& ribbon, const Palette& palette) {
    ribbons_.add({ribbon.from,
                  ribbon.to,
                  palette.of(ribbon.role) * ribbon.strength,
                  {ribbon.from_share, ribbon.to_share}});
    extras_.add({palette.of(pupil_place(ribbon.pupil)) * ribbon.strength,
                 {ribbon.from_path_mm, ribbon.to_path_mm}});
}

void GpuLight::upload(const Frame& frame, const Palette& palette) {
    ribbons_.clear();
    extras_.clear();
    extras_are_uploaded_ = false;
    for (const bool clipped : {false, true}) {
        const std::size_t first = ribbons_.size();
        float from_rank = 0;
        for (std::size_t i = 0; i < ray_shares.size(); ++i) {
            const bool is_last = i + 1 == ray_shares.size();
            const float to_rank = is_last ? std::numeric_limits<float>::infinity() : ray_shares[i];
            for (const LightRibbon& ribbon : frame.light) {
                if (ribbon.clipped == clipped && ribbon.rank >= from_rank && ribbon.rank < to_rank)
                    append(ribbon, palette);
            }
            from_rank = to_rank;
            groups_[clipped ? 1 : 0][i] = {first, static_cast<GLsizei>(ribbons_.size() - first)};
        }
    }
    ribbons_.upload();
    ray_count_ = std::max(1, frame.ray_count);
    breadth_mm_ = breadth_of(frame.light);
}

void GpuLight::upload_extras() {
    if (!std::exchange(extras_are_uploaded_, true)) extras_.upload();
}

InstanceRange GpuLight::range(bool clipped, float rays) const {
    const auto* const enough = std::find_if(ray_shares.begin(), ray_shares.end() - 1,
                                            [rays](float share) { return share >= rays; });
    return groups_[clipped ? 1 : 0][enough - ray_shares.begin()];
}

void GpuLight::draw(bool with_clipped, float rays) const {
    ribbons_.draw(range(false, rays));
    if (with_clipped) ribbons_.draw(range(true, rays));
}

void GpuLight::draw_with_extras(bool with_clipped, float rays) const {
    glBindVertexArray(array_with_extras_.name());
    for (const bool clipped : {false, true}) {
        const InstanceRange wanted = range(clipped, rays);
        if (wanted.count == 0 || (clipped && !with_clipped)) continue;
        ribbons_.bind_attributes(wanted);
        extras_.bind_attributes(wanted, static_cast<GLuint>(attribute_count<RibbonInstance>()));
        draw_instances(wanted);
    }
}

}  // namespace beamfork
