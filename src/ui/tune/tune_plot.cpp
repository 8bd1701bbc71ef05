#include "ui/tune/tune_plot.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

constexpr const char* plot_help = "The watched result over the varied number. Point to read it; "
                                  "press or drag to set the number, one undo "
                                  "step for each press; Left and Right step it while the plot is "
                                  "selected. Green ground: focus is reached.";

class PlotPainter {
public:
    PlotPainter(const Area& all, const TuneRows& rows)
        : list_(*ImGui::GetWindowDrawList()), rows_(rows), line_(ImGui::GetTextLineHeight()) {
        float scale = 0;
        for (const AxisTick& tick : rows.y_ticks)
            scale = std::max(scale, text_width(typeset(tick.text)));
        low_ = {all.left + scale + grid(1.5F), all.top + line_ + grid(0.5F)};
        high_ = {all.right() - grid(1), all.bottom() - 2 * line_ - grid(1.5F)};
        left_ = all.left;
    }

    [[nodiscard]] double share_at(float x) const {
        return std::clamp(static_cast<double>((x - low_.x) / std::max(1.0F, high_.x - low_.x)), 0.0,
                          1.0);
    }

    void draw() const {
        list_.AddRectFilled(low_, high_, colour(Tone::ground));
        draw_focus();
        draw_axes();
        list_.PushClipRect(low_, high_, true);
        draw_curve();
        list_.PopClipRect();
        draw_marks();
    }

    void draw_pointer(float x) const {
        list_.AddLine({x, low_.y}, {x, high_.y}, colour(Tone::text_dim), hair());
    }

private:
    [[nodiscard]] static float hair() { return std::max(1.0F, grid(0.25F)); }
    [[nodiscard]] ImVec2 at(const PlotPlace& place) const {
        return {low_.x + (high_.x - low_.x) * static_cast<float>(place.x),
                high_.y - (high_.y - low_.y) * static_cast<float>(place.y)};
    }

    void draw_focus() const {
        for (const TuneInterval& one : rows_.in_focus) {
            const float left = at({one.low, 0}).x;
            const float right = std::max(at({one.high, 0}).x, left + 1);
            list_.AddRectFilled({left, low_.y}, {right, high_.y}, colour(ColourRole::good, 0.22F));
            list_.AddRectFilled({left, high_.y - grid(0.75F)}, {right, high_.y},
                                colour(ColourRole::good));
            if (right - left > text_width("in focus") + grid(2)) {
                text_at(list_, {left + grid(1), high_.y - line_ - grid(1)}, "in focus",
                        text_colour(ColourRole::good));
            }
        }
    }

    void draw_axes() const {
        const ImU32 faint = colour(Tone::text_dim, 0.2F);
        const ImU32 dim = colour(Tone::text_dim);
        for (const AxisTick& tick : rows_.y_ticks) {
            const float y = at({0, tick.place}).y;
            list_.AddLine({low_.x, y}, {high_.x, y}, faint);
            text_ending_at(list_, {low_.x - grid(1), y - line_ / 2}, typeset(tick.text), dim);
        }
        float taken = left_;  // labels that would run into each other are left out
        for (const AxisTick& tick : rows_.x_ticks) {
            const float x = at({tick.place, 0}).x;
            list_.AddLine({x, low_.y}, {x, high_.y}, faint);
            const std::string text = typeset(tick.text);
            const float from =
                std::min(x - text_width(text) / 2, high_.x + grid(1) - text_width(text));
            if (from < taken) continue;
            text_at(list_, {from, high_.y + grid(0.5F)}, text, dim);
            taken = from + text_width(text) + grid(2);
        }
        const float below = high_.y + line_ + grid(0.5F);
        text_at(list_, {left_, low_.y - line_ - grid(0.5F)},
                shortened(rows_.y_title, high_.x - left_), dim);
        text_ending_at(list_, {high_.x, below}, shortened(rows_.x_title, high_.x - left_), dim);
    }

    void draw_curve() const {
        if (rows_.wanted_y) {
            dashed_line(list_, at({0, *rows_.wanted_y}), at({1, *rows_.wanted_y}),
                        colour(Tone::accent), hair());
        }
        for (const auto& line : rows_.lines) {
            for (const PlotPlace& place : line)
                list_.PathLineTo(at(place));
            if (line.size() == 1) {
                list_.PathClear();
                list_.AddCircleFilled(at(line.front()), grid(0.5F), colour(Tone::text));
                continue;
            }
            list_.PathStroke(colour(Tone::text), 0, grid(0.5F));
        }
    }

    // Solutions are diamonds, the present place is a ring with a line down to the scale.
    void draw_marks() const {
        for (const PlotPlace& place : rows_.solutions) {
            const ImVec2 middle = at(place);
            const float r = grid(1.25F);
            list_.AddQuadFilled({middle.x, middle.y - r}, {middle.x + r, middle.y},
                                {middle.x, middle.y + r}, {middle.x - r, middle.y},
                                colour(Tone::accent));
        }
        if (!rows_.now_x) return;
        const float x = at({*rows_.now_x, 0}).x;
        list_.AddLine({x, low_.y}, {x, high_.y}, colour(ColourRole::dimension, 0.8F), hair());
        if (!rows_.now) return;
        list_.AddCircleFilled(at(*rows_.now), grid(1.25F), colour(Tone::ground));
        list_.AddCircle(at(*rows_.now), grid(1.25F), colour(Tone::text), 0, grid(0.5F));
    }

    ImDrawList& list_;
    const TuneRows& rows_;
    float line_;
    float left_ = 0;
    ImVec2 low_;
    ImVec2 high_;
};

}  // namespace

std::optional<double>
draw_tune_plot(const Ui& ui, const TuneStudy& study, const TuneRows& rows, float height) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const Area area{corner.x, corner.y, ImGui::GetContentRegionAvail().x, height};
    ImGui::InvisibleButton("tune/plot", area.size());
    ui.one_gesture();
    const bool is_pressed = ImGui::IsItemActive();
    // With the keyboard on it, the plot reads the present number wherever the mouse happens to rest.
    const bool is_by_keys = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible
                            && !ImGui::IsMouseHoveringRect(corner, {area.right(), area.bottom()});
    const bool is_read = is_by_keys ? rows.now_x.has_value() : is_pressed || ImGui::IsItemHovered();
    ui.note("tune/plot", rows.headline, plot_help);
    const PlotPainter painter(area, rows);
    painter.draw();
    if (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible)
        ImGui::GetWindowDrawList()->AddRect(corner, {area.right(), area.bottom()},
                                            colour(Tone::accent), grid(1));
    if (!is_read) return std::nullopt;
    const double share = is_by_keys ? *rows.now_x : painter.share_at(ImGui::GetIO().MousePos.x);
    if (!is_by_keys) painter.draw_pointer(ImGui::GetIO().MousePos.x);
    if (ImGui::BeginTooltip()) {
        ImGui::TextUnformatted(tune_reading(study, share).c_str());
        ImGui::PushTextWrapPos(ImGui::GetFontSize() * 24);
        dim_text(is_by_keys ? "Left and Right step it." : "Press or drag to set it.");
        ImGui::PopTextWrapPos();
        ImGui::EndTooltip();
    }
    const bool is_by_mouse = is_pressed && ImGui::GetIO().MouseDown[0];
    return is_by_mouse ? std::optional(share) : std::nullopt;
}

}  // namespace beamfork
