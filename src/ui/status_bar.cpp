#include "ui/notice_bar.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

void draw_status_bar(const Ui& ui, const Area& area) {
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2), grid(0.5F)});
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {grid(2), 0});
    begin_area("status_bar", area, Tone::ground,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string_view caution = "Sun, weight, night work: cautions";
    const float button = text_width(caution) + grid(12);
    const float top = area.top + (area.height - ImGui::GetTextLineHeight()) / 2;

    const auto part = ui.state.hovered_part_before;
    const bool is_part = part >= 0 && static_cast<std::size_t>(part) < ui.setup().parts.size();
    std::string words = ui.view.message.text;
    if (is_part) {
        const Part& hovered = ui.setup().parts[static_cast<std::size_t>(part)];
        words = hovered.name + " – " + kind_of(hovered.body).help;
    } else if (words.empty()) {
        words = "Drag: turn   Right drag: shift   Wheel: nearer   Click: select   Double click: "
                "frame   1–6: views";
    }
    text_at(list, {area.left + grid(3), top}, shortened(words, area.width - button - grid(8)),
            colour(Tone::text_dim));
    ui.note("status/words", words);

    const float line = ImGui::GetTextLineHeight();
    ImGui::SetCursorScreenPos({area.right() - button, top});
    const bool pressed = ImGui::InvisibleButton("status/cautions", {button - grid(2), line});
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    tooltip("Never look at the Sun through a telescope without a proper solar filter over its "
            "front. Click for all.");
    ui.note("status/cautions", caution, "Cautions");
    const ImU32 ink = colour(hot ? Tone::text : Tone::text_dim);
    draw_icon(list, Icon::caution, {area.right() - button + line / 2, top + line / 2}, line * 0.85F,
              ink);
    text_at(list, {area.right() - button + line + grid(1.5F), top}, caution, ink);
    if (pressed) ImGui::OpenPopup("Cautions");
    ImGui::PopStyleVar(2);
    draw_cautions(ui);
    ImGui::End();
}

}  // namespace beamfork
