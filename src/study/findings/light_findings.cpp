#include <algorithm>
#include <cmath>

#include "study/findings/finding_scope.hpp"
#include "study/findings/unstated_inside.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Limits by which the light is judged.
constexpr double dark_edge = 0.5;  // common practice, no source: 50-60 % is hard to notice
constexpr double dim_edge = 0.8;
constexpr double aperture_loss = 0.98;     // of the diameter
constexpr double aperture_poor = 0.9;      // our choice: a fifth of the light
constexpr double leak_that_shows = 0.005;  // of the light on axis or at the edge
constexpr double leak_poor = 0.1;          // our choice: about what an eye begins to notice

// Diameter of the field inside which every ring gets more than a dark edge's light, mm.
double bright_field(const EyeClipping& eye) {
    double fraction = 0;
    for (const LitRing& ring : eye.rings) {
        if (ring.relative < dark_edge) break;
        fraction = ring.field_fraction;
    }
    return fraction * eye.field_stop.value;
}

// What a smaller field stop would do for a field whose edge is dark.
std::string smaller_stop_advice(const EyeClipping& eye) {
    const double bright = std::floor(bright_field(eye));
    if (bright < 1)
        return "No smaller field stop would mend it: the light falls below half close to the "
               "middle.";
    return fmt::format("A field stop of up to {:.0f} mm would keep more than half of the light to "
                       "its edge.",
                       bright);
}

// What one ring loses most light to, and the part that is to blame.
struct Culprit {
    std::string name = "nothing";
    std::optional<std::size_t> part;
};
Culprit culprit(const FindingScope& scope, Eye eye, const LitRing& ring) {
    if (ring.ends.empty()) return {};
    const EyePath& path = scope.report.train.path(eye);
    const EndShare& worst = ring.ends.front();
    return {end_name(scope.setup, path, worst), path.surfaces[worst.surface].part};
}

// The eye whose ring is darker; the left one unless the difference is more than sampling makes.
const EyeClipping& darker_eye(const FindingScope& scope,
                              const LitRing& (*ring_of)(const EyeClipping&)) {
    constexpr double sampling = 0.005;
    const auto& clipping = scope.report.clipping;
    const bool is_right = ring_of(clipping[1]).relative < ring_of(clipping[0]).relative - sampling;
    return clipping[is_right ? 1 : 0];
}
const LitRing& middle_of(const EyeClipping& eye) { return eye.rings.front(); }
const LitRing& edge_of(const EyeClipping& eye) { return eye.rings.back(); }

// Shares of a ring's light that leak out of faces: all, and of those whose places are stated.
struct Leaks {
    double all = 0;
    double certain = 0;
};
Leaks leaks(const FindingScope& scope, Eye eye, const LitRing& ring) {
    Leaks sum;
    for (const EndShare& end : ring.ends) {
        if (!end.is_leak) continue;
        const std::size_t part = scope.report.train.path(eye).surfaces[end.surface].part;
        sum.all += end.share;
        if (!scope.report.train.unstated(part).any()) sum.certain += end.share;
    }
    return sum;
}
// Of the eye that loses more.
Leaks worse_leaks(const FindingScope& scope, const LitRing& (*ring_of)(const EyeClipping&)) {
    const auto& [left, right] = scope.report.clipping;
    const Leaks one = leaks(scope, Eye::left, ring_of(left));
    const Leaks other = leaks(scope, Eye::right, ring_of(right));
    return {std::max(one.all, other.all), std::max(one.certain, other.certain)};
}

void aperture_findings(const FindingScope& scope) {
    const EyeClipping& eye = darker_eye(scope, middle_of);
    const double aperture = 2 * scope.report.train.objective_radius;
    const double working = eye.working_aperture.value;
    if (working >= aperture_loss * aperture) return;
    const Culprit worst = culprit(scope, eye.eye, middle_of(eye));
    scope.add(
        working < aperture_poor * aperture ? Severity::poor : Severity::note, "aperture_reduced",
        fmt::format("On axis only {:.0f} mm of the {:.0f} mm aperture works; most is lost at {}.",
                    working, aperture, worst.name),
        "A wider opening there, or a shifter in front of it, gives the aperture back.", worst.part);
}

void edge_findings(const FindingScope& scope) {
    const auto& clipping = scope.report.clipping;
    const EyeClipping& eye = darker_eye(scope, edge_of);
    const double edge = eye.edge_relative;
    const double lit =
        std::min(clipping[0].fully_illuminated_diameter, clipping[1].fully_illuminated_diameter)
            .value;
    if (edge < dim_edge) {
        const Culprit worst = culprit(scope, eye.eye, edge_of(eye));
        const bool is_dark = edge < dark_edge;
        scope.add(
            is_dark ? Severity::poor : Severity::note, "edge_dimmed",
            fmt::format("The edge of the field gets {:.0f} % of the light; most is lost at {}.",
                        100 * edge, worst.name),
            is_dark ? smaller_stop_advice(eye)
                    : "Dimming to about half is hard to notice at the eyepiece.",
            worst.part);
    } else if (lit >= 0.999 * eye.field_stop.value) {
        scope.add(Severity::good, "fully_lit",
                  fmt::format("The whole field of {:.1f} mm is fully lit in both eyes.",
                              eye.field_stop.value));
    }
}

void leak_findings(const FindingScope& scope) {
    const Leaks middle = worse_leaks(scope, middle_of);
    const Leaks edge = worse_leaks(scope, edge_of);
    if (std::max(middle.all, edge.all) < leak_that_shows) return;
    const std::string where =
        middle.all < leak_that_shows
            ? fmt::format("{:.1f} % of the light at the field's edge leaks", 100 * edge.all)
        : edge.all <= middle.all
            ? fmt::format("{:.1f} % of the light on axis leaks", 100 * middle.all)
            : fmt::format("{:.1f} % of the light on axis and {:.1f} % at the field's edge leak",
                          100 * middle.all, 100 * edge.all);
    const std::string words = where + " out of bare glass faces that should reflect it";
    const std::string advice = "Glass of a higher index, mirrored faces, or a slower beam (a "
                               "shifter in front) keeps it in.";
    if (std::max(middle.certain, edge.certain) >= leak_that_shows) {
        const bool is_poor = std::max(middle.certain, edge.certain) > leak_poor;
        scope.add(is_poor ? Severity::poor : Severity::note, "light_leaks", words + ".", advice);
    } else {
        const std::size_t head = scope.index_of(Role::splitter);
        scope.add(Severity::note, "light_leaks",
                  fmt::format("{}, {}.", words, where_glass_is_taken(scope, head)),
                  advice + " " + measure_inside(), head);
    }
}

}  // namespace

void light_findings(const FindingScope& scope) {
    aperture_findings(scope);
    edge_findings(scope);
    leak_findings(scope);
}

}  // namespace beamfork
