#include <algorithm>

#include "ui/kit/theme.hpp"
#include "ui/talk/talk.hpp"

namespace beamfork {

namespace {

constexpr float spot_share = 0.028F;  // radius against the screen's height: seen from the last row
constexpr float lamp_share = 0.16F;   // of what stays lit while the rest is dimmed

}  // namespace

void draw_talk_pointer(ImDrawList& list, ImVec2 screen, float alpha, bool darkens) {
    const ImVec2 at = ImGui::GetIO().MousePos;
    const float radius = spot_share * screen.y;
    if (darkens) {
        // One ring so wide that it covers all of the screen but its own hole.
        const float hole = lamp_share * screen.y;
        const float width = 2 * (screen.x + screen.y);
        list.AddCircle(at, hole + width / 2, IM_COL32(0, 0, 0, 190), 96, width);
        list.AddCircle(at, hole, colour(Tone::text, 0.6F), 96, radius * 0.12F);
        return;
    }
    // Open in the middle, so that what is pointed at stays in sight; dark outside, so that it stands out on light too.
    list.AddCircle(at, radius * 1.2F, IM_COL32(0, 0, 0, static_cast<int>(150 * alpha)), 64,
                   radius * 0.2F);
    list.AddCircleFilled(at, radius, colour(ColourRole::good, 0.14F * alpha), 64);
    list.AddCircle(at, radius, colour(Tone::text, alpha), 64, radius * 0.24F);
}

}  // namespace beamfork
