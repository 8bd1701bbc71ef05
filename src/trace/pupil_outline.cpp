#include "trace/pupil_outline.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace beamfork {

namespace {

struct Stretch {
    double from = 0;
    double to = 0;
    [[nodiscard]] bool is_empty() const { return !(to > from); }
    /// Times the step in azimuth: the area.
    [[nodiscard]] double area() const { return (to * to - from * from) / 2; }
    /// Likewise its moment about the point where the line starts.
    [[nodiscard]] double moment() const { return (to * to * to - from * from * from) / 3; }
};

Stretch common(const Stretch& a, const Stretch& b) {
    return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

// What is still lit on one azimuth: a few stretches.
class LitStretches {
public:
    explicit LitStretches(double end) : count_(1) { stretches_[0] = {0, end}; }

    /// Darkens a stretch; how much of it was lit, as Stretch::area.
    double darken(const Stretch& dark) {
        if (dark.is_empty()) return 0;
        double taken = 0;
        const std::size_t before = count_;
        for (std::size_t i = 0; i < before; ++i) {
            Stretch& lit = stretches_.at(i);
            const Stretch lost = common(lit, dark);
            if (lost.is_empty()) continue;
            taken += lost.area();
            const Stretch rest{lost.to, lit.to};
            lit.to = lost.from;
            if (rest.is_empty()) continue;
            if (lit.is_empty()) {
                lit = rest;
            } else if (count_ < stretches_.size()) {
                stretches_.at(count_++) = rest;
            }
        }
        return taken;
    }
    [[nodiscard]] bool touches(const Stretch& stretch) const {
        return std::any_of(stretches_.begin(), stretches_.begin() + static_cast<std::ptrdiff_t>(count_),
                           [&](const Stretch& lit) { return !common(lit, stretch).is_empty(); });
    }
    template <class Visit>
    void each(const Visit& visit) const {
        for (std::size_t i = 0; i < count_; ++i) {
            if (!stretches_.at(i).is_empty()) visit(stretches_.at(i));
        }
    }

private:
    std::array<Stretch, 8> stretches_;  // more obstructions than any telescope has
    std::size_t count_;
};

// An edge that bends by more than this share of how it moves over the pupil is not followed.
constexpr double most_bend = 0.35;

bool can_be_followed(const PupilBound& bound) {
    if (bound.shape == PupilBound::Shape::half)
        return bound.u.bend() <= most_bend * glm::length(bound.u.slope());
    const glm::dvec2 a = bound.u.slope();
    const glm::dvec2 b = bound.v.slope();
    // The smaller singular value: how the place moves with the point of the pupil where it moves least.
    const double sum = glm::dot(a, a) + glm::dot(b, b);
    const double product = a.x * b.y - a.y * b.x;
    const double least = (sum - std::sqrt(std::max(0.0, sum * sum - 4 * product * product))) / 2;
    return std::hypot(bound.u.bend(), bound.v.bend()) <= most_bend * std::sqrt(least);
}

// Well within every opening, so that each edge is crossed once on every azimuth.
bool is_well_within(std::span<const PupilBound> bounds, glm::dvec2 place) {
    constexpr double well = 0.08;  // in units of the pupil's radius
    return std::all_of(bounds.begin(), bounds.end(), [&](const PupilBound& bound) {
        const double moves = glm::length(bound.u.slope());
        switch (bound.shape) {
        case PupilBound::Shape::half: return bound.gate || bound.u.at(place) >= well * moves;
        case PupilBound::Shape::disc:
            return std::hypot(bound.u.at(place), bound.v.at(place)) <= 1 - well * moves;
        case PupilBound::Shape::block: break;
        }
        return true;
    });
}

SeenBound seen_from(glm::dvec2 centre, const PupilBound& bound) {
    SeenBound seen{bound.shape, bound.u.about(centre), bound.v.about(centre), 0};
    // At an edge u^2 + v^2 is 1: it departs by twice what the place departs by.
    seen.residual = bound.shape == PupilBound::Shape::half
                        ? bound.u.residual
                        : 2 * std::hypot(bound.u.residual, bound.v.residual);
    seen.residual += 1e-9;  // what rounding leaves of a rim that is the pupil's own
    return seen;
}

}  // namespace

PupilOutline::PupilOutline() {
    for (std::size_t i = 0; i < most_azimuths; ++i) {
        const double turn =
            2 * std::numbers::pi * (static_cast<double>(i) + 0.5) / most_azimuths;
        x_[i] = std::cos(turn);
        y_[i] = std::sin(turn);
    }
}

void PupilOutline::start_lines(glm::dvec2 centre, std::size_t azimuths) {
    lines_.count = azimuths;
    const std::size_t every = most_azimuths / azimuths;
    for (std::size_t i = 0; i < azimuths; ++i) {
        lines_.x[i] = x_[i * every];
        lines_.y[i] = y_[i * every];
        const double along = centre.x * lines_.x[i] + centre.y * lines_.y[i];
        lines_.end[i] =
            std::sqrt(std::max(0.0, along * along + 1 - glm::dot(centre, centre))) - along;
    }
}

// Of the light on one line that an edge ends at that distance.
double PupilOutline::Edge::doubt(double at, std::size_t line) const {
    if (!is_followed) return std::numeric_limits<double>::infinity();
    return (at + inside.off[line]) * inside.off[line];
}

void PupilOutline::find_edges(std::span<const PupilBound> bounds, glm::dvec2 centre) {
    edge_count_ = 0;
    for (std::size_t i = 0; i < bounds.size(); ++i) {
        if (edge_count_ == edges_.size()) edges_.emplace_back();
        const PupilBound& bound = bounds[i];
        Edge& edge = edges_[edge_count_];
        edge.bound = i;
        find_inside(seen_from(centre, bound), lines_, edge.inside);
        if (bound.shape != PupilBound::Shape::block && edge.inside.is_whole) continue;
        edge.is_followed = can_be_followed(bound);
        edge.gate.reset();
        if (bound.gate) {
            const SeenBound gate{PupilBound::Shape::half, bound.gate->about(centre), {}, 0};
            find_inside(gate, lines_, edge.gate.emplace());
        }
        ++edge_count_;
    }
}

// Openings alone, all with the lines' start inside: each cuts the lines off from outside.
void PupilOutline::add_up_nested(Survey& sum) {
    AzimuthColumn lit = lines_.end;
    for (std::size_t k = 0; k < edge_count_; ++k) {
        const InsideStretches& inside = edges_[k].inside;
        double taken = 0;
        for (std::size_t i = 0; i < lines_.count; ++i) {
            const double rest = std::min(lit[i], inside.to[i]);
            if (inside.to[i] - inside.off[i] < lit[i]) sum.doubt += edges_[k].doubt(rest, i);
            taken += lit[i] * lit[i] - rest * rest;
            lit[i] = rest;
        }
        light_.lost[edges_[k].bound] += taken / 2;
    }
    for (std::size_t i = 0; i < lines_.count; ++i) {
        sum.lit += lit[i] * lit[i] / 2;
        sum.middle += glm::dvec2{lines_.x[i], lines_.y[i]} * (lit[i] * lit[i] * lit[i] / 3);
    }
}

void PupilOutline::add_up(std::span<const PupilBound> bounds, Survey& sum) {
    for (std::size_t i = 0; i < lines_.count; ++i) {
        const double end = lines_.end[i];
        LitStretches lit(end);
        for (std::size_t k = 0; k < edge_count_; ++k) {
            const Edge& edge = edges_[k];
            const Stretch inside{edge.inside.from[i], edge.inside.to[i]};
            const Stretch holds =
                edge.gate ? Stretch{edge.gate->from[i], edge.gate->to[i]} : Stretch{0, end};
            double& lost = light_.lost[edge.bound];
            const double off = edge.inside.off[i];
            if (off > 0) {
                for (const double at : {inside.from, inside.to}) {
                    if (at > 0 && at < end && lit.touches({at - off, at + off}))
                        sum.doubt += edge.doubt(at, i);
                }
            }
            if (bounds[edge.bound].shape == PupilBound::Shape::block) {
                lost += lit.darken(common(inside, holds));
            } else {
                lost += lit.darken(common({0, inside.from}, holds));
                lost += lit.darken(common({inside.to, end}, holds));
            }
        }
        lit.each([&](const Stretch& stretch) {
            sum.lit += stretch.area();
            sum.middle += glm::dvec2{lines_.x[i], lines_.y[i]} * stretch.moment();
        });
    }
}

PupilOutline::Survey PupilOutline::survey(std::span<const PupilBound> bounds,
                                          glm::dvec2 centre,
                                          std::size_t azimuths) {
    start_lines(centre, azimuths);
    light_.lost.assign(bounds.size(), 0);
    Survey sum;
    find_edges(bounds, centre);
    const bool are_nested =
        std::all_of(edges_.begin(), edges_.begin() + static_cast<std::ptrdiff_t>(edge_count_),
                    [&](const Edge& edge) {
                        return bounds[edge.bound].shape != PupilBound::Shape::block && !edge.gate
                               && edge.inside.starts_inside;
                    });
    if (are_nested) {
        add_up_nested(sum);
    } else {
        add_up(bounds, sum);
    }
    sum.middle = centre + (sum.lit > 0 ? sum.middle / sum.lit : glm::dvec2{0});
    // The pupil's area is pi.
    const double share = 2 / static_cast<double>(azimuths);
    sum.lit *= share;
    sum.doubt *= share;
    return sum;
}

const PupilLight& PupilOutline::light(std::span<const PupilBound> bounds) {
    constexpr std::size_t to_find_middle = 32;
    constexpr double hardly_any = 1e-6;
    glm::dvec2 centre{0};
    Survey found;
    bool is_done = false;
    if (!is_well_within(bounds, centre)) {
        found = survey(bounds, centre, to_find_middle);
        is_done = found.lit < hardly_any;
        centre = found.middle;
    }
    if (!is_done) found = survey(bounds, centre, most_azimuths);
    // On azimuths from beside the middle the pupil's own area comes out a little off: what is lost fills it.
    double sum = 0;
    for (const double share : light_.lost)
        sum += share;
    light_.lit = sum > 0 ? std::min(found.lit, 1.0) : 1;
    for (double& share : light_.lost)
        share *= sum > 0 ? (1 - light_.lit) / sum : 0;
    light_.doubt = found.doubt;
    return light_;
}

}  // namespace beamfork
