#include "trace/pupil_outline.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "trace/lit_curves.hpp"
#include "trace/lit_stretches.hpp"

namespace beamfork {

namespace {

// An edge that bends by more than this share of how it moves over the pupil is not followed.
constexpr double most_bend = 0.8;

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

// Enough where kinks are seen to; elsewhere `most_azimuths`.
constexpr std::size_t few_azimuths = 64;
constexpr std::size_t azimuths_to_find_middle = 32;
static_assert(most_azimuths % few_azimuths == 0 && few_azimuths % azimuths_to_find_middle == 0);

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
        const double turn = 2 * std::numbers::pi * (static_cast<double>(i) + 0.5) / most_azimuths;
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
            if (edge.gate->is_whole) edge.gate.reset();  // it holds everywhere
        }
        ++edge_count_;
    }
}

// Each edge cuts the lines off from outside, or as an obstruction about their start from inside.
void PupilOutline::add_up_nested(std::span<const PupilBound> bounds, Survey& sum) {
    LitCurve outer{lines_.end, {}};
    outer.edge.fill(&lines_.end);
    LitCurve inner{{}, {}};
    double area = area_between(outer, inner, lines_.count);
    for (std::size_t k = 0; k < edge_count_; ++k) {
        const Edge& edge = edges_[k];
        const InsideStretches& inside = edge.inside;
        const bool is_block = bounds[edge.bound].shape == PupilBound::Shape::block;
        LitCurve& curve = is_block ? inner : outer;
        for (std::size_t i = 0; i < lines_.count; ++i) {
            const double at = inside.to[i];
            const double off = inside.off[i];
            if (off > 0 && at - off < outer.at[i] && at + off > inner.at[i])
                sum.doubt += edge.doubt(at, i);
            if (is_block ? at <= curve.at[i] : at >= curve.at[i]) continue;
            curve.at[i] = at;
            curve.edge[i] = &inside.to;
        }
        const double rest = std::min(area_between(outer, inner, lines_.count), area);
        light_.lost[edge.bound] += area - rest;
        area = rest;
    }
    for (std::size_t i = 0; i < lines_.count; ++i)
        add_moment(sum, i, {inner.at[i], std::max(inner.at[i], outer.at[i])});
    sum.lit = std::max(area, 0.0);
}

void PupilOutline::add_up(std::span<const PupilBound> bounds, Survey& sum) {
    for (std::size_t i = 0; i < lines_.count; ++i) {
        const double end = lines_.end[i];
        LitStretches lit(end);
        for (std::size_t k = 0; k < edge_count_; ++k) {
            const Edge& edge = edges_[k];
            const Stretch inside{edge.inside.from[i], std::min(edge.inside.to[i], end)};
            const Stretch holds = edge.gate
                                      ? Stretch{edge.gate->from[i], std::min(edge.gate->to[i], end)}
                                      : Stretch{0, end};
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
            add_moment(sum, i, {stretch.from, stretch.to});
        });
    }
}

bool PupilOutline::are_nested() const {
    return std::all_of(edges_.begin(), edges_.begin() + static_cast<std::ptrdiff_t>(edge_count_),
                       [](const Edge& edge) { return !edge.gate && edge.inside.starts_inside; });
}

void PupilOutline::add_moment(Survey& sum, std::size_t line, glm::dvec2 lit) const {
    const Stretch stretch{lit.x, lit.y};
    sum.seen += stretch.area();
    sum.middle += glm::dvec2{lines_.x[line], lines_.y[line]} * stretch.moment();
}

PupilOutline::Survey
PupilOutline::survey(std::span<const PupilBound> bounds, glm::dvec2 centre, std::size_t azimuths) {
    start_lines(centre, azimuths);
    light_.lost.assign(bounds.size(), 0);
    Survey sum;
    find_edges(bounds, centre);
    if (are_nested()) {
        add_up_nested(bounds, sum);
    } else {
        if (azimuths == few_azimuths) {
            start_lines(centre, most_azimuths);
            find_edges(bounds, centre);
        }
        add_up(bounds, sum);
    }
    sum.middle = centre + (sum.seen > 0 ? sum.middle / sum.seen : glm::dvec2{0});
    // The pupil's area is pi.
    const double share = 2 / static_cast<double>(lines_.count);
    sum.lit *= share;
    sum.doubt *= share;
    return sum;
}

const PupilLight& PupilOutline::light(std::span<const PupilBound> bounds) {
    glm::dvec2 centre{0};
    if (!is_well_within(bounds, centre)) {
        const Survey first = survey(bounds, centre, azimuths_to_find_middle);
        if (first.seen > 0) centre = first.middle;
    }
    const Survey found = survey(bounds, centre, few_azimuths);
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
