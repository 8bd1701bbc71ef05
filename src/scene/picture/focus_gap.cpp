// Where each eye's light really comes together, and the dimension from there to where the eye wants it.
#include "scene/picture/focus_gap.hpp"

#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "scene/picture/folded_axis.hpp"
#include "scene/picture/picture_input.hpp"

#include <fmt/format.h>

namespace beamfork {

double depth_of_focus(const Report& report) {
    const double N = report.magnification.focal_ratio;
    return 2 * traced_wavelengths[primary_wavelength].value / 1000 * N * N;
}

std::string gap_text(double gap) {
    return fmt::format("focus {:.1f} mm {}", std::abs(gap), gap > 0 ? "short" : "too far");
}

namespace {

// Beside the arm: square to the plane in which it folds, on the side away from the telescope.
Direction beside(const EyePath& path) {
    const Pose& stop = path.world_from_field_stop;
    const Direction back = std::abs(stop.z().z) < 0.9 ? Direction{0, 0, 1} : Direction{0, 1, 0};
    return glm::normalize(back - glm::dot(back, stop.z()) * stop.z());
}

class GapDrawer {
public:
    GapDrawer(Frame& frame, double offset) : frame_(frame), offset_(offset) {}

    // A line along the axis, shifted aside, with an arrow and a tick at either end.
    void draw(const std::vector<Point>& axis, const Direction& aside) {
        std::vector<Point> shifted;
        for (const Point& point : axis)
            shifted.push_back(point + offset_ * aside);
        for (std::size_t i = 1; i < shifted.size(); ++i)
            line(shifted[i - 1], shifted[i], 4.5F, false);
        finish_end(axis.front(), shifted[0], shifted[1], aside);
        finish_end(axis.back(), shifted.back(), shifted[shifted.size() - 2], aside);
    }

    [[nodiscard]] double offset() const { return offset_; }

private:
    void
    finish_end(const Point& on_axis, const Point& tip, const Point& next, const Direction& aside) {
        constexpr double overhang = 3;
        line(on_axis, tip + overhang * aside, 1.2F, true);
        const double length = glm::distance(tip, next);
        if (length < 1e-6) return;
        const Direction along = (next - tip) / length;
        const double barb = std::min(6.0, 0.3 * length);
        for (const double side : {-0.4, 0.4})
            line(tip, tip + barb * (along + side * aside), 4.5F, false);
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

// The dimension stands clear of the eyepiece.
double clear_of_eyepiece(const PictureInput& input) {
    const auto& eyepiece = part_as<EyepiecePair>(input.setup, input.train().choice.eyepiece);
    return std::max(eyepiece.outer_diameter.value / 2, 18.0) + 7;
}

}  // namespace

void add_focus_gap(Frame& frame, const PictureInput& input) {
    const Report& report = input.report;
    const double depth = depth_of_focus(report);
    const int eyepiece = static_cast<int>(input.train().choice.eyepiece);
    const bool alike = std::abs(report.gap(Eye::left) - report.gap(Eye::right)) < 0.05;
    GapDrawer drawer(frame, clear_of_eyepiece(input));
    for (const Eye eye : both_eyes) {
        const EyePath& path = input.train().path(eye);
        const std::size_t side = side_of(eye);
        const double real = report.image_behind_stop[side];
        const double gap = report.gap(eye);
        const bool is_in_focus = std::abs(gap) <= depth;
        const Point focus = point_near_stop(path, real);
        mark_focus(frame, focus, is_in_focus);
        const bool is_told = eye == Eye::left || !alike;  // said once when both eyes agree
        if (is_in_focus) {
            if (is_told)
                frame.labels.push_back(
                    {glm::vec3(focus), "in focus", LabelRole::good, eyepiece, 12});
            continue;
        }
        const double wanted = path.wanted_image;
        const auto axis = folded_axis(path, std::min(real, wanted), std::max(real, wanted));
        const Direction aside = beside(path);
        drawer.draw(axis, aside);
        const Point middle = axis[axis.size() / 2];
        const Point at = axis.size() == 2 ? (axis[0] + axis[1]) / 2.0 : middle;
        if (!is_told) continue;
        const glm::vec3 beside_arm(at + drawer.offset() * aside);
        frame.labels.push_back({beside_arm, gap_text(gap), LabelRole::dimension, eyepiece, 0});
    }
}

}  // namespace beamfork
