// Every widget that Dear ImGui itself was given in a frame, whether the interface logs it or not.
//
// The linker leads each call of ImGui::ItemAdd through this file (tests/CMakeLists.txt, --wrap): the library has
// no other place through which all widgets pass and none can slip by.
#pragma once

#include <string>
#include <vector>

#include <imgui.h>
#include <imgui_internal.h>

namespace beamfork {

struct DrawnWidget {
    ImGuiID id;
    ImGuiWindow* window;  ///< lives as long as the context
    ImRect area;
    bool enabled;
};

/// Begins anew: what was drawn before is forgotten.
void watch_widgets();
/// Since then, in the order in which they were drawn, each once; without the scroll bars, which move with the
/// keyboard's widget by themselves.
std::vector<DrawnWidget> watched_widgets();

}  // namespace beamfork
