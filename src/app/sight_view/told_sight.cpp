#include "app/sight_view/told_sight.hpp"

#include <cstdint>

namespace beamfork {

bool ToldSight::show(const std::shared_ptr<const SightImage>& sight) {
    if (sight == shown_) return false;
    shown_ = sight;
    if (shown_) picture_.upload(shown_->width, shown_->height, shown_->rgba);
    return true;
}

ImTextureID ToldSight::texture() const {
    if (!shown_) return {};
    return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(picture_.name()));
}

}  // namespace beamfork
