// What is different after something was done, as far as a user could tell: of two desks or of one, before and after.
#pragma once

#include "ui/desk.hpp"

namespace beamfork {

inline std::string view_outcome(const ViewOptions& view) {
    return std::to_string(view.night) + std::to_string(view.labels)
           + std::to_string(view.dimensions) + std::to_string(view.light)
           + std::to_string(view.clipped_rays) + std::to_string(view.light_ground)
           + std::to_string(static_cast<int>(view.shells)) + std::to_string(view.paint_pupil)
           + std::to_string(view.light_moves) + std::to_string(view.light_is_held)
           + std::to_string(view.light_speed_mm_s) + std::to_string(view.apart);
}

inline std::string camera_outcome(const Camera& camera) {
    std::string text;
    for (const float value : {camera.target.x, camera.target.y, camera.target.z, camera.distance_mm,
                              camera.yaw_rad, camera.pitch_rad})
        text += " " + std::to_string(value);
    return text;
}

inline std::string outcome(Desk& desk) {
    const Session& session = desk.session;
    std::string text =
        std::to_string(desk.edits.size()) + " " + std::to_string(desk.commands.size()) + " "
        + std::to_string(desk.gestures_began)
        + (session.pose.selected_part ? " part " + std::to_string(*session.pose.selected_part)
                                      : " no part");
    text += " " + session.layout.study + " " + std::to_string(session.layout.text_scale)
            + std::to_string(session.layout.study_is_wide)
            + std::to_string(session.findings.shows_all) + std::to_string(session.tune.whole_range)
            + std::to_string(static_cast<int>(session.comparison.place))
            + std::to_string(session.layout.parts_at_left) + view_outcome(session.view);
    for (const std::string& stem : session.layout.folded)
        text += " " + stem;
    if (desk.last.sight) text += " closer " + std::to_string(desk.last.sight->closer);
    text += ImGui::GetIO().WantTextInput ? " types" : "";
    text += " popups " + std::to_string(ImGui::GetCurrentContext()->OpenPopupStack.Size);
    for (const auto& [name, widget] : desk.log.widgets)  // what has appeared, what is gone
        text += " " + name;
    return text;
}

/// The window that has the keyboard.
inline std::string keyboard_outcome() {
    const ImGuiWindow* window = ImGui::GetCurrentContext()->NavWindow;
    return window != nullptr ? window->Name : "none";
}

}  // namespace beamfork
