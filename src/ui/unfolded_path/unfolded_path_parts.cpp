#include "ui/unfolded_path/unfolded_path_parts.hpp"

#include <algorithm>
#include <cmath>

#include "document/edit.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

const Grip* PathPanel::grip_of(std::optional<std::size_t> part) const {
    const auto found = std::find_if(rows.grips.begin(), rows.grips.end(),
                                    [&](const Grip& grip) { return grip.part == part; });
    return found == rows.grips.end() ? nullptr : &*found;
}

void PathPanel::set_length(const Grip& grip, double value) const {
    if (value != grip.value) ui.edit(SetField{grip.part, grip.key, value});
}

void PathPanel::use_length_keys(std::optional<std::size_t> part) const {
    const Grip* grip = grip_of(part);
    if (grip == nullptr || ui.selected_part != part || !ImGui::IsItemFocused()) return;
    if (ImGui::GetIO().KeyAlt) return;  // the keys of the whole window
    for (const auto& [key, by] :
         {std::pair{ImGuiKey_LeftArrow, -0.5}, {ImGuiKey_RightArrow, 0.5}}) {
        if (key_of_last_widget(key)) set_length(*grip, moved_value(*grip, by, Steps::halves));
    }
}

namespace {

bool is_at_keyboard() { return ImGui::IsItemFocused() && ImGui::GetIO().NavVisible; }

bool holds(const PathPanel& panel, const Grip& grip) {
    const auto& drag = panel.state.drag;
    return drag && drag->held.at_press().part == grip.part;
}

void drag_grip(const PathPanel& panel, const Grip& grip, const PathCanvas& canvas) {
    const ImGuiIO& io = ImGui::GetIO();
    auto& drag = panel.state.drag;
    const Steps steps = io.KeyShift ? Steps::fine : Steps::halves;
    if (ImGui::IsItemActivated() && io.MouseDown[0])
        drag = LengthDrag{HeldLength(static_cast<const MovableLength&>(grip), steps), grip.anchor,
                          io.MousePos.x, canvas.view};
    if (!holds(panel, grip)) return;
    if (ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        panel.ui.edit(SetField{grip.part, grip.key, drag->held.at_press().stated});
        if (ImGui::IsItemActive()) let_go_of_widget();
        drag.reset();
        return;
    }
    if (ImGui::IsItemActive()) {
        const double by = (io.MousePos.x - drag->pointer) / canvas.view.px_per_mm;
        if (by != 0) panel.set_length(grip, drag->held.value_after(by, steps));
    }
    if (ImGui::IsItemDeactivated()) drag.reset();
}

void paint_knob(const PathCanvas& canvas, const Grip& grip, const Area& area, bool hot) {
    ImDrawList& list = canvas.list;
    const ImU32 ink = colour(hot ? Tone::text : Tone::text_dim);
    const ImVec2 middle{area.left + area.width / 2, area.top + area.height / 2};
    list.PushClipRect(canvas.area.corner(), {canvas.area.right(), canvas.area.bottom()}, true);
    dashed_line(list, {canvas.x(grip.at), canvas.at(0, 0).y}, {middle.x, area.top}, ink,
                std::max(1.0F, grid(0.25F)));
    list.PopClipRect();
    list.AddRectFilled(area.corner(), {area.right(), area.bottom()},
                       colour(hot ? Tone::raised_hot : Tone::raised), grid(1));
    const float r = grid(1);
    for (const float side : {-1.0F, 1.0F}) {
        const float tip = middle.x + side * (area.width / 2 - grid(0.75F));
        list.AddTriangleFilled({tip, middle.y}, {tip - side * r, middle.y - r},
                               {tip - side * r, middle.y + r}, ink);
    }
}

void draw_knob(const PathPanel& panel,
               const PathCanvas& canvas,
               const Grip& grip,
               const Area& area) {
    const Ui& ui = panel.ui;
    ImGui::SetCursorScreenPos(area.corner());
    const std::string id = "unfolded/grip/" + std::to_string(grip.part);
    if (ImGui::InvisibleButton(id.c_str(), area.size())) ui.selected_part = grip.part;
    ui.one_gesture();
    const bool lets_focus =
        grip.can_be_let_go && ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(0);
    if (lets_focus) {
        ui.edit(SetField{grip.part, grip.key, FieldValue{}});
    } else {
        drag_grip(panel, grip, canvas);
    }
    panel.use_length_keys(grip.part);
    const bool is_active = ImGui::IsItemActive();
    const bool hot = is_active || ImGui::IsItemHovered() || is_at_keyboard();
    if (hot) ui.hover_part(grip.part);
    if (is_active || ImGui::IsItemHovered()) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    if (!is_active) tooltip(grip.help);
    ui.note(id, grip.label, grip.help);
    paint_knob(canvas, grip, area, hot);
    if (is_active)
        text_at(canvas.list, {area.right() + grid(1), area.top}, grip.text, colour(Tone::text),
                TextFace::bold);
}

// Sets up one part's button; returns whether it stands out.
bool part_button(const PathPanel& panel, const PathStretch& stretch, ImVec2 size) {
    const Ui& ui = panel.ui;
    const std::string id = "unfolded/part/" + std::to_string(stretch.part);
    if (ImGui::InvisibleButton(id.c_str(), size)) ui.selected_part = stretch.part;
    panel.use_length_keys(stretch.part);
    const bool is_pointed_at = ImGui::IsItemHovered() || is_at_keyboard();
    if (is_pointed_at) ui.hover_part(stretch.part);
    const Grip* grip = panel.grip_of(stretch.part);
    const std::string help = grip == nullptr ? stretch.help : stretch.help + "\n" + grip->help;
    ui.describe(id, stretch.name, help);
    return is_pointed_at || ui.selected_part == stretch.part
           || ui.kept.hovered_part_before == static_cast<int>(stretch.part);
}

struct ShownName {
    const PathStretch* stretch = nullptr;
    float from = 0;  ///< of what is seen of its stretch, pixels from the lane's left end
    float to = 0;
};

std::vector<ShownName> shown_names(const UnfoldedPathRows& rows, const PathCanvas& canvas) {
    std::vector<ShownName> shown;
    for (const PathStretch& stretch : rows.stretches) {
        const auto a = static_cast<float>(canvas.view.x_of(std::min(stretch.from, stretch.to)));
        const auto b = static_cast<float>(canvas.view.x_of(std::max(stretch.from, stretch.to)));
        if (b < 0 || a > canvas.area.width) continue;
        shown.push_back({&stretch, std::max(0.0F, a), std::min(canvas.area.width, b)});
    }
    std::stable_sort(shown.begin(), shown.end(), [](const ShownName& a, const ShownName& b) {
        return a.from + a.to < b.from + b.to;
    });
    return shown;
}

void draw_bracket(
    const PathCanvas& canvas, const ShownName& name, float top, float under, ImU32 ink) {
    const float left = canvas.area.left + name.from;
    const float right = std::max(canvas.area.left + name.to, left + grid(0.5F));
    const float width = std::max(1.0F, grid(0.3F));
    canvas.list.AddLine({left, top}, {right, top}, ink, width);
    for (const float end : {left, right})
        canvas.list.AddLine({end, top - grid(0.75F)}, {end, top + width}, ink, width);
    canvas.list.AddLine({(left + right) / 2, top}, {under, top + grid(1.75F)}, ink, width);
}

}  // namespace

void draw_path_knobs(const PathPanel& panel, const PathCanvas& canvas) {
    const ImVec2 size{grid(5), grid(4)};
    std::vector<const Grip*> shown;
    for (const Grip& grip : panel.rows.grips) {
        const double x = canvas.view.x_of(grip.at);
        const bool is_dragged = holds(panel, grip);
        if (is_dragged || (x >= 0 && x <= canvas.area.width)) shown.push_back(&grip);
    }
    std::stable_sort(shown.begin(), shown.end(),
                     [](const Grip* a, const Grip* b) { return a->at < b->at; });
    std::vector<LaneWord> lane;
    for (const Grip* grip : shown)
        lane.push_back({canvas.view.x_of(grip->at), size.x});
    const auto places = lane_places(lane, canvas.area.width, grid(1));
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const float left = canvas.area.left + static_cast<float>(places[i]);
        draw_knob(panel, canvas, *shown[i], {left, canvas.area.bottom() - size.y, size.x, size.y});
    }
}

void draw_path_names(const PathPanel& panel, const PathCanvas& canvas, const Area& area) {
    const auto shown = shown_names(panel.rows, canvas);
    std::vector<LaneWord> lane;
    for (const ShownName& name : shown) {
        const float width = std::max(text_width(name.stretch->name),
                                     text_width(name.stretch->value, TextFace::bold));
        lane.push_back({(name.from + name.to) / 2, width});
    }
    const double gap = grid(3);
    const double limit = lane_limit(lane, area.width, gap);
    for (LaneWord& word : lane)
        word.width = std::min(word.width, limit);
    const auto places = lane_places(lane, area.width, gap);
    const float line = ImGui::GetTextLineHeight();
    const float text_top = area.top + grid(2);
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const PathStretch& stretch = *shown[i].stretch;
        const float left = area.left + static_cast<float>(places[i]);
        const auto width = static_cast<float>(lane[i].width);
        ImGui::SetCursorScreenPos({left, area.top});
        const bool hot = part_button(panel, stretch, {std::max(1.0F, width), area.height});
        const ImU32 ink = colour(hot ? Tone::text : Tone::text_dim);
        draw_bracket(canvas, shown[i], area.top, left + width / 2, ink);
        text_at(canvas.list, {left, text_top}, shortened(stretch.name, width), ink);
        text_at(canvas.list, {left, text_top + line}, shortened(stretch.value, width),
                text_colour(stretch.role), TextFace::bold);
    }
}

void draw_path_lines(const PathPanel& panel) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const PathStretch& stretch : panel.rows.stretches) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const ImVec2 size{ImGui::GetContentRegionAvail().x, ImGui::GetTextLineHeight() + grid(1)};
        const bool hot = part_button(panel, stretch, size);
        if (hot)
            list.AddRectFilled(low, {low.x + size.x, low.y + size.y}, colour(Tone::raised),
                               grid(0.5F));
        const float top = low.y + grid(0.5F);
        const float room = size.x - text_width(stretch.value, TextFace::bold) - grid(2);
        text_at(list, {low.x, top}, shortened(stretch.name, room),
                colour(hot ? Tone::text : Tone::text_dim));
        text_ending_at(list, {low.x + size.x, top}, stretch.value, text_colour(stretch.role),
                       TextFace::bold);
    }
}

}  // namespace beamfork
