#include "app/stage/stage_pair.hpp"

namespace beamfork {

Result<StagePair> StagePair::create() {
    auto stage = Stage::create();
    if (!stage) return tl::make_unexpected(stage.error());
    return StagePair(*std::move(stage));
}

Result<bool> StagePair::show(const Frame& frame, const Frame* other, const Stage::Look& look) {
    const auto drawn = stage_.show(frame, look);
    if (!drawn) return drawn;
    if (other == nullptr) {
        other_.reset();
        return drawn;
    }
    if (!other_) {
        auto stage = Stage::create();
        if (!stage) return tl::make_unexpected(stage.error());
        other_ = *std::move(stage);
    }
    Stage::Look unpicked = look;
    unpicked.highlighted_part = -1;  // its parts are others
    unpicked.emphasis = {};
    const auto other_drawn = other_->show(*other, unpicked);
    if (!other_drawn) return other_drawn;
    return *drawn || *other_drawn;
}

}  // namespace beamfork
