// Where each eye's light really comes together, and the arrow from there to where the eye wants it.
#include "scene/picture/focus_gap.hpp"

#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "scene/picture/folded_axis.hpp"
#include "scene/picture/picture_input.hpp"
#include "study/focus/diffraction.hpp"

#include <fmt/format.h>

namespace beamfork {

bool is_in_focus(const Report& report, Eye eye) {
    return abs(report.gap(eye)) <= depth_of_focus(report.magnification.focal_ratio);
}

std::string gap_text(Millimetres gap) {
    return fmt::format("focus {:.1f} mm {}", abs(gap).value,
                       gap > Millimetres{} ? "short" : "too far");
}

namespace {

// Beside the arm: square to the plane in which it folds, on the side away from the telescope.
Direction beside(const EyePath& path) {
    const Pose& stop = path.world_from_field_stop;
    const Direction back = std::abs(stop.z().z) < 0.9 ? Direction{0, 0, 1} : Direction{0, 1, 0};
    return glm::normalize(back - glm::dot(back, stop.z()) * stop.z());
}

// The arrow from the image to where the eye wants it: along the folded axis but beside it, its one head at the end.
class GapArrow {
public:
    GapArrow(Frame& frame, double offset) : frame_(frame), offset_(offset) {}

    void draw(const std::vector<Point>& way, const Direction& aside) {
        std::vector<Point> shifted;
        for (const Point& point : way)
            shifted.push_back(point + offset_ * aside);
        double length = 0;
        for (std::size_t i = 1; i < shifted.size(); ++i) {
            line(shifted[i - 1], shifted[i], 4.5F, false);
            length += glm::distance(shifted[i - 1], shifted[i]);
        }
        constexpr double overhang = 3;
        line(way.front(), shifted.front() + overhang * aside, 1.2F, true);
        line(way.back(), shifted.back() + overhang * aside, 1.2F, true);
        head(shifted, aside, std::min(6.0, 0.3 * length));
    }

    [[nodiscard]] double offset() const { return offset_; }

private:
    // The last two points of `way` may coincide, at a corner of the axis.
    void head(const std::vector<Point>& way, const Direction& aside, double barb) {
        const Point& tip = way.back();
        const auto before = std::find_if(way.rbegin(), way.rend(), [&](const Point& point) {
            return glm::distance(point, tip) > 1e-6;
        });
        if (before == way.rend()) return;
        const Direction back = glm::normalize(*before - tip);
        // Where the axis itself runs aside, the barbs lie in the plane of its turn.
        const Direction flat = aside - glm::dot(aside, back) * back;
        const Direction other = glm::cross(back, Direction{0, 0, 1});
        const Direction across = glm::length(flat) > 0.1    ? glm::normalize(flat)
                                 : glm::length(other) > 0.1 ? glm::normalize(other)
                                                            : Direction{1, 0, 0};
        for (const double side : {-0.4, 0.4})
            line(tip, tip + barb * (back + side * across), 4.5F, false);
    }

    void line(const Point& from, const Point& to, float width, bool dashed) {
        frame_.lines.push_back(
            {glm::vec3(from), glm::vec3(to), ColourRole::shortfall, width, dashed, true, -1, true});
    }

    Frame& frame_;
    double offset_;
};

void mark_focus(Frame& frame, const Point& at, bool is_in_focus) {
    const ColourRole role = is_in_focus ? ColourRole::good : ColourRole::shortfall;
    const float size_px = is_in_focus ? 9 : 17;  // what is as it should be keeps quiet
    frame.marks.push_back({glm::vec3(at), role, size_px, MarkShape::diamond, true, false});
}

// The arrow stands clear of the eyepiece.
double clear_of_eyepiece(const PictureInput& input) {
    const auto& eyepiece = part_as<EyepiecePair>(input.setup, input.train().choice.eyepiece);
    return std::max(eyepiece.outer_diameter.value / 2, 18.0) + 7;
}

}  // namespace

void add_focus_gap(Frame& frame, const PictureInput& input) {
    const Report& report = input.report;
    const int eyepiece = static_cast<int>(input.train().choice.eyepiece);
    const bool alike = abs(report.gap(Eye::left) - report.gap(Eye::right)) < Millimetres{0.05};
    GapArrow arrow(frame, clear_of_eyepiece(input));
    for (const Eye eye : both_eyes) {
        const EyePath& path = input.train().path(eye);
        const Millimetres real = report.image_behind_stop[side_of(eye)];
        const bool is_sharp = is_in_focus(report, eye);
        const Point focus = point_near_stop(path, real);
        mark_focus(frame, focus, is_sharp);
        const bool is_told = eye == Eye::left || !alike;  // said once when both eyes agree
        if (is_sharp) {
            if (is_told)
                frame.labels.push_back(
                    {glm::vec3(focus), "in focus", LabelRole::good, eyepiece, 12});
            continue;
        }
        const auto axis = folded_axis(path, real.value, path.wanted_image);
        const Direction aside = beside(path);
        arrow.draw(axis, aside);
        const Point middle = axis[axis.size() / 2];
        const Point at = axis.size() == 2 ? (axis[0] + axis[1]) / 2.0 : middle;
        if (!is_told) continue;
        const glm::vec3 beside_arm(at + arrow.offset() * aside);
        frame.labels.push_back(
            {beside_arm, gap_text(report.gap(eye)), LabelRole::dimension, eyepiece, 0});
    }
}

}  // namespace beamfork
