#include "app/sight_view/sight_stage.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

SightView SightStage::view() const {
    return {sights_, reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture_.name())),
            shown_};
}

bool SightStage::keep_report(const Workbench& bench) {
    if (bench.report_revision() == traced_revision_) return false;
    traced_revision_ = bench.report_revision();
    if (bench.report() == nullptr) return false;
    traced_ =
        std::make_shared<const TracedSetup>(TracedSetup{bench.document().setup, *bench.report()});
    return true;
}

void SightStage::show(DrawnSight drawn) {
    texture_.upload(drawn.image.width, drawn.image.height, drawn.image.rgba);
    sights_ = std::move(drawn.sights);
    shown_ = drawn.request;
}

bool SightStage::refresh(const Workbench& bench, std::optional<SightRequest> wanted) {
    if (!wanted) return false;
    // While something is dragged, as many pixels as follow the hand.
    constexpr int quick_pixels = 112;
    if (bench.is_coarse()) wanted->pixels = std::min(wanted->pixels, quick_pixels);
    const bool is_new = keep_report(bench);
    if (traced_ != nullptr && (is_new || asked_ != wanted)) {
        asked_ = wanted;
        drawer_.ask(traced_, *wanted);
    }
    auto drawn = drawer_.take();
    if (!drawn) return false;
    show(*std::move(drawn));
    return true;
}

void SightStage::draw_now(const Workbench& bench, const std::optional<SightRequest>& wanted) {
    if (!wanted) return;
    const bool is_new = keep_report(bench);
    if (traced_ == nullptr || (!is_new && asked_ == wanted)) return;
    asked_ = wanted;
    show(drawn_sight(*traced_, *wanted));
}

}  // namespace beamfork
