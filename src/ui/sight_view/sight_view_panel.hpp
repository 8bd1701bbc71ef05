// Pictures computed from the traced rays: what each eye sees, apart, merged, and one eye against two.
#pragma once

#include <memory>
#include <optional>

#include "scene/sight_view/sight_view_picture.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct SightView {
    std::shared_ptr<const Sights> sights;  ///< what each eye sees; null: not traced yet
    ImTextureID texture{};                 ///< pictures of it, row 0 at the top; null: none yet ...
    SightRequest shown{};                  ///< ... and what was asked for
};

struct SightState {
    SightRequest request;  ///< what each eye is to see
    bool fits = true;      ///< as close as suits the subject, until the user goes elsewhere
};

struct SightUi : Ui {
    const SightView& view;
    SightState& state;
    std::optional<SightRequest>& asks;
};

void draw_sight_view_panel(const SightUi& ui);

}  // namespace beamfork
