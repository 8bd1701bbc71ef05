#include "trace/pupil_outline.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/contract.hpp"

namespace beamfork {

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

// A cubic on a line: along a direction from the point it is told about.
struct LineCubic {
    double c0 = 0;
    double c1 = 0;
    double c2 = 0;
    double c3 = 0;
    LineCubic(const PupilCubic& cubic, glm::dvec2 d) {
        const auto& t = cubic.terms;
        const double xx = d.x * d.x;
        const double xy = d.x * d.y;
        const double yy = d.y * d.y;
        c0 = t[0];
        c1 = t[1] * d.x + t[2] * d.y;
        c2 = t[3] * xx + t[4] * xy + t[5] * yy;
        c3 = (t[6] * d.x + t[7] * d.y) * xx + (t[8] * d.x + t[9] * d.y) * yy;
    }
    [[nodiscard]] double at(double r) const { return c0 + r * (c1 + r * (c2 + r * c3)); }
    [[nodiscard]] double slope(double r) const { return c1 + r * (2 * c2 + r * 3 * c3); }
};

// The value whose sign tells inside (<= 0) from outside, on one azimuth.
struct HalfLine {
    LineCubic u;
    [[nodiscard]] double at(double r) const { return -u.at(r); }
    [[nodiscard]] double slope(double r) const { return -u.slope(r); }
};
struct RoundLine {
    LineCubic u, v;
    [[nodiscard]] double at(double r) const {
        const double x = u.at(r);
        const double y = v.at(r);
        return x * x + y * y - 1;
    }
    [[nodiscard]] double slope(double r) const {
        return 2 * (u.at(r) * u.slope(r) + v.at(r) * v.slope(r));
    }
    /// Where a straight line through the same point comes nearest to the middle.
    [[nodiscard]] double nearest() const {
        const double across = u.c1 * u.c1 + v.c1 * v.c1;
        return across > 0 ? -(u.c0 * u.c1 + v.c0 * v.c1) / across : 0;
    }
};

struct Stretch {
    double from = 0;
    double to = 0;
    [[nodiscard]] bool is_empty() const { return !(to > from); }
    /// Times the step in azimuth: the area.
    [[nodiscard]] double area() const { return (to * to - from * from) / 2; }
};

Stretch common(const Stretch& a, const Stretch& b) {
    return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

// What the crossings of one bound add up to.
struct Crossings {
    double residual = 0;  ///< of the value whose sign tells inside from outside
    double doubt = 0;     ///< sum over the azimuths of radius times how far the edge may be off
    int count = 0;
};

// A crossing between two places that are on different sides. Edges are nearly straight or round: a few steps of
// Newton's from a straight guess.
template <class Line>
double crossing(const Line& line, Stretch within, double guess, Crossings& all) {
    double r = std::clamp(guess, within.from, within.to);
    for (int step = 0; step < 4; ++step) {
        const double slope = line.slope(r);
        if (slope == 0) break;
        r = std::clamp(r - line.at(r) / slope, within.from, within.to);
    }
    const double off = (all.residual + std::abs(line.at(r))) / std::abs(line.slope(r));
    all.doubt += (r + off) * std::min(off, 2.0);
    ++all.count;
    return r;
}

template <class Line>
double straight_guess(const Line& line, Stretch within) {
    const double first = line.at(within.from);
    const double last = line.at(within.to);
    return within.from + (within.to - within.from) * first / (first - last);
}

// Where the line is inside, from its start to `end`.
Stretch inside_of(const HalfLine& line, double end, Crossings& all) {
    const bool starts_inside = line.at(0) <= 0;
    const bool ends_inside = line.at(end) <= (starts_inside ? all.residual : 0);
    if (starts_inside && ends_inside) return {0, end};
    if (!starts_inside && !ends_inside) return {end, end};
    const double r = crossing(line, {0, end}, straight_guess(line, {0, end}), all);
    return starts_inside ? Stretch{0, r} : Stretch{r, end};
}

Stretch inside_of(const RoundLine& line, double end, Crossings& all) {
    const double start = line.at(0);
    const double across = line.u.c1 * line.u.c1 + line.v.c1 * line.v.c1;
    const double middle = line.nearest();
    const double root_squared = middle * middle - start / across;
    const double half = across > 0 && root_squared > 0 ? std::sqrt(root_squared) : 0;
    const bool starts_inside = start <= 0;
    const bool ends_inside = line.at(end) <= (starts_inside ? all.residual : 0);
    if (starts_inside) {
        if (ends_inside) return {0, end};
        return {0, crossing(line, {0, end}, middle + half, all)};
    }
    if (ends_inside) return {crossing(line, {0, end}, middle - half, all), end};
    if (middle <= 0 || middle >= end || line.at(middle) >= 0) return {end, end};
    return {crossing(line, {0, middle}, middle - half, all),
            crossing(line, {middle, end}, middle + half, all)};
}

// What is still lit on one azimuth: a few stretches.
class LitStretches {
public:
    explicit LitStretches(double end) : stretches_{Stretch{0, end}}, count_(1) {}

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

// A bound seen from a point of the pupil.
struct SeenBound {
    const PupilBound* bound = nullptr;
    PupilCubic u, v, gate;
    Crossings crossings;

    SeenBound(const PupilBound& of, glm::dvec2 centre)
        : bound(&of), u(of.u.about(centre)), v(of.v.about(centre)) {
        if (of.gate) gate = of.gate->about(centre);
        // At an edge u^2 + v^2 is 1: it departs by twice what the place departs by.
        crossings.residual = of.shape == PupilBound::Shape::half
                                 ? of.u.residual
                                 : 2 * std::hypot(of.u.residual, of.v.residual);
        crossings.residual += 1e-9;  // what rounding leaves of a rim that is the pupil's own
    }

    Stretch inside(glm::dvec2 direction, double end) {
        if (bound->shape == PupilBound::Shape::half)
            return inside_of(HalfLine{LineCubic(u, direction)}, end, crossings);
        return inside_of(RoundLine{LineCubic(u, direction), LineCubic(v, direction)}, end,
                         crossings);
    }

    /// What it takes of what is still lit on that azimuth.
    double darken(LitStretches& lit, glm::dvec2 direction, double end) {
        const Stretch passes = inside(direction, end);
        Stretch holds{0, end};
        if (bound->gate) {
            Crossings aside;
            holds = inside_of(HalfLine{LineCubic(gate, direction)}, end, aside);
        }
        if (bound->shape == PupilBound::Shape::block) return lit.darken(common(passes, holds));
        if (passes.from <= 0 && passes.to >= end) return 0;
        return lit.darken(common({0, passes.from}, holds))
               + lit.darken(common({passes.to, end}, holds));
    }
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
    const double least =
        (sum - std::sqrt(std::max(0.0, sum * sum - 4 * product * product))) / 2;
    return std::hypot(bound.u.bend(), bound.v.bend()) <= most_bend * std::sqrt(least);
}

struct Survey {
    double lit = 0;
    glm::dvec2 middle{0};  ///< of the lit part
    double doubt = 0;
};

Survey survey(std::span<const PupilBound> bounds,
              glm::dvec2 centre,
              int azimuths,
              std::vector<double>& lost) {
    std::vector<SeenBound> seen;
    seen.reserve(bounds.size());
    for (const PupilBound& bound : bounds)
        seen.emplace_back(bound, centre);
    lost.assign(bounds.size(), 0);
    const double step = 2 * std::numbers::pi / azimuths;
    Survey found;
    glm::dvec2 moment{0};
    for (int i = 0; i < azimuths; ++i) {
        const double turn = step * (i + 0.5);
        const glm::dvec2 direction{std::cos(turn), std::sin(turn)};
        const double along = glm::dot(centre, direction);
        const double end =
            -along + std::sqrt(std::max(0.0, along * along + 1 - glm::dot(centre, centre)));
        LitStretches lit(end);
        for (std::size_t k = 0; k < seen.size(); ++k)
            lost[k] += seen[k].darken(lit, direction, end) * step / std::numbers::pi;
        lit.each([&](const Stretch& stretch) {
            found.lit += stretch.area() * step / std::numbers::pi;
            moment += direction
                      * ((stretch.to * stretch.to * stretch.to
                          - stretch.from * stretch.from * stretch.from)
                         / 3 * step / std::numbers::pi);
        });
    }
    for (const SeenBound& bound : seen) {
        if (bound.crossings.count == 0) continue;
        found.doubt += bound.crossings.doubt * step / std::numbers::pi;
        if (!can_be_followed(*bound.bound)) found.doubt = endless;
    }
    if (found.lit > 0) found.middle = centre + moment / found.lit;
    return found;
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

}  // namespace

void find_pupil_light(std::span<const PupilBound> bounds, PupilLight& found) {
    constexpr int azimuths = 64;
    constexpr int to_find_middle = 32;
    constexpr double hardly_any = 1e-6;
    glm::dvec2 centre{0};
    Survey light;
    bool is_done = false;
    if (!is_well_within(bounds, centre)) {
        light = survey(bounds, centre, to_find_middle, found.lost);
        is_done = light.lit < hardly_any;
        centre = light.middle;
    }
    if (!is_done) light = survey(bounds, centre, azimuths, found.lost);
    // On azimuths from beside the middle the pupil's own area comes out a little off: what is lost fills it.
    double sum = 0;
    for (const double share : found.lost)
        sum += share;
    found.lit = sum > 0 ? std::min(light.lit, 1.0) : 1;
    for (double& share : found.lost)
        share *= sum > 0 ? (1 - found.lit) / sum : 0;
    found.doubt = light.doubt;
}

}  // namespace beamfork
