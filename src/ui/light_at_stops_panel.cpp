#include "scene/light_at_stops_rows.hpp"

#include <algorithm>
#include <cmath>

#include "ui/field_stop_picture.hpp"
#include "ui/panels.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

// A plot of light (0 at its bottom, 1 at its top) over the field's radius (left: its middle).
struct Plot {
    ImVec2 low;
    ImVec2 high;
    [[nodiscard]] ImVec2 at(double fraction, double light) const {
        return {low.x + (high.x - low.x) * static_cast<float>(fraction),
                high.y - (high.y - low.y) * static_cast<float>(light)};
    }
};

void fill_between(ImDrawList& list, const Plot& plot, const std::vector<double>& x, const std::vector<double>& lower,
                  const std::vector<double>& upper, ImU32 ink) {
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
        list.AddQuadFilled(plot.at(x[i], lower[i]), plot.at(x[i], upper[i]), plot.at(x[i + 1], upper[i + 1]),
                           plot.at(x[i + 1], lower[i + 1]), ink);
    }
}

float share_strength(std::size_t number) {
    constexpr std::array steps{0.85F, 0.55F, 0.32F, 0.2F};
    return steps[std::min(number, steps.size() - 1)];
}

// The light that arrives from below, then what each opening takes, stacked above it.
void draw_bands(ImDrawList& list, const Plot& plot, const std::vector<double>& x, const EyeLightRows& eye) {
    list.AddRectFilled(plot.low, plot.high, colour(Tone::ground));
    std::vector<double> below(x.size(), 0.0);
    fill_between(list, plot, x, below, eye.relative, colour(eye.role, 0.28F));
    below = eye.relative;
    for (std::size_t i = 0; i < eye.shares.size(); ++i) {
        std::vector<double> above = below;
        for (std::size_t k = 0; k < x.size(); ++k) above[k] = std::min(1.0, below[k] + eye.shares[i].share[k]);
        fill_between(list, plot, x, below, above, colour(ColourRole::clipped, share_strength(i)));
        below = above;
    }
    for (const double light : {0.25, 0.5, 0.75}) {
        list.AddLine(plot.at(0, light), plot.at(1, light), colour(Tone::text_dim, 0.25F));
    }
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
        list.AddLine(plot.at(x[i], eye.relative[i]), plot.at(x[i + 1], eye.relative[i + 1]), colour(eye.role),
                     grid(0.5F));
        dashed_line(list, plot.at(x[i], eye.lowest[i]), plot.at(x[i + 1], eye.lowest[i + 1]), colour(eye.role, 0.7F),
                    std::max(1.0F, grid(0.25F)));
    }
}

void draw_plot(const Ui& ui, const LightRows& rows, const EyeLightRows& eye, const std::string& id, float height) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    const float scale_room = text_width("100 ") + grid(1);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::InvisibleButton(id.c_str(), {width, height});
    tooltip("Share of the objective's light over the field: its middle at the left, its edge at the right. Solid: "
            "the mean of all directions; dashed: the darkest. Above the line: what each opening takes.");
    ui.note(id, eye.name);
    const Plot plot{{low.x + scale_room, low.y + line / 2}, {low.x + width - grid(1), low.y + height - line - grid(1)}};
    draw_bands(list, plot, rows.fractions, eye);
    for (const int percent : {0, 50, 100}) {
        const float y = plot.at(0, percent / 100.0).y - line / 2;
        text_ending_at(list, {plot.low.x - grid(1), y}, std::to_string(percent), colour(Tone::text_dim));
    }
    text_at(list, {plot.low.x, plot.high.y + grid(0.5F)}, "middle", colour(Tone::text_dim));
    text_ending_at(list, {plot.high.x, plot.high.y + grid(0.5F)}, "edge", colour(Tone::text_dim));
    text_at(list, {low.x, plot.high.y + grid(0.5F)}, "%", colour(Tone::text_dim));
}

void draw_shares(const Ui& ui, const EyeLightRows& eye, const std::string& id) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    for (std::size_t i = 0; i < eye.shares.size(); ++i) {
        const StopShare& share = eye.shares[i];
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const std::string row = id + "/share/" + std::to_string(i);
        const bool pressed = ImGui::InvisibleButton(row.c_str(), {width, line + grid(0.5F)});
        if (pressed && share.part) ui.session.selected_part = share.part;
        if (ImGui::IsItemHovered()) ui.hover_part(share.part);
        tooltip((share.is_leak ? "Light leaks out here: " : "Light ends here: ") + share.name);
        ui.note(row, share.name);
        list.AddRectFilled({low.x, low.y + line * 0.2F}, {low.x + line * 0.7F, low.y + line * 0.9F},
                           colour(ColourRole::clipped, share_strength(i)), grid(0.5F));
        text_at(list, {low.x + line + grid(0.5F), low.y}, shortened(share.name, width - line - grid(1)),
                colour(Tone::text));
    }
    if (eye.shares.empty()) dim_text("Nothing is clipped.");
}

// The round picture of the field stop with the numbers beside it.
void draw_head(const Ui& ui, const EyeLightRows& eye, const std::string& id) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    const float side = std::round(line * 4 + grid(1));
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::InvisibleButton((id + "/picture").c_str(), {width, side});
    tooltip("The light on this field stop, as its eye sees it. " + eye.values.front().help);
    ui.note(id + "/picture", eye.name);
    draw_field_stop(list, ui.view.report->clipping_of(eye.eye), {low.x + side / 2, low.y + side / 2}, side / 2,
                    eye.role);
    const float left = low.x + side + grid(2);
    text_at(list, {left, low.y}, eye.name, text_colour(eye.role), TextFace::bold);
    float top = low.y + line + grid(0.25F);
    for (const ValueRow& value : eye.values) {
        const float unit_left = low.x + width - text_width("mm") - grid(1);
        text_ending_at(list, {unit_left - grid(1), top}, value.value, colour(Tone::text), TextFace::bold);
        text_at(list, {unit_left, top}, value.unit, colour(Tone::text_dim));
        const float room = unit_left - grid(2) - text_width(value.value, TextFace::bold) - left;
        text_at(list, {left, top}, shortened(value.label, room), colour(Tone::text_dim));
        top += line + grid(0.25F);
    }
}

}  // namespace

void draw_light_at_stops_panel(const Ui& ui) {
    const LightRows rows = light_at_stops_rows(ui.setup(), *ui.view.report);
    wrapped_text(rows.sentence, colour(Tone::text));
    const float line = ImGui::GetTextLineHeight();
    const float left = ImGui::GetCursorPosX();
    const float top = ImGui::GetCursorPosY();
    const float column = (ImGui::GetContentRegionAvail().x - grid(6)) / 2;
    const float room = ImGui::GetContentRegionAvail().y - line * 6 - grid(6);
    const float plot_height = std::clamp(room, line * 5, line * 12);
    for (std::size_t i = 0; i < rows.eyes.size(); ++i) {
        const EyeLightRows& eye = rows.eyes[i];
        const std::string id = eye.eye == Eye::left ? "light_at_stops/left" : "light_at_stops/right";
        ImGui::SetCursorPos({left + static_cast<float>(i) * (column + grid(6)), top});
        ImGui::BeginChild(id.c_str(), {column, 0}, ImGuiChildFlags_AutoResizeY);
        draw_head(ui, eye, id);
        draw_plot(ui, rows, eye, id + "/plot", plot_height);
        draw_shares(ui, eye, id);
        ImGui::EndChild();
    }
}

}  // namespace beamfork
