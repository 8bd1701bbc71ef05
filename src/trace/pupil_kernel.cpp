#include "trace/pupil_kernel.hpp"

// As in bundle_kernel.cpp: AVX-512, AVX2, SSE4 and a fallback without vectors.
#define HWY_DISABLED_TARGETS (HWY_AVX3_DL | HWY_SSSE3)
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "trace/pupil_kernel.cpp"
// The order counts: the first of these includes this source once for each set of instructions.
// clang-format off
#include <hwy/foreach_target.h>
#include "trace/wide-inl.hpp"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)
namespace {

HWY_INLINE Wide load_anywhere(const double* from) {
    return {hn::LoadU(Tag(), from), hn::LoadU(Tag(), from + vector_lanes())};
}
HWY_INLINE bool none(const WideMask& mask) {
    return hn::AllFalse(Tag(), mask.a) && hn::AllFalse(Tag(), mask.b);
}
HWY_INLINE bool every(const WideMask& mask) {
    return hn::AllTrue(Tag(), mask.a) && hn::AllTrue(Tag(), mask.b);
}
HWY_INLINE WideMask both(const WideMask& l, const WideMask& r) {
    return {hn::And(l.a, r.a), hn::And(l.b, r.b)};
}
HWY_INLINE WideMask either(const WideMask& l, const WideMask& r) {
    return {hn::Or(l.a, r.a), hn::Or(l.b, r.b)};
}
// What a bound's values at the nodes say about the whole pupil, made wider: the outermost nodes stand apart, and
// what is not linear may bulge between them.
constexpr double beyond_nodes = 1.15;

// Values at the nodes for as many field points as a Wide holds.
using Nodes = Wide[pupil_node_count];

HWY_INLINE void
measure(const Gauge& gauge, const NodeMeetings& met, std::size_t field, Nodes& values) {
    const bool is_place = gauge.of == Gauge::Of::place;
    const auto& columns = is_place ? met.at : met.along;
    const Wide from = all(gauge.from);
    for (std::size_t node = 0; node < pupil_node_count; ++node) {
        const std::size_t i = node * fields_at_once + field;
        const Wide3 w{load_anywhere(columns[0] + i), load_anywhere(columns[1] + i),
                      load_anywhere(columns[2] + i)};
        const Wide part = dot(w, gauge.along);
        if (is_place) {
            values[node] = part - from;
        } else if (gauge.of == Gauge::Of::more_than) {
            values[node] = abs(part) - from;
        } else {
            values[node] = from - abs(part);
        }
    }
}

HWY_INLINE Wide nearest_half(const Nodes& u) {
    Wide lowest = u[0];
    for (std::size_t node = 1; node < pupil_node_count; ++node)
        lowest = min(lowest, u[node]);
    return fnma(all(beyond_nodes), u[0] - lowest, u[0]);
}

HWY_INLINE Wide nearest_round(const Nodes& u, const Nodes& v, bool is_block) {
    Wide spread = all(0);
    for (std::size_t node = 1; node < pupil_node_count; ++node) {
        const Wide x = u[node] - u[0];
        const Wide y = v[node] - v[0];
        spread = max(spread, fma(x, x, y * y));
    }
    const Wide middle = sqrt(fma(u[0], u[0], v[0] * v[0]));
    const Wide room = is_block ? middle - all(1) : all(1) - middle;
    return fnma(all(beyond_nodes), sqrt(spread), room);
}

HWY_INLINE void
fit_lanes(const Nodes& values, const CubicFit& fit, std::size_t field, CubicLanes& found) {
    Wide terms[cubic_term_count];
    for (std::size_t i = 0; i < cubic_term_count; ++i) {
        Wide sum = all(0);
        for (std::size_t node = 0; node < pupil_node_count; ++node)
            sum = fma(all(fit.terms_from_values[i][node]), values[node], sum);
        terms[i] = sum;
        store_anywhere(sum, &found.terms[i][field]);
    }
    Wide residual = all(0);
    for (std::size_t node = 0; node < pupil_node_count; ++node) {
        Wide apart = values[node];
        for (std::size_t i = 0; i < cubic_term_count; ++i)
            apart = fnma(all(fit.values_from_terms[node][i]), terms[i], apart);
        residual = max(residual, abs(apart));
    }
    store_anywhere(residual, &found.residual[field]);
}

void fit_edge(const PupilEdge& edge,
              const NodeMeetings& met,
              const CubicFit& fit,
              BoundLanes& found) {
    const bool is_round = edge.shape != PupilBound::Shape::half;
    for (std::size_t field = 0; field < fields_at_once; field += 2 * vector_lanes()) {
        Nodes u;
        Nodes v;
        measure(edge.u, met, field, u);
        if (is_round) measure(edge.v, met, field, v);
        const Wide nearest = is_round ? nearest_round(u, v, edge.shape == PupilBound::Shape::block)
                                      : nearest_half(u);
        store_anywhere(nearest, &found.nearest[field]);
        // Most openings are wide: nothing more is asked of them. What is no number is no such opening.
        if (every(all(0) <= nearest)) continue;
        fit_lanes(u, fit, field, found.u);
        if (is_round) fit_lanes(v, fit, field, found.v);
    }
}

// --- Azimuths.

// A cubic on lines from the point it is told about.
struct LineCubic {
    Wide c0, c1, c2, c3;
};

HWY_INLINE LineCubic on_lines(const PupilCubic& cubic, const Wide& x, const Wide& y) {
    const auto& t = cubic.terms;
    const Wide xx = x * x;
    const Wide xy = x * y;
    const Wide yy = y * y;
    return {all(t[0]), fma(all(t[1]), x, all(t[2]) * y),
            fma(all(t[3]), xx, fma(all(t[4]), xy, all(t[5]) * yy)),
            fma(fma(all(t[6]), x, all(t[7]) * y), xx, fma(all(t[8]), x, all(t[9]) * y) * yy)};
}
HWY_INLINE Wide value(const LineCubic& c, const Wide& r) {
    return fma(r, fma(r, fma(r, c.c3, c.c2), c.c1), c.c0);
}
HWY_INLINE Wide slope(const LineCubic& c, const Wide& r) {
    return fma(r, fma(r, all(3) * c.c3, all(2) * c.c2), c.c1);
}

// The value whose sign tells inside (<= 0) from outside, and how it goes along the line.
struct Inside {
    Wide value, slope;
};
struct HalfLines {
    LineCubic u;
    [[nodiscard]] HWY_INLINE Wide at(const Wide& r) const { return all(0) - value(u, r); }
    [[nodiscard]] HWY_INLINE Inside both_at(const Wide& r) const {
        return {at(r), all(0) - slope(u, r)};
    }
};
struct RoundLines {
    LineCubic u, v;
    [[nodiscard]] HWY_INLINE Wide at(const Wide& r) const {
        const Wide x = value(u, r);
        const Wide y = value(v, r);
        return fma(x, x, fma(y, y, all(-1)));
    }
    [[nodiscard]] HWY_INLINE Inside both_at(const Wide& r) const {
        const Wide x = value(u, r);
        const Wide y = value(v, r);
        return {fma(x, x, fma(y, y, all(-1))), all(2) * fma(x, slope(u, r), y * slope(v, r))};
    }
};

struct WideStretch {
    Wide from, to;
};

// How well the crossings of one bound are known on the lines at hand.
struct Crossings {
    Wide residual;
    Wide off;
};

HWY_INLINE Wide clamp(const Wide& r, const WideStretch& within) {
    return min(max(r, within.from), within.to);
}

// Crossings between two places that are on different sides, on the lines of the mask. Edges are nearly straight or
// round: a few steps of Newton's from a straight guess. What they leave open counts as doubt.
template <class Lines>
HWY_INLINE Wide crossing(const Lines& lines,
                         const WideMask& where,
                         const WideStretch& within,
                         const Wide& guess,
                         Crossings& sum) {
    constexpr double least_slope = 1e-12;
    Wide r = clamp(guess, within);
    for (int step = 0; step < 3; ++step) {
        const Inside here = lines.both_at(r);
        const WideMask is_level = abs(here.slope) < all(least_slope);
        r = clamp(r - here.value / choose(is_level, all(1), here.slope), within);
    }
    const Inside here = lines.both_at(r);
    const Wide off = (sum.residual + abs(here.value)) / max(abs(here.slope), all(least_slope));
    sum.off = sum.off + choose(where, min(off, all(2)), all(0));
    return r;
}

// Where lines that end inside would cross the edge farther on: so that azimuths beside each other tell where between
// them an edge leaves the pupil.
template <class Lines>
HWY_INLINE Wide beyond(const Lines& lines, const Wide& end) {
    const Inside last = lines.both_at(end);
    const Wide farther = (all(0) - last.value) / max(last.slope, all(1e-12));
    return end + min(max(farther, all(0)), all(9));
}

HWY_INLINE WideStretch inside_of(const HalfLines& lines,
                                 bool starts_inside,
                                 const Wide& end,
                                 Crossings& sum) {
    const WideStretch whole{all(0), end};
    const Wide first = all(0) - lines.u.c0;
    const Wide last = lines.at(end);
    if (starts_inside) {
        const WideMask crosses = sum.residual < last;
        if (none(crosses)) return {all(0), beyond(lines, end)};
        const Wide r = crossing(lines, crosses, whole, end * (first / (first - last)), sum);
        return {all(0), choose(crosses, r, beyond(lines, end))};
    }
    const WideMask crosses = last <= all(0);
    if (none(crosses)) return {end, end};
    const Wide r = crossing(lines, crosses, whole, end * (first / (first - last)), sum);
    return {choose(crosses, r, end), end};
}

HWY_INLINE WideStretch inside_of(const RoundLines& lines,
                                 bool starts_inside,
                                 const Wide& end,
                                 Crossings& sum) {
    const Wide last = lines.at(end);
    if (starts_inside && none(sum.residual < last)) return {all(0), beyond(lines, end)};
    const LineCubic& u = lines.u;
    const LineCubic& v = lines.v;
    // A straight line through the same point comes nearest to the middle there, and is inside so far to both sides.
    const Wide across = max(fma(u.c1, u.c1, v.c1 * v.c1), all(1e-300));
    const Wide middle = all(0) - fma(u.c0, u.c1, v.c0 * v.c1) / across;
    const Wide start = fma(u.c0, u.c0, fma(v.c0, v.c0, all(-1)));
    const Wide half = sqrt(max(fma(middle, middle, all(0) - start / across), all(0)));
    if (starts_inside) {
        const WideMask crosses = sum.residual < last;
        const Wide r = crossing(lines, crosses, {all(0), end}, middle + half, sum);
        return {all(0), choose(crosses, r, beyond(lines, end))};
    }
    const WideMask ends_inside = last <= all(0);
    const Wide turn = clamp(middle, {all(0), end});
    const WideMask dips = lines.at(turn) < all(0);
    const WideMask enters = either(ends_inside, dips);
    if (none(enters)) return {end, end};
    const Wide in =
        crossing(lines, enters, {all(0), choose(ends_inside, end, turn)}, middle - half, sum);
    const WideMask leaves = both(enters, all(0) < last);
    const Wide out = none(leaves) ? end : crossing(lines, leaves, {turn, end}, middle + half, sum);
    return {choose(enters, in, end), choose(leaves, out, end)};
}

template <class MakeLines>
HWY_INLINE bool ends_inside_everywhere(const SeenBound& bound,
                                       const AzimuthLines& azimuths,
                                       const MakeLines& make) {
    for (std::size_t i = 0; i < azimuths.count; i += 2 * vector_lanes()) {
        const auto lines = make(load(&azimuths.x[i]), load(&azimuths.y[i]));
        const Wide last = lines.at(load(&azimuths.end[i]));
        if (!none(all(bound.residual) < last)) return false;
    }
    return true;
}

template <class MakeLines>
HWY_INLINE void find_on_all(const SeenBound& bound,
                            const AzimuthLines& azimuths,
                            bool starts_inside,
                            const MakeLines& make,
                            InsideStretches& found) {
    found.starts_inside = starts_inside;
    // Most bounds only come near the pupil: they are told apart before anything else is asked.
    found.is_whole = starts_inside && bound.shape != PupilBound::Shape::block
                     && ends_inside_everywhere(bound, azimuths, make);
    if (found.is_whole) return;
    for (std::size_t i = 0; i < azimuths.count; i += 2 * vector_lanes()) {
        const Wide end = load(&azimuths.end[i]);
        const auto lines = make(load(&azimuths.x[i]), load(&azimuths.y[i]));
        Crossings sum{all(bound.residual), all(0)};
        const WideStretch inside = inside_of(lines, starts_inside, end, sum);
        store(inside.from, &found.from[i]);
        store(inside.to, &found.to[i]);
        store(sum.off, &found.off[i]);
    }
}

void find_stretches(const SeenBound& bound, const AzimuthLines& azimuths, InsideStretches& found) {
    const double u = bound.u.terms[0];
    const double v = bound.v.terms[0];
    if (bound.shape == PupilBound::Shape::half) {
        const auto lines = [&](const Wide& x, const Wide& y) {
            return HalfLines{on_lines(bound.u, x, y)};
        };
        find_on_all(bound, azimuths, u >= 0, lines, found);
    } else {
        const auto lines = [&](const Wide& x, const Wide& y) {
            return RoundLines{on_lines(bound.u, x, y), on_lines(bound.v, x, y)};
        };
        find_on_all(bound, azimuths, u * u + v * v <= 1, lines, found);
    }
}

}  // namespace
}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace beamfork {

namespace {
HWY_EXPORT(fit_edge);
HWY_EXPORT(find_stretches);
}  // namespace

void fit_bound(const PupilEdge& edge,
               const NodeMeetings& met,
               const CubicFit& fit,
               BoundLanes& found) {
    HWY_DYNAMIC_DISPATCH(fit_edge)(edge, met, fit, found);
}

void find_inside(const SeenBound& bound, const AzimuthLines& lines, InsideStretches& found) {
    HWY_DYNAMIC_DISPATCH(find_stretches)(bound, lines, found);
}

}  // namespace beamfork
#endif
