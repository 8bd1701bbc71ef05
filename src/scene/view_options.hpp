// What the viewer chose to see; kept in the session, not in the setup.
#pragma once

namespace beamfork {

/// How tubes are drawn: opened towards the viewer, whole, cut by a fixed plane x = section_x, or hidden.
enum class ShellView { open, whole, section, hidden };

struct ViewOptions {
    ShellView shells = ShellView::open;
    float section_x_mm =
        0;  ///< ShellView::section removes metal with x less than this (the side view's side)
    bool labels = true;
    bool light = true;
    bool clipped_rays = true;
    float light_gain = 1;       ///< brightness of the beam, 0.2 .. 5
    bool light_ground = false;  ///< white ground for print and bright rooms
    bool operator==(const ViewOptions&) const = default;
};

}  // namespace beamfork
