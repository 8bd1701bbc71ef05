#include <array>

#include "ui/kit/area.hpp"
#include "ui/kit/theme.hpp"
#include "ui/talk/talk.hpp"

namespace beamfork {

namespace {

// Of the picture's height: 2 cm on a screen of 30, wide enough for a finger (common practice, 1 cm at least).
constexpr float disc_share = 0.11F;

enum class TalkSign { back, forward, leave };

void draw_talk_sign(ImDrawList& list, TalkSign sign, ImVec2 centre, float half, ImU32 ink) {
    const float width = half * 0.28F;
    const auto at = [&](float x, float y) {
        return ImVec2{centre.x + x * half, centre.y + y * half};
    };
    if (sign == TalkSign::leave) {
        list.AddLine(at(-0.7F, -0.7F), at(0.7F, 0.7F), ink, width);
        list.AddLine(at(0.7F, -0.7F), at(-0.7F, 0.7F), ink, width);
        return;
    }
    const float side = sign == TalkSign::forward ? 1 : -1;
    list.PathLineTo(at(-0.4F * side, -0.9F));
    list.PathLineTo(at(0.5F * side, 0));
    list.PathLineTo(at(-0.4F * side, 0.9F));
    list.PathStroke(ink, 0, width);
}

struct TalkButton {
    const char* name;    ///< of the widget
    const char* action;  ///< what it does
    TalkSign sign;
    const char* help;
};

constexpr std::array talk_button_row{
    TalkButton{"talk/button/back", "talk/back", TalkSign::back, "The step before."},
    TalkButton{"talk/button/forward", "talk/forward", TalkSign::forward, "The next step."},
    TalkButton{"talk/button/leave", "talk/leave", TalkSign::leave, "Leave the talk."}};

std::string keys_of_talk(std::string_view action) {
    for (const auto& entry : talk_actions())
        if (std::string_view(entry.name) == action) return all_chords_text(entry.chords);
    return {};
}

}  // namespace

bool draw_talk_buttons(const TalkUi& ui, const Area& picture, float alpha) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float disc = disc_share * picture.height;
    const float gap = disc * 0.35F;
    bool is_any_hot = false;
    float left = picture.right() - 3 * (disc + gap);
    for (const TalkButton& button : talk_button_row) {
        const ImVec2 low{left, picture.bottom() - disc - gap};
        const ImVec2 centre{low.x + disc / 2, low.y + disc / 2};
        ImGui::SetCursorScreenPos(low);
        const bool pressed = ImGui::InvisibleButton(button.name, {disc, disc});
        const bool is_hot = ImGui::IsItemHovered();
        is_any_hot = is_any_hot || is_hot;
        const std::string help = std::string(button.help) + " " + keys_of_talk(button.action);
        ui.describe(button.name, button.help, help);
        list.AddCircleFilled(centre, disc / 2,
                             colour(is_hot ? Tone::raised_hot : Tone::raised, 0.9F * alpha));
        draw_talk_sign(list, button.sign, centre, disc * 0.22F, colour(Tone::text, alpha));
        left += disc + gap;
        if (!pressed) continue;
        for (const auto& entry : talk_actions()) {
            if (std::string_view(entry.name) == button.action) entry.run(ui);
        }
        ui.pace.animating = true;
    }
    return is_any_hot;
}

}  // namespace beamfork
