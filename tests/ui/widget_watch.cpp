#include "ui/widget_watch.hpp"

#include <algorithm>

namespace {

std::vector<beamfork::DrawnWidget>& drawn() {
    static std::vector<beamfork::DrawnWidget> list;
    return list;
}

bool is_scroll_bar(ImGuiID id, ImGuiWindow* window) {
    return id == ImGui::GetWindowScrollbarID(window, ImGuiAxis_X)
           || id == ImGui::GetWindowScrollbarID(window, ImGuiAxis_Y);
}

}  // namespace

// The names are the linker's: bool ImGui::ItemAdd(const ImRect&, ImGuiID, const ImRect*, ImGuiItemFlags).
// NOLINTBEGIN(bugprone-reserved-identifier)
extern "C" {
bool __real__ZN5ImGui7ItemAddERK6ImRectjPS1_i(const ImRect&, ImGuiID, const ImRect*, int);
bool __wrap__ZN5ImGui7ItemAddERK6ImRectjPS1_i(const ImRect& area,
                                              ImGuiID id,
                                              const ImRect* nav,
                                              int flags) {
    const bool is_seen = __real__ZN5ImGui7ItemAddERK6ImRectjPS1_i(area, id, nav, flags);
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    if (id != 0 && !is_scroll_bar(id, window)) {
        const bool enabled = (ImGui::GetItemFlags() & ImGuiItemFlags_Disabled) == 0;
        drawn().push_back({id, window, area, enabled});
    }
    return is_seen;
}
}
// NOLINTEND(bugprone-reserved-identifier)

namespace beamfork {

void watch_widgets() { drawn().clear(); }

std::vector<DrawnWidget> watched_widgets() {
    std::vector<DrawnWidget> list;
    for (const DrawnWidget& one : drawn()) {
        const bool is_known = std::any_of(
            list.begin(), list.end(), [&](const DrawnWidget& other) { return other.id == one.id; });
        if (!is_known) list.push_back(one);
    }
    return list;
}

}  // namespace beamfork
