// What the viewer chose to see; kept in the session, not in the setup.
#pragma once

namespace beamfork {

/// How tubes are drawn: opened towards the viewer, whole, cut by a fixed plane x = section_x, or hidden.
enum class ShellView { open, whole, section, hidden };

struct ViewOptions {
    ShellView shells = ShellView::open;
    /// ShellView::section removes metal with x less than this (the side view's side).
    float section_x_mm = 0;
    bool labels = true;
    bool dimensions = true;  ///< of the selected part
    bool light = true;
    bool clipped_rays = true;
    float light_gain = 1;       ///< brightness of the beam, 0.2 .. 5
    bool light_ground = false;  ///< white ground for print and bright rooms
    bool night = false;         ///< all of the window in red, for eyes that are used to the dark
    float night_brightness = 0.65F;  ///< of what is white by day, 0.2 .. 1, in linear light
    bool paint_pupil = false;        ///< rays in the colour of where they met the objective
    bool light_moves = false;        ///< packets of light run along the rays
    bool light_is_held = false;      ///< they stand still
    float light_speed_mm_s = 120;    ///< of optical path a second, 20 .. 400
    float light_front_mm = 0;  ///< how far the packets have come: optical path from the objective
    float apart = 0;           ///< parts pulled apart along the axis: 0 together .. 1
    /// Something moves although nobody does anything.
    [[nodiscard]] bool light_runs() const {
        return light && light_moves && !light_is_held && apart == 0;
    }
    /// A white ground would dazzle at night.
    [[nodiscard]] bool on_light_ground() const { return light_ground && !night; }
    bool operator==(const ViewOptions&) const = default;
};

}  // namespace beamfork
