#include "scene/handles/dimension_layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace beamfork {

namespace {

using Stroke = std::pair<glm::vec2, glm::vec2>;

// Two ends on screen, and which way is off the body.
struct SeenLine {
    glm::vec2 a{0};
    glm::vec2 b{0};
    glm::vec2 off{0, 1};
    [[nodiscard]] float length() const { return glm::distance(a, b); }
    [[nodiscard]] glm::vec2 along() const { return (b - a) / length(); }
};

struct Candidate {
    PlacedDimension placed;
    float cost = 0;
};

Direction square_to(const Direction& line, const Point& at, const Camera& camera) {
    const Direction square = glm::cross(line, at - Point(eye_position(camera)));
    return glm::length(square) > 1e-9 ? glm::normalize(square) : Direction(camera_axes(camera).up);
}

float extent_along(glm::vec2 size, glm::vec2 direction) {
    return std::abs(direction.x) * size.x + std::abs(direction.y) * size.y;
}

PixelBox box_round(glm::vec2 middle, glm::vec2 size) {
    return {middle - size / 2.0F, middle + size / 2.0F};
}

class DimensionLayout {
public:
    DimensionLayout(const Camera& camera,
                    Viewport viewport,
                    const NumberMeasure& measure,
                    LightCover& cover,
                    float unit)
        : camera_(camera), viewport_(viewport), measure_(measure), cover_(cover), unit_(unit) {}

    /// Names laid out with the cover afterwards touch no line.
    void keep_names_off_lines() {
        for (const Stroke& line : lines_) {
            const float length = glm::distance(line.first, line.second);
            const int pieces = 1 + static_cast<int>(length / (2 * unit_));
            for (int i = 0; i <= pieces; ++i) {
                const glm::vec2 at = glm::mix(line.first, line.second,
                                              static_cast<float>(i) / static_cast<float>(pieces));
                cover_.taken.push_back(box_round(at, glm::vec2(unit_)));
            }
        }
    }

    std::optional<PlacedDimension> place(const Dimension& dimension) {
        best_.reset();
        size_ = measure_(dimension.text);
        dimension.kind == DimensionKind::along ? try_along(dimension) : try_across(dimension);
        if (!best_) return std::nullopt;
        take(best_->placed);
        return std::move(best_->placed);
    }

private:
    [[nodiscard]] std::optional<glm::vec2> seen(const Point& at) const {
        return project(camera_, glm::vec3(at), viewport_);
    }

    void try_along(const Dimension& dimension) {
        if (glm::distance(dimension.from, dimension.to) < 1e-6) return;
        const Point middle = (dimension.from + dimension.to) / 2.0;
        const Direction line = glm::normalize(dimension.to - dimension.from);
        const Direction side = square_to(line, middle, camera_);
        const double free = glm::dot(side, dimension.free_side);
        for (const double sign : {1.0, -1.0}) {
            if (sign * free < -0.2) continue;  // far from what it measures: rather left out
            try_side(dimension, sign * side);
        }
    }

    void try_side(const Dimension& dimension, const Direction& side) {
        const auto a = seen(dimension.from + dimension.clear * side);
        const auto b = seen(dimension.to + dimension.clear * side);
        const auto foot = seen(dimension.from);
        if (!a || !b || !foot || glm::distance(*a, *b) < 1) return;
        const glm::vec2 along = glm::normalize(*b - *a);
        glm::vec2 off{-along.y, along.x};
        if (glm::dot(off, *a - *foot) < 0) off = -off;
        for (const float steps : {6.0F, 11.0F, 16.0F, 22.0F, 29.0F}) {
            SeenLine line{*a + steps * unit_ * off, *b + steps * unit_ * off, off};
            PlacedDimension placed;
            placed.extensions = {{*a + unit_ * off, line.a + 1.5F * unit_ * off},
                                 {*b + unit_ * off, line.b + 1.5F * unit_ * off}};
            number_on_line(std::move(placed), line, steps * unit_, dimension.number_before);
        }
    }

    // On the line with room for it between the arrows, else beyond either end with the arrows from outside.
    void number_on_line(PlacedDimension placed, const SeenLine& line, float cost, bool before) {
        const glm::vec2 along = line.along();
        const float number = extent_along(size_, along);
        if (line.length() >= number + 2 * arrow() + 2 * unit_) {
            const glm::vec2 middle = (line.a + line.b) / 2.0F;
            placed.number = box_round(middle, size_);
            placed.lines = {{line.a, middle - number / 2 * along},
                            {middle + number / 2 * along, line.b}};
            placed.arrows = {{line.a, -along}, {line.b, along}};
            return offer(std::move(placed), cost);
        }
        const float tail = arrow() + 2 * unit_;
        for (const bool at_b : {true, false}) {
            PlacedDimension one = placed;
            const glm::vec2 end = at_b ? line.b + tail * along : line.a - tail * along;
            one.number = box_round(end + (at_b ? 1.0F : -1.0F) * number / 2 * along, size_);
            one.lines = {
                {line.a - tail * along, line.a}, {line.a, line.b}, {line.b, line.b + tail * along}};
            one.arrows = {{line.a, along}, {line.b, -along}};
            offer(std::move(one), cost + (at_b == before ? 6 * unit_ : 0));
        }
    }

    // Across the opening from rim to rim, the number beyond one of them.
    void try_across(const Dimension& dimension) {
        const Direction side =
            square_to(glm::normalize(dimension.to - dimension.from), dimension.from, camera_);
        const auto a = seen(dimension.from - dimension.clear * side);
        const auto b = seen(dimension.from + dimension.clear * side);
        if (!a || !b || glm::distance(*a, *b) < 1) return;
        for (const bool at_b : {true, false}) {
            const SeenLine line = at_b ? SeenLine{*a, *b} : SeenLine{*b, *a};
            const glm::vec2 along = line.along();
            const bool has_room = line.length() > 3 * arrow();
            for (const float steps : {6.0F, 12.0F, 19.0F, 27.0F, 36.0F}) {
                PlacedDimension placed;
                const glm::vec2 end = line.b + steps * unit_ * along;
                placed.number = box_round(end + extent_along(size_, along) / 2 * along, size_);
                placed.lines = {{line.a, end}};
                placed.arrows = {{line.a, has_room ? -along : along},
                                 {line.b, has_room ? along : -along}};
                offer(std::move(placed), steps * unit_);
            }
        }
    }

    [[nodiscard]] float arrow() const { return 2.5F * unit_; }

    [[nodiscard]] bool is_free(const PixelBox& box) const {
        if (!is_in_picture(box)) return false;
        return std::none_of(cover_.taken.begin(), cover_.taken.end(), [&](const PixelBox& other) {
            return box.low.x < other.high.x + unit_ && other.low.x < box.high.x + unit_
                   && box.low.y < other.high.y + unit_ && other.low.y < box.high.y + unit_;
        });
    }

    // Its lines through what is taken or out of the picture, or another's lines through its number.
    [[nodiscard]] bool is_tangled(const PlacedDimension& placed) const {
        const auto meets = [](const std::vector<Stroke>& strokes, const PixelBox& box) {
            return std::any_of(strokes.begin(), strokes.end(), [&](const Stroke& stroke) {
                return crosses(stroke.first, stroke.second, box);
            });
        };
        if (meets(strokes_, placed.number)) return true;
        const auto runs_out = [&](const Stroke& stroke) {
            return !is_in_picture(
                {glm::min(stroke.first, stroke.second), glm::max(stroke.first, stroke.second)});
        };
        if (std::any_of(placed.lines.begin(), placed.lines.end(), runs_out)) return true;
        const auto is_crossed = [&](const PixelBox& box) { return meets(placed.lines, box); };
        return std::any_of(cover_.taken.begin(), cover_.taken.end(), is_crossed)
               || std::any_of(numbers_.begin(), numbers_.end(), [&](const PixelBox& number) {
                      return meets(placed.extensions, number);
                  });
    }

    [[nodiscard]] bool is_in_picture(const PixelBox& box) const {
        return box.low.x >= unit_ && box.low.y >= unit_ && box.high.x <= viewport_.width - unit_
               && box.high.y <= viewport_.height - unit_;
    }

    void offer(PlacedDimension placed, float cost) {
        if (!is_free(placed.number) || is_tangled(placed)) return;
        constexpr float hidden_light_px = 350;
        cost += hidden_light_px * cover_.share_under(placed.number.low, placed.number.high);
        if (!best_ || cost < best_->cost) best_ = Candidate{std::move(placed), cost};
    }

    void take(const PlacedDimension& placed) {
        cover_.taken.push_back(placed.number);
        numbers_.push_back(placed.number);
        lines_.insert(lines_.end(), placed.lines.begin(), placed.lines.end());
        for (const auto* strokes : {&placed.extensions, &placed.lines}) {
            for (const Stroke& stroke : *strokes) {
                cover_line(cover_, stroke.first, stroke.second);
                strokes_.push_back(stroke);
            }
        }
    }

    const Camera& camera_;
    Viewport viewport_;
    const NumberMeasure& measure_;
    LightCover& cover_;
    float unit_;
    glm::vec2 size_{0};
    std::optional<Candidate> best_;
    std::vector<PixelBox> numbers_;  // of what is placed
    std::vector<Stroke> lines_;
    std::vector<Stroke> strokes_;  // lines and extension lines
};

}  // namespace

std::vector<PlacedDimension> lay_out_dimensions(std::span<const Dimension> dimensions,
                                                const Camera& camera,
                                                Viewport viewport,
                                                const NumberMeasure& measure,
                                                LightCover& cover,
                                                float unit_px) {
    DimensionLayout layout(camera, viewport, measure, cover, unit_px);
    std::vector<PlacedDimension> all;
    for (std::size_t i = 0; i < dimensions.size(); ++i) {
        auto placed = layout.place(dimensions[i]);
        if (!placed) continue;
        placed->dimension = i;
        all.push_back(*std::move(placed));
    }
    layout.keep_names_off_lines();
    return all;
}

}  // namespace beamfork
