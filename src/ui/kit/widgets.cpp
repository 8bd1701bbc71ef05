#include "ui/kit/widgets.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

void begin_area(const char* name, const Area& area, Tone ground, ImGuiWindowFlags more) {
    ImGui::SetNextWindowPos(area.corner());
    ImGui::SetNextWindowSize({std::max(1.0F, area.width), std::max(1.0F, area.height)});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, colour(ground));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, {1, 1});
    ImGui::Begin(name, nullptr,
                 ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove
                     | ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings
                     | ImGuiWindowFlags_NoBringToFrontOnFocus | more);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
}

ImVec2 line_area(const Ui& ui,
                 const std::string& id,
                 const std::string& label,
                 const std::string& help,
                 int lines) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(id.c_str(),
                           {ImGui::GetContentRegionAvail().x,
                            static_cast<float>(lines) * ImGui::GetTextLineHeight() + grid(1)});
    ui.describe(id, label, help);
    return {low.x, low.y + grid(0.5F)};
}

SideBySide::SideBySide(const char* id, int pieces, float least) {
    if (ImGui::GetContentRegionAvail().x < static_cast<float>(pieces) * least) return;
    ImGui::PushStyleVar(ImGuiStyleVar_CellPadding, {grid(3), 0});
    is_wide_ = ImGui::BeginTable(id, pieces, ImGuiTableFlags_SizingStretchSame);
    ImGui::PopStyleVar();
}

SideBySide::~SideBySide() {
    if (is_wide_) ImGui::EndTable();
}

void SideBySide::next() {
    if (is_wide_) {
        ImGui::TableNextColumn();
    } else if (!is_first_) {
        ImGui::Dummy({1, grid(2)});
    }
    is_first_ = false;
}

void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float width) {
    const float dx = to.x - from.x;
    const float dy = to.y - from.y;
    const float length = std::sqrt(dx * dx + dy * dy);
    const float dash = grid(1.25F);
    for (float at = 0; at < length; at += 2 * dash) {
        const float a = at / length;
        const float b = std::min(1.0F, (at + dash) / length);
        list.AddLine({from.x + dx * a, from.y + dy * a}, {from.x + dx * b, from.y + dy * b}, ink,
                     width);
    }
}

}  // namespace beamfork
