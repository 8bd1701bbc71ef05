#include "scene/tour/light_path_ruler.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "base/text.hpp"
#include "scene/picture/picture_input.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double between_ticks_mm = 10;
constexpr int ticks_to_a_long_one = 5;

// From a place with the image `left` ahead to one farther on; then through the lens that stands there.
double left_behind(const AxialStep& step, double left) {
    left -= step.reduced();
    if (step.lens_focal_length == 0) return left;
    return 1 / (1 / left + 1 / step.lens_focal_length);
}

// A ruler that is laid down piece by piece.
class Ruler {
public:
    explicit Ruler(Frame& frame) : frame_(frame) {}

    /// `reduced` mm of light path, which may lie in glass.
    void lay(const Point& from, const Point& to, double reduced, Line style) {
        style.on_top = true;
        style.from = glm::vec3(from);
        style.to = glm::vec3(to);
        frame_.lines.push_back(style);
        if (reduced <= 0 || glm::distance(from, to) < 1e-9) return;
        const Direction along = glm::normalize(to - from);
        const Direction other{0, std::abs(along.y) < 0.9 ? 1 : 0, std::abs(along.y) < 0.9 ? 0 : 1};
        const Direction across = glm::normalize(other - glm::dot(other, along) * along);
        for (double next = std::ceil(laid_ / between_ticks_mm) * between_ticks_mm;
             next <= laid_ + reduced; next += between_ticks_mm) {
            const Point at = glm::mix(from, to, (next - laid_) / reduced);
            const bool is_long = std::lround(next / between_ticks_mm) % ticks_to_a_long_one == 0;
            style.from = glm::vec3(at);
            style.to = glm::vec3(at + (is_long ? 9.0 : 5.0) * across);
            style.width_px = is_long ? 2.5F : 1.5F;
            style.dashed = false;
            frame_.lines.push_back(style);
        }
        laid_ += reduced;
    }

private:
    Frame& frame_;
    double laid_ = 0;
};

constexpr float ruler_width_px = 5;

void label(Frame& frame, const Point& at, std::string words, LabelRole role) {
    frame.labels.push_back({glm::vec3(at), std::move(words), role, -1, -1});
}

std::string told_mm(double length) { return format_number(length, 1) + " mm"; }

// The ruler along the parts that are on; keeps where it is.
struct LaidRuler {
    Ruler ruler;
    Point end{0.0};
    Direction along{0, 0, 1};
    double left = 0;  ///< from there to the image, mm of air
};

LaidRuler laid_along(Frame& frame, const PictureInput& input, std::span<const RulerShare> shares) {
    constexpr Millimetres worth_a_label{2};
    const auto& steps = input.train().path(Eye::left).steps;
    LaidRuler laid{Ruler(frame),
                   steps.front().from,
                   {0, 0, 1},
                   input.train().back_focus - input.train().drawtube.value};
    std::size_t taken = 0;
    bool is_dark = false;  // each other share, as on a surveyor's rod
    for (const RulerShare& share : shares) {
        Line style;
        style.role = ColourRole::dimension;
        style.width_px = ruler_width_px;
        style.shade = is_dark ? 0.3F : 1.0F;
        is_dark = !is_dark;
        const Point from = laid.end;
        for (; taken < steps.size() && steps[taken].part == share.part; ++taken) {
            const AxialStep& step = steps[taken];
            laid.ruler.lay(step.from, step.to, step.reduced(), style);
            if (glm::distance(step.from, step.to) > 1e-9)
                laid.along = glm::normalize(step.to - step.from);
            laid.end = step.to;
        }
        laid.left = share.left.value;
        if (share.takes > worth_a_label)
            label(frame, glm::mix(from, laid.end, 0.5),
                  fmt::format("{} takes {}", input.setup.parts[share.part].name,
                              told_mm(share.takes.value)),
                  LabelRole::part);
    }
    return laid;
}

// What is left of it, straight on behind the last part; its end.
Point lay_the_rest(Frame& frame, LaidRuler& laid) {
    const Point image = laid.end + laid.left * laid.along;
    Line style;
    style.role = ColourRole::good;
    style.width_px = ruler_width_px;
    laid.ruler.lay(laid.end, image, laid.left, style);
    frame.marks.push_back(
        {glm::vec3(image), ColourRole::good, 14, MarkShape::diamond, true, false});
    label(frame, glm::mix(laid.end, image, 0.6), told_mm(laid.left) + " left", LabelRole::note);
    return image;
}

}  // namespace

std::vector<RulerShare> ruler_shares(const Train& train) {
    std::vector<RulerShare> shares;
    double left = train.back_focus - train.drawtube.value;
    for (const AxialStep& step : train.path(Eye::left).steps) {
        if (shares.empty() || shares.back().part != step.part)
            shares.push_back({step.part, {}, {}});
        left = left_behind(step, left);
        shares.back().takes += Millimetres{step.reduced()};
        shares.back().left = Millimetres{left};
    }
    return shares;
}

Frame ruler_picture(const Setup& setup,
                    const Report& report,
                    const std::vector<bool>& on,
                    const PictureEffort& effort) {
    const PictureInput input{setup, report, effort};
    const Train& train = report.train;
    Frame frame;
    add_bodies(frame, input);
    const auto shares = ruler_shares(train);
    const auto last_on = std::find_if(shares.rbegin(), shares.rend(), [&](const RulerShare& share) {
        return share.part < on.size() && on[share.part];
    });
    const auto count = static_cast<std::size_t>(shares.rend() - last_on);
    LaidRuler laid = laid_along(frame, input, std::span(shares).first(count));
    if (laid.left < 0) {
        add_focus_gap(frame, input);
        finish_frame(frame, input);
        return frame;
    }
    const glm::vec3 image(lay_the_rest(frame, laid));
    finish_frame(frame, input);
    for (Bounds* bounds : {&frame.rear_bounds, &frame.bounds}) {
        bounds->low = glm::min(bounds->low, image);
        bounds->high = glm::max(bounds->high, image);
    }
    return frame;
}

}  // namespace beamfork
