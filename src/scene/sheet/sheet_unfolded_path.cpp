// The unfolded path on paper: the left eye above the axis, the right one below it.
#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "scene/sheet/sheet_drawings.hpp"
#include "scene/sheet/sheet_svg.hpp"
#include "scene/unfolded_path/unfolded_path_rows.hpp"
#include "scene/unfolded_path/unfolded_path_view.hpp"
#include "trace/ray.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double path_width = 720;
constexpr double path_height = 250;
constexpr double names_height = 34;

class PathSheet {
public:
    explicit PathSheet(const UnfoldedPathRows& rows)
        : rows_(rows),
          view_(fit_view(rows, path_width, path_height)),
          svg_(path_width,
               names_height + path_height + 42,
               "unfolded",
               "The train straightened, heights drawn larger") {}

    std::string draw() {
        draw_names();
        for (const EyeTrack& track : rows_.eyes)
            draw_track(track);
        svg_.line(at(view_.left, 0), at(view_.place_at(path_width), 0), "axis dashed");
        draw_gap();
        draw_ruler();
        return svg_.text();
    }

private:
    [[nodiscard]] SheetSvg::Spot at(double place, double height) const {
        return {view_.x_of(place), names_height + path_height / 2 + view_.y_of(height)};
    }

    void draw_names() {
        std::vector<LaneWord> words;
        std::vector<std::pair<double, std::string>> numbers;
        for (const PathStretch& stretch : rows_.stretches) {
            const double middle = view_.x_of((stretch.from + stretch.to) / 2);
            if (middle < 0 || middle > path_width) continue;
            numbers.emplace_back(middle, std::to_string(stretch.part + 1));
        }
        std::sort(numbers.begin(), numbers.end());
        for (const auto& [x, number] : numbers)
            words.push_back({x, 18});
        const auto lefts = lane_places(words, path_width, 3);
        for (std::size_t i = 0; i < numbers.size(); ++i) {
            const SheetSvg::Spot centre{lefts[i] + 9, 10};
            svg_.line(centre + SheetSvg::Spot{0, 9}, {numbers[i].first, names_height}, "leader");
            svg_.circle(centre, 9, "balloon");
            svg_.words(centre + SheetSvg::Spot{0, 4}, numbers[i].second, "small strong", "middle");
        }
    }

    void draw_track(const EyeTrack& track) {
        const double sign = drawn_sign(track.eye);
        const double top = names_height + (track.eye == Eye::left ? 0 : path_height / 2);
        svg_.open_clip({0, top}, {path_width, path_height / 2});
        for (const GlassBlock& block : track.glass) {
            const auto corner = at(block.from, sign * block.above);
            svg_.rect(corner, at(block.to, sign * block.below) - corner, "body glass");
        }
        for (auto cone = track.cones.rbegin(); cone != track.cones.rend(); ++cone) {
            for (const LightBand& band : cone->bands)
                draw_band(band, cone->field == 0, track);
        }
        for (const TubeWall& wall : track.walls) {
            for (const double height : {wall.above, wall.below})
                svg_.line(at(wall.from, sign * height), at(wall.to, sign * height), "stroke thin");
        }
        for (const Jaw& jaw : track.jaws)
            draw_jaw(jaw, sign);
        svg_.close();
    }

    void draw_band(const LightBand& band, bool is_middle, const EyeTrack& track) {
        const double sign = drawn_sign(track.eye);
        SheetSvg::Spots outline;
        for (const BandPlace& place : band.places)
            outline.push_back(at(place.at, sign * place.a));
        for (auto place = band.places.rbegin(); place != band.places.rend(); ++place)
            outline.push_back(at(place->at, sign * place->b));
        const bool is_lost = band.fate != RayFate::reached;
        const char* style = is_lost                  ? "beam lost"
                            : track.eye == Eye::left ? is_middle ? "beam left" : "beam left edge"
                            : is_middle              ? "beam right"
                                                     : "beam right edge";
        svg_.path(outline, style, true);
        if (!is_lost || band.places.empty()) return;
        const BandPlace& end = band.places.back();
        svg_.cross(at(end.at, sign * (end.a + end.b) / 2), 3, "stroke bold");
    }

    void draw_jaw(const Jaw& jaw, double sign) {
        const bool is_wedge = jaw.kind == JawKind::opening || jaw.kind == JawKind::field_stop;
        if (jaw.kind == JawKind::fold || jaw.kind == JawKind::lens)
            svg_.line(at(jaw.above.x, sign * jaw.above.y), at(jaw.below.x, sign * jaw.below.y),
                      jaw.kind == JawKind::lens ? "stroke bold" : "stroke thin");
        for (const AxisPlace& edge : {jaw.above, jaw.below}) {
            const auto tip = at(edge.x, sign * edge.y);
            const double away = edge.y * sign > 0 ? -1 : 1;
            const double height = jaw.kind == JawKind::field_stop ? 22 : 15;
            if (is_wedge || jaw.bites())
                svg_.path({tip, tip + SheetSvg::Spot{-2.5, away * height},
                           tip + SheetSvg::Spot{2.5, away * height}},
                          jaw.bites() ? "jaw bites" : "jaw", true);
            if (jaw.bites())
                svg_.cross(tip + SheetSvg::Spot{0, away * (height + 6)}, 3.5, "stroke bold");
        }
    }

    void draw_gap() {
        for (const EyeTrack& track : rows_.eyes) {
            const FocusMark& focus = track.focus;
            svg_.diamond(at(focus.real, 0), 5, focus.is_in_focus ? "mark good" : "mark short");
            if (focus.is_in_focus || track.eye == Eye::right) continue;
            const double y = names_height + 8;
            for (const double place : {focus.real, focus.wanted})
                svg_.line({view_.x_of(place), y}, at(place, 0), "stroke dashed");
            svg_.arrow({view_.x_of(focus.real), y}, {view_.x_of(focus.wanted), y}, "stroke bold");
            svg_.words({std::min(view_.x_of(focus.real), view_.x_of(focus.wanted)) - 6, y + 4},
                       focus.text, "small strong halo", "end");
        }
    }

    void draw_ruler() {
        const double y = names_height + path_height + 6;
        svg_.line({0, y}, {path_width, y}, "axis");
        const double step = tick_step(view_, 55);
        const double first = std::ceil((view_.left - rows_.zero) / step);
        for (double tick = first; rows_.zero + tick * step <= view_.place_at(path_width); ++tick) {
            const double x = view_.x_of(rows_.zero + tick * step);
            svg_.line({x, y}, {x, y + 4}, "axis");
            const std::string number = typeset(format_number(tick * step, 0));
            // On the paper whole: digits are wider than the mean letter.
            const double half = 0.65 * about_width(number, 10.5);
            svg_.words({std::clamp(x, half, path_width - half), y + 16}, number, "small", "middle");
        }
        svg_.words({0, y + 33}, "mm behind the racked-in drawtube's rear face, along the light",
                   "small", "start");
        svg_.words({path_width, y + 33},
                   "heights drawn " + format_exact(view_.across) + " × as large", "small", "end");
    }

    const UnfoldedPathRows& rows_;
    UnfoldedView view_;
    SheetSvg svg_;
};

}  // namespace

std::string sheet_unfolded_path(const Setup& setup, const Report& report) {
    const UnfoldedPathRows rows = unfolded_path_rows(setup, report);
    return PathSheet(rows).draw();
}

}  // namespace beamfork
