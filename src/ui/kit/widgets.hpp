// What panels are laid out with: areas, lines that can be pointed at, pieces side by side, dashes.
#pragma once

#include <string>

#include "ui/kit/area.hpp"
#include "ui/kit/theme.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Windows without a frame that fill an area; always pair with ImGui::End.
void begin_area(const char* name, const Area& area, Tone ground, ImGuiWindowFlags more = 0);

/// A line of the panel, or `lines` of them, that can be pointed at and reached by keyboard; returns where its text starts.
ImVec2 line_area(const Ui& ui,
                 const std::string& id,
                 const std::string& label,
                 const std::string& help,
                 int lines = 1);

/// Pieces of a panel: side by side where each finds `least` pixels of width, else one below the other. Call
/// next() before each piece.
class SideBySide {
public:
    SideBySide(const char* id, int pieces, float least);
    ~SideBySide();
    SideBySide(const SideBySide&) = delete;
    SideBySide& operator=(const SideBySide&) = delete;
    SideBySide(SideBySide&&) = delete;
    SideBySide& operator=(SideBySide&&) = delete;
    void next();

private:
    bool is_wide_ = false;
    bool is_first_ = true;
};

/// A line with dashes, in pixels.
void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float width);

}  // namespace beamfork
