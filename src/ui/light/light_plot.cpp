#include "ui/light/light_plot.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

struct Plot {
    ImVec2 low;
    ImVec2 high;
    [[nodiscard]] ImVec2 at(double fraction, double light) const {
        return {low.x + (high.x - low.x) * static_cast<float>(fraction),
                high.y - (high.y - low.y) * static_cast<float>(light)};
    }
};

using Curve = std::vector<double>;

// Without smoothed edges, which would show as seams between the pieces.
void fill_between(ImDrawList& list,
                  const Plot& plot,
                  const Curve& x,
                  const Curve& lower,
                  const Curve& upper,
                  ImU32 ink) {
    const ImDrawListFlags before = list.Flags;
    list.Flags &= ~ImDrawListFlags_AntiAliasedFill;
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
        list.AddQuadFilled(plot.at(x[i], lower[i]), plot.at(x[i], upper[i]),
                           plot.at(x[i + 1], upper[i + 1]), plot.at(x[i + 1], lower[i + 1]), ink);
    }
    list.Flags = before;
}

void draw_bands(ImDrawList& list,
                const Plot& plot,
                const LightRows& rows,
                const EyeLightRows& eye) {
    const Curve& x = rows.fractions;
    Curve below(x.size(), 0.0);
    fill_between(list, plot, x, below, eye.relative, colour(eye.role, 0.25F));
    below = eye.relative;
    const auto names = opening_names(rows);
    for (std::size_t place = 0; place < names.size(); ++place) {
        const StopShare* share = share_of(eye, names[place]);
        if (share == nullptr) continue;
        Curve above = below;
        for (std::size_t k = 0; k < x.size(); ++k)
            above[k] = std::min(1.0, below[k] + share->share[k]);
        fill_between(list, plot, x, below, above, band_colour(place));
        below = above;
    }
}

void draw_curves(ImDrawList& list, const Plot& plot, const Curve& x, const EyeLightRows& eye) {
    for (std::size_t i = 0; i < x.size(); ++i)
        list.PathLineTo(plot.at(x[i], eye.relative[i]));
    list.PathStroke(colour(eye.role), 0, grid(0.5F));
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
        dashed_line(list, plot.at(x[i], eye.lowest[i]), plot.at(x[i + 1], eye.lowest[i + 1]),
                    colour(eye.role, 0.8F), std::max(1.0F, grid(0.3F)));
    }
}

}  // namespace

std::vector<std::string> opening_names(const LightRows& rows) {
    std::vector<std::string> names;
    for (const EyeLightRows& eye : rows.eyes) {
        for (const StopShare& share : eye.shares) {
            if (std::find(names.begin(), names.end(), share.name) == names.end())
                names.push_back(share.name);
        }
    }
    return names;
}

const StopShare* share_of(const EyeLightRows& eye, const std::string& name) {
    const auto found = std::find_if(eye.shares.begin(), eye.shares.end(),
                                    [&](const StopShare& share) { return share.name == name; });
    return found == eye.shares.end() ? nullptr : &*found;
}

ImU32 band_colour(std::size_t place) {
    constexpr std::array strengths{0.95F, 0.62F, 0.38F, 0.22F};
    return colour(ColourRole::clipped, strengths[std::min(place, strengths.size() - 1)]);
}

void draw_light_plot(ImDrawList& list,
                     const Area& area,
                     const LightRows& rows,
                     const EyeLightRows& eye) {
    const float line = ImGui::GetTextLineHeight();
    const bool has_scale = eye.eye == Eye::left;
    const float scale_room = has_scale ? text_width("100") + grid(1) : 0;
    const Plot plot{{area.left + scale_room, area.top + line / 2},
                    {area.right() - 1, area.bottom() - line - grid(1)}};
    list.AddRectFilled(plot.low, plot.high, colour(Tone::ground));
    draw_bands(list, plot, rows, eye);
    for (const double light : {0.25, 0.5, 0.75}) {
        list.AddLine(plot.at(0, light), plot.at(1, light), colour(Tone::text_dim, 0.25F));
    }
    draw_curves(list, plot, rows.fractions, eye);
    for (const int percent : {0, 50, 100}) {
        const float y = plot.at(0, percent / 100.0).y - line / 2;
        if (has_scale)
            text_ending_at(list, {plot.low.x - grid(1), y}, std::to_string(percent),
                           colour(Tone::text_dim));
    }
    const float room = plot.high.x - plot.low.x - text_width(" edge");
    for (const std::string_view middle : {"middle", "mid"}) {
        if (text_width(middle) > room) continue;
        text_at(list, {plot.low.x, plot.high.y + grid(1)}, middle, colour(Tone::text_dim));
        break;
    }
    text_ending_at(list, {plot.high.x, plot.high.y + grid(1)}, "edge", colour(Tone::text_dim));
}

}  // namespace beamfork
