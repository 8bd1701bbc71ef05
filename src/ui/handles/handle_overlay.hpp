// Knobs on the parts in the picture by which their lengths are dragged: the drawtube, a spacer's length, a shifter's
// lens, the head's arms. Of the selected part, and of the one under the pointer.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "scene/handles/handle.hpp"
#include "scene/picture/light_cover.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// A knob that is held, as it was when the button went down.
struct HandleDrag {
    std::size_t part = 0;   ///< on which the knob is drawn
    std::size_t index = 0;  ///< among that part's handles
    Handle handle;
    HeldLength held;
    AxisDrag way;
    Camera camera;
    HandleView seen;  ///< last; it may be dragged out of the picture
};

/// Goes with the document.
struct HandleState {
    std::optional<HandleDrag> drag;  ///< of the knob that is held
    int knobs_of = -1;  ///< part whose knobs are shown because it is or was just pointed at
};

struct HandleUi : Ui {
    HandleState& state;
    Camera& camera;
    bool is_together = true;  ///< parts stand where they really are; else there are no knobs
    float foot = 0;           ///< of the picture, where its controls stand, in pixels
};

/// While a knob is held, the end of the part that does not move stays in its place in the picture, so that the other
/// follows the pointer although the train is laid out anew. Call before anything looks through the camera.
void follow_held_handle(const HandleUi& ui);

/// A handle as it is seen now.
struct Knob {
    std::size_t part = 0;
    std::size_t index = 0;
    Handle handle;
    HandleView view;
};

std::vector<Knob> visible_knobs(const HandleUi& ui, const Area& area);
/// What knobs, and the hint of the one that is held, take up, in pixels of the picture.
std::vector<PixelBox> rooms_of(const HandleUi& ui, const Area& area, std::span<const Knob> knobs);

/// After the picture's own mouse area, which must allow overlap.
void draw_knobs(const HandleUi& ui, const Area& area, std::span<const Knob> knobs);

/// Moves what the selected part's knob moves, by keyboard.
bool can_move_handle(const Ui& ui);
void move_handle(const Ui& ui, double by, Steps steps);

}  // namespace beamfork
