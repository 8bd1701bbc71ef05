#include "ui/unfolded_path/unfolded_path_panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"
#include "ui/unfolded_path/unfolded_path_parts.hpp"

namespace beamfork {

namespace {

constexpr std::array<std::string_view, 3> eye_words{"Both", "Left", "Right"};
constexpr std::array<std::string_view, 3> eye_helps{
    "The left eye's arm above the axis, the right eye's below it; each is cut where it folds, with "
    "the darker side of its field outward.",
    "The left eye alone, with both sides of its field.",
    "The right eye alone, with both sides of its field."};
constexpr float zoom_per_notch_along = 1.15F;

void draw_path_tools(const PathPanel& panel) {
    auto& state = panel.state;
    state.eyes = static_cast<UnfoldedEyes>(segments(panel.ui, "unfolded/eyes", eye_words, eye_helps,
                                                    static_cast<std::size_t>(state.eyes)));
    ImGui::SameLine(0, grid(2));
    if (text_button(panel.ui, "unfolded/fit", "Fit",
                    "Shows the whole path again. Double-click on the picture does the same.",
                    state.view.has_value()))
        state.view.reset();
}

void say_scale(const Ui& ui, const UnfoldedView& view) {
    const std::string text = view.across == 1 ? "to scale" : "across ×" + format_exact(view.across);
    ImGui::SameLine(0, grid(2));
    ImGui::AlignTextToFramePadding();
    if (ImGui::GetContentRegionAvail().x < text_width(text)) {
        ImGui::NewLine();
        return;
    }
    dim_text(text);
    const char* help = "Lengths along the light and heights across it are to scale; heights are "
                       "drawn this many times larger.";
    ui.describe("unfolded/across", text, help);
}

// The picture's own mouse: wheel, dragging, double click, pointing, click.
void use_picture(const PathPanel& panel, const PathCanvas& canvas) {
    const Ui& ui = panel.ui;
    const ImGuiIO& io = ImGui::GetIO();
    const double x = io.MousePos.x - canvas.area.left;
    const double y = io.MousePos.y - canvas.mid();
    if (ImGui::IsItemActivated()) panel.state.drag_length = 0;
    if (ImGui::IsItemActive() && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        panel.state.drag_length += std::abs(io.MouseDelta.x) + std::abs(io.MouseDelta.y);
        panel.state.view = panned(canvas.view, io.MouseDelta.x, io.MouseDelta.y);
    }
    const bool was_click = panel.state.drag_length < grid(1);
    if (ImGui::IsItemHovered()) {
        keep_wheel();
        if (io.MouseWheel != 0)
            panel.state.view =
                zoomed(canvas.view, std::pow(zoom_per_notch_along, io.MouseWheel), x, y);
        if (ImGui::IsMouseDoubleClicked(0)) panel.state.view.reset();
        const PathHit hit = path_under(panel.rows, canvas.eyes, canvas.view, x, y);
        ui.hover_part(hit.part);
        tooltip(hit.help);
        if (ImGui::IsItemDeactivated() && was_click && hit.part) ui.selected_part = hit.part;
    }
    panel.use_length_keys(ui.selected_part);
}

bool has_room_for_names(float width) { return width > grid(120); }

// While a length is dragged, what stays with its part stays in its place, so that what moves follows the pointer.
UnfoldedView view_for(const PathPanel& panel, const Area& area) {
    const UnfoldedPathState& state = panel.state;
    if (state.drag) {
        UnfoldedView view = state.drag->view;
        if (const Grip* grip = panel.grip_of(state.drag->held.at_press().part))
            view.left += grip->anchor - state.drag->anchor;
        return view;
    }
    return state.view.value_or(fit_view(panel.rows, area.width, area.height));
}

// In full, or its first letter in a narrow picture.
std::string_view eye_name(const Area& area, std::string_view name) {
    return has_room_for_names(area.width) ? name : name.substr(0, 1);
}

// Room for the gap's dimension above, the knobs below, and the eyes' names at the right.
Area without_edges(const Area& area) {
    return {area.left, area.top,
            std::max(1.0F, area.width - text_width(eye_name(area, "Right eye"))),
            std::max(1.0F, area.height - 2 * grid(2.5F))};
}

void name_the_eyes(const PathCanvas& canvas, const UnfoldedPathRows& rows) {
    if (canvas.eyes != UnfoldedEyes::both) return;
    const float line = ImGui::GetTextLineHeight();
    for (const EyeTrack& track : rows.eyes) {
        const bool is_above = track.eye == Eye::left;
        const float y = is_above ? canvas.area.top + grid(0.5F) : canvas.area.bottom() - line;
        text_ending_at(canvas.list, {canvas.area.right() - grid(1), y},
                       eye_name(canvas.area, track.name), text_colour(track.role));
    }
}

int lit_part(const Ui& ui) {
    if (ui.kept.hovered_part_before >= 0) return ui.kept.hovered_part_before;
    return ui.selected_part ? static_cast<int>(*ui.selected_part) : -1;
}

// Where everything stands: words above the picture, beside the tools where there is room.
struct PanelAreas {
    Area words;
    Area picture;
    Area scale;
    Area names;  ///< empty: a list below
};

PanelAreas areas_in(ImVec2 low, ImVec2 room, float tools_right) {
    const float line = ImGui::GetTextLineHeight();
    const bool wide = has_room_for_names(room.x);
    const float width = std::max(1.0F, room.x);
    const float scale = line + grid(3);
    const float names = wide ? 2 * line + grid(2.5F) : 0;
    const float tools = ImGui::GetFrameHeight() + grid(1);
    PanelAreas areas;
    areas.words = {low.x, low.y + tools, width, line + grid(2)};
    if (wide) areas.words = {tools_right, low.y, low.x + width - tools_right, tools};
    const float rest = low.y + room.y - areas.words.bottom() - scale - names;
    const float height =
        wide ? std::max(rest, 5 * line) : std::clamp(rest * 0.7F, 5 * line, 16 * line);
    areas.picture = {low.x, areas.words.bottom(), width, height};
    areas.scale = {low.x, areas.picture.bottom(), width, scale};
    areas.names = {low.x, areas.scale.bottom(), width, names};
    return areas;
}

}  // namespace

void draw_unfolded_path_panel(const Ui& ui, UnfoldedPathState& state) {
    const UnfoldedPathRows rows = unfolded_path_rows(ui.setup(), *ui.report);
    const PathPanel panel{ui, rows, state};
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 room = ImGui::GetContentRegionAvail();
    draw_path_tools(panel);
    const float said = text_width("across ×0.75") + grid(4);
    const PanelAreas areas = areas_in(low, room, ImGui::GetItemRectMax().x + said);
    const Area& picture = areas.picture;
    const UnfoldedView view = view_for(panel, without_edges(picture));
    const PathCanvas canvas{*ImGui::GetWindowDrawList(), picture, view, panel.state.eyes,
                            lit_part(ui)};
    say_scale(ui, view);
    ImGui::SetCursorScreenPos(picture.corner());
    ImGui::SetNextItemAllowOverlap();
    ImGui::InvisibleButton("unfolded/picture", picture.size());
    constexpr const char* picture_help =
        "The train straightened. Drag: shift. Wheel: larger. Click: select what is there; by keys: "
        "its name below.";
    ui.note("unfolded/picture", "Unfolded path", picture_help);
    use_picture(panel, canvas);
    draw_unfolded_path(canvas, rows);
    name_the_eyes(canvas, rows);
    draw_path_words(canvas, path_words(canvas, rows), areas.words);
    draw_path_scale(canvas, rows, areas.scale);
    ImGui::SetCursorScreenPos(areas.scale.corner());
    ImGui::Dummy(areas.scale.size());
    const std::string help = rows.drawtube.help
                             + "\nThe scale counts real millimetres behind the rear face of the "
                               "racked-in drawtube.";
    ui.describe("unfolded/scale", "Scale", help);
    draw_path_knobs(panel, canvas);
    if (has_room_for_names(room.x)) {
        draw_path_names(panel, canvas, areas.names);
    } else {
        ImGui::SetCursorScreenPos(areas.names.corner());
        draw_path_lines(panel);
    }
}

}  // namespace beamfork
