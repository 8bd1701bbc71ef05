#include <algorithm>
#include <cmath>

#include "scene/picture/frame.hpp"
#include "ui/handles/dimension_overlay.hpp"
#include "ui/handles/handle_overlay.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/scale_bar.hpp"
#include "ui/picture/label_overlay.hpp"
#include "ui/picture/light_key.hpp"
#include "ui/picture/viewport.hpp"

namespace beamfork {

void draw_viewport_words(const PictureUi& ui,
                         const HandleUi& handles,
                         const Area& area,
                         std::span<const Knob> knobs) {
    const Viewport viewport{area.width, area.height};
    const float foot = foot_height();
    const ViewOptions& options = ui.options;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    LightCover cover = light_cover(ui.view.frame, ui.pose.camera, viewport);
    cover.taken.push_back({{0, area.height - foot}, {area.width, area.height}});
    ImGui::PushClipRect(area.corner(), {area.right(), area.bottom()}, true);
    if (const auto key =
            draw_light_key(list, area.corner(), viewport, {ui.view.frame, ui.pose.camera, options}))
        cover.taken.push_back(*key);
    // Names first: they stay where they are whatever is selected.
    const LabelLook look{.frame = ui.view.frame,
                         .camera = ui.pose.camera,
                         .options = options,
                         .hot_part = ui.kept.hovered_part_before,
                         .selected_part = ui.selected_part,
                         .foot_px = foot,
                         .cover = &cover,
                         .glide = &ui.flight.words,
                         .before = kept_in(ui.flight.laid)};
    const LaidWords words = lay_out_labels(viewport, look);
    LightCover free = cover;
    for (const PixelBox& room : rooms_of(handles, area, knobs))
        free.taken.push_back(room);
    for (const PixelBox& box : boxes_of(words.placed))
        free.taken.push_back(box);
    const bool is_together = options.apart == 0;  // measured is the train as it is used
    if (is_together && options.dimensions && ui.selected_part && ui.report != nullptr) {
        const auto dimensions = part_dimensions(ui.setup(), *ui.report, *ui.selected_part);
        const auto placed =
            lay_out_dimensions(dimensions, ui.pose.camera, viewport, measure_number, free, grid(1));
        draw_dimensions(list, area.corner(), dimensions, placed, options.on_light_ground());
    }
    draw_labels(list, area.corner(), viewport, look, words);
    if (ui.flight.words.moves()) ui.pace.animating = true;
    ImGui::PopClipRect();
}

void draw_names(const PictureUi& ui, const Area& area, const Frame& frame) {
    ImGui::PushClipRect(area.corner(), {area.right(), area.bottom()}, true);
    draw_labels(*ImGui::GetWindowDrawList(), area.corner(), {area.width, area.height},
                {.frame = frame,
                 .camera = ui.pose.camera,
                 .options = ui.options,
                 .selected_part = std::nullopt,
                 .foot_px = foot_height()});
    ImGui::PopClipRect();
}

void draw_scale(const PictureUi& ui, const Area& area, float free_from) {
    const double mm_per_px = mm_per_pixel(ui.pose.camera, {area.width, area.height});
    if (!(mm_per_px > 0)) return;
    const float right = area.right() - grid(4);
    const float room = std::min(grid(40), right - free_from - grid(3));
    if (room < grid(10)) return;  // narrower than its own number
    const ScaleBar bar = scale_bar(mm_per_px, room);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink =
        ui.options.on_light_ground() ? IM_COL32(24, 32, 42, 255) : colour(Tone::text_dim);
    const float left = right - bar.length_px;
    const float y = area.bottom() - grid(4);
    const float tick = grid(1.25F);
    const float width = std::max(1.0F, grid(0.35F));
    list.AddLine({left, y}, {right, y}, ink, width);
    list.AddLine({left, y - tick}, {left, y + tick}, ink, width);
    list.AddLine({right, y - tick}, {right, y + tick}, ink, width);
    const float words = text_width(bar.text);
    text_at(list,
            {std::min((left + right - words) / 2, area.right() - grid(2) - words),
             y - tick - ImGui::GetTextLineHeight()},
            bar.text, ink);
}

}  // namespace beamfork
