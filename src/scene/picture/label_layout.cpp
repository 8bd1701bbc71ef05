#include "scene/picture/label_layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <optional>

namespace beamfork {

namespace {

using Box = PixelBox;

bool overlap(const Box& a, const Box& b) {
    return a.low.x < b.high.x + label_margin_px && b.low.x < a.high.x + label_margin_px
           && a.low.y < b.high.y + label_margin_px && b.low.y < a.high.y + label_margin_px;
}

glm::vec2 nearest_point(const Box& box, glm::vec2 to) { return glm::clamp(to, box.low, box.high); }

struct Spot {
    glm::vec2 direction;
    float distance;
};

// All places that are tried round an anchor.
std::vector<Spot> spots() {
    constexpr int directions = 16;
    std::vector<Spot> all;
    for (const float distance : {10.F, 22.F, 38.F, 58.F, 82.F, 110.F, 145.F, 185.F, 230.F, 280.F}) {
        for (int i = 0; i < directions; ++i) {
            const float angle = 2 * std::numbers::pi_v<float> * static_cast<float>(i) / directions;
            all.push_back({{std::sin(angle), -std::cos(angle)}, distance});
        }
    }
    return all;
}

Box box_at(glm::vec2 anchor, const Spot& spot, glm::vec2 size) {
    const glm::vec2 half = size * 0.5F;
    // The point of the box's edge towards the anchor lies at the distance.
    const glm::vec2 reach = half / glm::max(glm::abs(spot.direction), glm::vec2(1e-3F));
    const glm::vec2 centre = anchor + spot.direction * (spot.distance + std::min(reach.x, reach.y));
    return {centre - half, centre + half};
}

Box shifted_inside(Box box, const Viewport& viewport) {
    const glm::vec2 size = box.high - box.low;
    const glm::vec2 most = glm::vec2(viewport.width, viewport.height) - size - label_margin_px;
    box.low = glm::max(glm::min(box.low, most), glm::vec2(label_margin_px));
    return {box.low, box.low + size};
}

class Layout {
public:
    Layout(const Viewport& viewport, const LightCover& light)
        : viewport_(viewport), light_(light), spots_(spots()) {}

    void place(std::size_t label, glm::vec2 anchor, glm::vec2 size) {
        if (size.x + 2 * label_margin_px > viewport_.width
            || size.y + 2 * label_margin_px > viewport_.height)
            return;
        std::optional<Box> best;
        float least = std::numeric_limits<float>::infinity();
        for (const Spot& spot : spots_) {
            const Box box = shifted_inside(box_at(anchor, spot, size), viewport_);
            if (hits_a_box(box)) continue;
            const float cost = cost_of(box, anchor);
            if (cost >= least) continue;
            least = cost;
            best = box;
        }
        if (best) accept(label, anchor, *best);
    }

    [[nodiscard]] std::vector<PlacedLabel> take() { return std::move(placed_); }

private:
    [[nodiscard]] bool hits_a_box(const Box& box) const {
        const bool is_taken = std::any_of(light_.taken.begin(), light_.taken.end(),
                                          [&](const Box& other) { return overlap(box, other); });
        return is_taken
               || std::any_of(placed_.begin(), placed_.end(), [&](const PlacedLabel& other) {
                      return overlap(box, {other.low, other.high});
                  });
    }

    // In pixels of distance: what a box costs that hides light, or a labelled place, or whose leader runs
    // through another box, or that is taken for another's.
    [[nodiscard]] float cost_of(const Box& box, glm::vec2 anchor) const {
        constexpr float hidden_light_px = 350;
        constexpr float tangle_px = 300;
        const glm::vec2 leader = nearest_point(box, anchor);
        float cost =
            glm::distance(anchor, leader) + hidden_light_px * light_.share_under(box.low, box.high);
        for (const PlacedLabel& other : placed_) {
            if (crosses(anchor, leader, {other.low, other.high})) cost += tangle_px;
            if (crosses(other.anchor, other.leader, box)) cost += tangle_px;
        }
        return cost;
    }

    void accept(std::size_t label, glm::vec2 anchor, const Box& box) {
        constexpr float close_px = 6;
        const glm::vec2 leader = nearest_point(box, anchor);
        placed_.push_back(
            {label, box.low, box.high, anchor, leader, glm::distance(leader, anchor) > close_px});
    }

    Viewport viewport_;
    const LightCover& light_;
    std::vector<Spot> spots_;
    std::vector<PlacedLabel> placed_;
};

}  // namespace

std::vector<PlacedLabel> lay_out_labels(std::span<const Label> labels,
                                        const Camera& camera,
                                        Viewport viewport,
                                        const LabelMeasure& measure,
                                        const LightCover& light,
                                        float foot_px) {
    std::vector<std::size_t> order(labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return labels[a].priority < labels[b].priority;
    });
    Layout layout({viewport.width, viewport.height - foot_px}, light);
    for (const std::size_t index : order) {
        const auto anchor = project(camera, labels[index].at, viewport);
        if (!anchor || anchor->x < 0 || anchor->y < 0 || anchor->x > viewport.width
            || anchor->y > viewport.height) {
            continue;
        }
        layout.place(index, *anchor, measure(labels[index]));
    }
    return layout.take();
}

}  // namespace beamfork
