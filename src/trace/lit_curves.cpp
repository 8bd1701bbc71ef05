#include "trace/lit_curves.hpp"

#include <cmath>

namespace beamfork {

namespace {

// Of the kink's change of slope, by the part of the step at which it stands.
double kink_share(double part) { return 1.0 / 12 - part * (1 - part) / 2; }

// What the kink adds to the sum of max(0, a^2 - b^2) / 2 where two edges at a and b cross between two azimuths. The
// inverse of a straight edge's distance goes with azimuth like a sine: nearly linear within a step.
double kink_of(const AzimuthColumn& a, const AzimuthColumn& b, std::size_t i, std::size_t next) {
    const double apart = 1 / a[i] - 1 / b[i];
    const double apart_next = 1 / a[next] - 1 / b[next];
    if ((apart < 0) == (apart_next < 0)) return 0;
    const double part = apart / (apart - apart_next);
    const double inverse = std::lerp(1 / a[i], 1 / a[next], part);
    return std::abs(apart - apart_next) / (inverse * inverse * inverse) * kink_share(part);
}

}  // namespace

double area_between(const LitCurve& outer, const LitCurve& inner, std::size_t lines) {
    double sum = 0;
    for (std::size_t i = 0; i < lines; ++i) {
        const std::size_t next = i + 1 < lines ? i + 1 : 0;
        const bool is_lit = outer.at[i] > inner.at[i];
        const bool is_next_lit = outer.at[next] > inner.at[next];
        if (is_lit) sum += (outer.at[i] * outer.at[i] - inner.at[i] * inner.at[i]) / 2;
        if (!is_lit && !is_next_lit) continue;
        if (outer.edge[i] != outer.edge[next])
            sum -= kink_of(*outer.edge[i], *outer.edge[next], i, next);
        if (inner.edge[i] && inner.edge[next] && inner.edge[i] != inner.edge[next])
            sum -= kink_of(*inner.edge[i], *inner.edge[next], i, next);
        if (is_lit != is_next_lit && inner.at[i] > 0 && inner.at[next] > 0)
            sum += kink_of(outer.at, inner.at, i, next);
    }
    return sum;
}

}  // namespace beamfork
