// Light over the field on paper: one curve for each eye, solid for the left, dashed for the right.
#include "base/text.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "scene/sheet/sheet_drawings.hpp"
#include "scene/sheet/sheet_svg.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr SheetSvg::Spot plot_corner{44, 10};
constexpr SheetSvg::Spot plot_size{300, 170};

SheetSvg::Spot plot_spot(double fraction, double relative) {
    return plot_corner + SheetSvg::Spot{plot_size.x * fraction, plot_size.y * (1 - relative)};
}

void draw_plot_grid(SheetSvg& svg, const LightRows& rows) {
    for (int percent = 0; percent <= 100; percent += 25) {
        const auto at = plot_spot(0, percent / 100.0);
        svg.line(at, plot_spot(1, percent / 100.0), percent == 0 ? "axis" : "grid");
        svg.words(at + SheetSvg::Spot{-6, 4}, fmt::format("{} %", percent), "small", "end");
    }
    for (const double fraction : {0.0, 0.5, 1.0}) {
        const auto at = plot_spot(fraction, 0);
        svg.line(at, plot_spot(fraction, 1), fraction == 0 ? "axis" : "grid");
        const double diameter = rows.diameters.empty() ? 0 : rows.diameters.back() * fraction;
        svg.words(at + SheetSvg::Spot{0, 15}, format_number(diameter, 1), "small", "middle");
    }
    svg.words(plot_spot(0.5, 0) + SheetSvg::Spot{0, 31}, "mm across the field stop", "small",
              "middle");
}

}  // namespace

std::string sheet_light_curves(const Setup& setup, const Report& report) {
    const LightRows rows = light_at_stops_rows(setup, report);
    SheetSvg svg(360, 236, "light", "Light over the field of each eye");
    draw_plot_grid(svg, rows);
    double key_x = plot_corner.x;
    for (const EyeLightRows& eye : rows.eyes) {
        const bool is_left = eye.eye == Eye::left;
        const std::string_view style = is_left ? "curve left" : "curve right";
        SheetSvg::Spots mean;
        for (std::size_t i = 0; i < eye.relative.size() && i < rows.fractions.size(); ++i)
            mean.push_back(plot_spot(rows.fractions[i], eye.relative[i]));
        svg.path(mean, style);
        svg.line({key_x, 226}, {key_x + 34, 226}, style);
        svg.words({key_x + 40, 230}, eye.name, "small", "start");
        key_x += 120;
    }
    return svg.text();
}

}  // namespace beamfork
