#include <algorithm>
#include <cmath>

#include "ui/label_overlay.hpp"
#include "ui/scale_bar.hpp"
#include "ui/viewport.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

void draw_scale(const Ui& ui, const Area& area) {
    const double mm_per_px = mm_per_pixel(ui.session.camera, {area.width, area.height});
    if (!(mm_per_px > 0)) return;
    const ScaleBar bar = scale_bar(mm_per_px, grid(40));
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink =
        ui.session.view.on_light_ground() ? IM_COL32(24, 32, 42, 255) : colour(Tone::text_dim);
    const float right = area.right() - grid(4);
    const float left = right - bar.length_px;
    const float y = area.bottom() - grid(4);
    const float tick = grid(1.25F);
    const float width = std::max(1.0F, grid(0.35F));
    list.AddLine({left, y}, {right, y}, ink, width);
    list.AddLine({left, y - tick}, {left, y + tick}, ink, width);
    list.AddLine({right, y - tick}, {right, y + tick}, ink, width);
    text_at(list,
            {(left + right - text_width(bar.text)) / 2, y - tick - ImGui::GetTextLineHeight()},
            bar.text, ink);
}

}  // namespace

void draw_viewport_words(const Ui& ui, const Area& area) {
    ImGui::PushClipRect(area.corner(), {area.right(), area.bottom()}, true);
    draw_labels(*ImGui::GetWindowDrawList(), area.corner(), {area.width, area.height},
                {ui.view.frame, ui.session.camera, ui.session.view, ui.state.hovered_part_before,
                 ui.session.selected_part, 2 * grid(2) + ImGui::GetFrameHeight()});
    draw_scale(ui, area);
    ImGui::PopClipRect();
}

}  // namespace beamfork
