#include "app/sight_view/sight_stage.hpp"

namespace beamfork {

SightView SightStage::view() const {
    return {sights_, reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture_.name())),
            shown_};
}

bool SightStage::update_sights(const Workbench& bench) {
    // A drag that goes on would only make pictures that nobody sees in time.
    if (bench.report_revision() == sights_revision_ || bench.is_coarse()) return false;
    sights_revision_ = bench.report_revision();
    if (bench.report() == nullptr) return false;
    sights_ = std::make_shared<const Sights>(sights_of(bench.document().setup, *bench.report()));
    return true;
}

void SightStage::show(const DrawnSight& drawn) {
    texture_.upload(drawn.image.width, drawn.image.height, drawn.image.rgba);
    shown_ = drawn.request;
}

bool SightStage::refresh(const Workbench& bench, const std::optional<SightRequest>& wanted) {
    if (!wanted) return false;
    const bool is_new = update_sights(bench);
    if (sights_ != nullptr && (is_new || asked_ != wanted)) {
        asked_ = wanted;
        drawer_.ask(sights_, *wanted);
    }
    const auto drawn = drawer_.take();
    if (drawn) show(*drawn);
    return is_new || drawn.has_value();
}

void SightStage::draw_now(const Workbench& bench, const std::optional<SightRequest>& wanted) {
    if (!wanted) return;
    const bool is_new = update_sights(bench);
    if (sights_ == nullptr || (!is_new && asked_ == wanted)) return;
    asked_ = wanted;
    show({*wanted, draw_sight(*sights_, *wanted)});
}

}  // namespace beamfork
