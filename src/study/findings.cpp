#include "study/findings.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "study/report.hpp"

#include <fmt/format.h>

namespace beamfork {

std::string to_word(Severity severity) {
    switch (severity) {
    case Severity::fails: return "fails";
    case Severity::poor: return "poor";
    case Severity::note: return "note";
    case Severity::good: return "good";
    }
    return "";
}

namespace {

// Limits by which a setup is judged.
constexpr double thin_margin_mm = 5;  // common practice, no source: 5-10 mm both ways
constexpr double dark_edge = 0.5;     // common practice, no source: 50-60 % is hard to notice
constexpr double dim_edge = 0.8;
constexpr double aperture_loss = 0.98;          // of the diameter
constexpr double leak_that_shows = 0.005;       // of the light on axis or at the edge
constexpr double factor_off = 0.05;             // of the stated factor
constexpr double path_difference_mm = 0.5;      // a datasheet is rounded to whole mm
constexpr double smallest_exit_pupil_mm = 0.6;  // common practice, no source
constexpr double spectacles_need_mm = 15;       // common practice, no source: 15-20 mm

struct Scene {
    const Setup& setup;
    const Report& report;
    std::vector<Finding>& found;

    void add(Severity severity,
             std::string id,
             std::string sentence,
             std::string advice = "",
             std::optional<std::size_t> part = {}) const {
        found.push_back({severity, std::move(id), std::move(sentence), std::move(advice), part});
    }
    [[nodiscard]] const std::string& name(std::size_t part) const { return setup.parts[part].name; }
};

std::size_t index_of(const Setup& setup, Role role) { return parts_with_role(setup, role).front(); }

void focus_findings(const Scene& scene) {
    const FocusBudget& budget = scene.report.budget;
    const std::size_t focuser = index_of(scene.setup, Role::focuser);
    if (!budget.reaches && budget.shortfall_is_inward) {
        scene.add(Severity::fails, "focus_short",
                  fmt::format("Does not reach focus: the drawtube would have to go {:.1f} mm "
                              "farther in than it can.",
                              budget.shortfall),
                  fmt::format("Save {:.1f} mm of light path: a shorter diagonal or adapter, or a "
                              "focus shifter that "
                              "gives back at least that much.",
                              budget.shortfall + thin_margin_mm),
                  focuser);
    } else if (!budget.reaches) {
        scene.add(Severity::fails, "focus_far",
                  fmt::format("Does not reach focus: the drawtube would have to come {:.1f} mm "
                              "farther out than it can.",
                              budget.shortfall),
                  fmt::format("Add a spacer of {:.0f} mm or more behind the drawtube.",
                              std::ceil(budget.shortfall + thin_margin_mm)),
                  focuser);
    } else if (const double margin = std::min(budget.margin_in, budget.margin_out);
               margin < thin_margin_mm) {
        const char* way = budget.margin_in < budget.margin_out ? "inward" : "outward";
        scene.add(Severity::poor, "focus_margin_thin",
                  fmt::format("Reaches focus with only {:.1f} mm of travel left {}.", margin, way),
                  "Another eyepiece or a short-sighted observer may need more; 5 to 10 mm both "
                  "ways is usual.",
                  focuser);
    } else {
        scene.add(Severity::good, "focus_reached",
                  fmt::format("Reaches focus with the drawtube {:.1f} mm out; {:.1f} mm left "
                              "inward, {:.1f} mm outward.",
                              budget.wanted_drawtube, budget.margin_in, budget.margin_out),
                  "", focuser);
    }
    if (budget.is_held && budget.reaches
        && std::abs(budget.drawtube - budget.wanted_drawtube) > 0.05) {
        scene.add(Severity::note, "drawtube_held",
                  fmt::format("The drawtube is held at {:.1f} mm; focus is at {:.1f} mm.",
                              budget.drawtube, budget.wanted_drawtube),
                  "Clear “Held at” of the focuser to let it focus.", focuser);
    }
}

void arm_findings(const Scene& scene) {
    const Report& report = scene.report;
    const std::size_t head_index = index_of(scene.setup, Role::splitter);
    const auto& head = part_as<SplitterHead>(scene.setup, head_index);
    const auto& observer = part_as<Observer>(scene.setup, report.train.choice.observer);
    const double N = report.magnification.focal_ratio;
    // Quarter-wave depth of focus, +-2 lambda N^2 (derived from lambda / (2 NA^2)).
    const double depth = 2 * spectral_line::e.value / 1000 * N * N;
    if (std::abs(report.budget.arm_difference) > depth) {
        scene.add(Severity::poor, "arms_unequal",
                  fmt::format("The two arms differ by {:.2f} mm in light path: the eyes cannot "
                              "both be sharp at one "
                              "drawtube position.",
                              std::abs(report.budget.arm_difference)),
                  "Leave the compensating glass unstated, or refocus one seat by that much.",
                  head_index);
    }
    if (!head.hinge_reaches(observer.pupil_distance)) {
        scene.add(
            Severity::fails, "pupil_distance_out_of_range",
            fmt::format(
                "{}: the pupil distance of {:.1f} mm is outside the head's {:.1f} to {:.1f} mm.",
                scene.name(report.train.choice.observer), observer.pupil_distance.value,
                head.pupil_distance_at(head.hinge_high).value,
                head.pupil_distance_at(head.hinge_low).value),
            "This observer cannot bring both exit pupils before both eyes with this head.",
            head_index);
    }
    for (const EyePath& path : report.train.paths) {
        if (std::abs(path.seat_shift_wanted) <= head.seat_travel.value) continue;
        scene.add(Severity::poor, "seat_travel_short",
                  fmt::format("The {} seat would have to move {:.2f} mm for the difference between "
                              "the eyes; it has "
                              "{:.2f} mm.",
                              path.eye == Eye::left ? "left" : "right",
                              std::abs(path.seat_shift_wanted), head.seat_travel.value),
                  "Keep spectacles on, or refocus from eye to eye.", head_index);
    }
}

// An opening or a lens that stands behind the face it should be in front of: its part is too long.
void collision_findings(const Scene& scene) {
    for (const EyePath& path : scene.report.train.paths) {
        const PlacedSurface* face = nullptr;
        for (const PlacedSurface& surface : path.surfaces) {
            const bool is_open =
                surface.kind == SurfaceKind::stop || surface.kind == SurfaceKind::thin_lens;
            const double depth = face ? face->axis_position - surface.axis_position : 0;
            if (is_open && depth > 0.01 && surface.part != face->part) {
                scene.add(
                    Severity::fails, "parts_collide",
                    fmt::format("{}: its {} would reach {:.1f} mm into the {} of {}.",
                                scene.name(surface.part), surface.name, depth, face->name,
                                scene.name(face->part)),
                    fmt::format("Shorten it, or put a spacer of {:.0f} mm or more between the two.",
                                std::ceil(depth)),
                    surface.part);
                return;
            }
            if (!is_open) face = &surface;
        }
    }
}

// Diameter of the field inside which every ring gets more than a dark edge's light, mm.
double bright_field(const EyeClipping& eye) {
    double fraction = 0;
    for (const LitRing& ring : eye.rings) {
        if (ring.relative < dark_edge) break;
        fraction = ring.field_fraction;
    }
    return fraction * eye.field_stop;
}

// What one ring loses most light to, and the part that is to blame.
struct Culprit {
    std::string name = "nothing";
    std::optional<std::size_t> part;
};
Culprit culprit(const Scene& scene, Eye eye, const LitRing& ring) {
    if (ring.ends.empty()) return {};
    const EyePath& path = scene.report.train.path(eye);
    const EndShare& worst = ring.ends.front();
    return {end_name(scene.setup, path, worst), path.surfaces[worst.surface].part};
}

// The eye whose ring is darker; the left one unless the difference is more than sampling makes.
const EyeClipping& darker_eye(const Scene& scene, const LitRing& (*ring_of)(const EyeClipping&)) {
    constexpr double sampling = 0.005;
    const auto& clipping = scene.report.clipping;
    const bool is_right = ring_of(clipping[1]).relative < ring_of(clipping[0]).relative - sampling;
    return clipping[is_right ? 1 : 0];
}
const LitRing& middle_of(const EyeClipping& eye) { return eye.rings.front(); }
const LitRing& edge_of(const EyeClipping& eye) { return eye.rings.back(); }

double leaked(const LitRing& ring) {
    double sum = 0;
    for (const EndShare& end : ring.ends)
        sum += end.is_leak ? end.share : 0;
    return sum;
}

void aperture_findings(const Scene& scene) {
    const EyeClipping& eye = darker_eye(scene, middle_of);
    const double aperture = 2 * scene.report.train.objective_radius;
    const double working = eye.working_aperture;
    if (working >= aperture_loss * aperture) return;
    const Culprit worst = culprit(scene, eye.eye, middle_of(eye));
    scene.add(
        Severity::poor, "aperture_reduced",
        fmt::format("On axis only {:.0f} mm of the {:.0f} mm aperture works; most is lost at {}.",
                    working, aperture, worst.name),
        "A wider opening there, or a shifter in front of it, gives the aperture back.", worst.part);
}

void edge_findings(const Scene& scene) {
    const auto& clipping = scene.report.clipping;
    const EyeClipping& eye = darker_eye(scene, edge_of);
    const double edge = eye.edge_relative;
    const double lit =
        std::min(clipping[0].fully_illuminated_diameter, clipping[1].fully_illuminated_diameter);
    if (edge < dim_edge) {
        const Culprit worst = culprit(scene, eye.eye, edge_of(eye));
        const bool is_dark = edge < dark_edge;
        scene.add(
            is_dark ? Severity::poor : Severity::note, "edge_dimmed",
            fmt::format("The edge of the field gets {:.0f} % of the light; most is lost at {}.",
                        100 * edge, worst.name),
            is_dark ? fmt::format(
                "A field stop of up to {:.0f} mm would keep more than half of the light "
                "to its edge.",
                std::floor(bright_field(eye)))
                    : "Dimming to about half is hard to notice at the eyepiece.",
            worst.part);
    } else if (lit >= 0.999 * eye.field_stop) {
        scene.add(
            Severity::good, "fully_lit",
            fmt::format("The whole field of {:.1f} mm is fully lit in both eyes.", eye.field_stop));
    }
}

void leak_findings(const Scene& scene) {
    const auto& [left, right] = scene.report.clipping;
    const double middle = std::max(leaked(middle_of(left)), leaked(middle_of(right)));
    const double edge = std::max(leaked(edge_of(left)), leaked(edge_of(right)));
    const bool on_axis = middle >= leak_that_shows;
    if (!on_axis && edge < leak_that_shows) return;
    scene.add(Severity::poor, "light_leaks",
              fmt::format(
                  "{:.1f} % of the light {} leaks out of bare glass faces that should reflect it.",
                  100 * (on_axis ? middle : edge), on_axis ? "on axis" : "at the field's edge"),
              "Glass of a higher index, mirrored faces, or a slower beam (a shifter in front) "
              "keeps it in.");
}

void sight_findings(const Scene& scene) {
    const Report& report = scene.report;
    const auto& observer = part_as<Observer>(scene.setup, report.train.choice.observer);
    const auto& eyepiece = part_as<EyepiecePair>(scene.setup, report.train.choice.eyepiece);
    const double exit_pupil = report.magnification.exit_pupil;
    if (exit_pupil > observer.eye_pupil.value) {
        scene.add(
            Severity::note, "exit_pupil_wasted",
            fmt::format("The exit pupil of {:.1f} mm is wider than the eye's {:.1f} mm: only "
                        "{:.0f} mm of the "
                        "aperture reach the eye.",
                        exit_pupil, observer.eye_pupil.value,
                        2 * report.train.objective_radius * observer.eye_pupil.value / exit_pupil),
            "A shorter eyepiece uses the whole aperture.", report.train.choice.eyepiece);
    } else if (exit_pupil < smallest_exit_pupil_mm) {
        scene.add(
            Severity::note, "exit_pupil_tiny",
            fmt::format(
                "The exit pupil is only {:.2f} mm: the image is large but dim and floaters show.",
                exit_pupil),
            "A longer eyepiece or a weaker shifter gives a brighter image.",
            report.train.choice.eyepiece);
    }
    if (eyepiece.outer_diameter >= observer.pupil_distance) {
        scene.add(Severity::fails, "eyepieces_touch",
                  fmt::format("Two eyepieces of {:.0f} mm cannot stand {:.0f} mm apart.",
                              eyepiece.outer_diameter.value, observer.pupil_distance.value),
                  "Slimmer eyepieces are needed for this observer.", report.train.choice.eyepiece);
    }
    if (observer.spectacles == Spectacles::kept_on
        && eyepiece.eye_relief.value < spectacles_need_mm) {
        scene.add(Severity::note, "eye_relief_short",
                  fmt::format(
                      "With spectacles on, an eye relief of {:.0f} mm hides the edge of the field.",
                      eyepiece.eye_relief.value),
                  "15 to 20 mm is usually needed.", report.train.choice.eyepiece);
    }
}

void part_findings(const Scene& scene) {
    for (const ShifterAtWork& shifter : scene.report.budget.shifters) {
        const auto& lens = part_as<Shifter>(scene.setup, shifter.part);
        if (lens.given != ShifterGiven::factor_and_gain) continue;
        if (std::abs(shifter.factor / lens.stated_factor - 1) <= factor_off) continue;
        scene.add(
            Severity::note, "factor_differs",
            fmt::format(
                "{} works at {:.2f}× here, not at the stated {:.2f}×, because its lens is {:.1f} "
                "mm from "
                "the field stop instead of {:.1f} mm.",
                scene.name(shifter.part), shifter.factor, lens.stated_factor,
                shifter.image_distance,
                lens_of_stated_pair(lens.stated_factor, lens.stated_gain).image_distance.value),
            "Gain and magnification above are computed from the real spacing.", shifter.part);
    }
    for (const LightPath& path : scene.report.train.light_paths) {
        if (!path.stated || std::abs(*path.stated - path.derived_left) < path_difference_mm)
            continue;
        const double extra = *path.stated - path.derived_left;
        const bool fits = path.end_air + extra >= 0;
        scene.add(fits ? Severity::note : Severity::poor, "stated_path_differs",
                  fmt::format("{}: stated light path {:.1f} mm, derived from glass and air {:.1f} "
                              "mm; the difference of "
                              "{} mm is {}.",
                              scene.name(path.part), *path.stated, path.derived_left,
                              format_signed(extra, 1),
                              fits ? "an air space at its end" : "more than the air it has"),
                  fits ? ""
                       : "Check its legs, prism width and glass against the stated light path.",
                  path.part);
    }
}

}  // namespace

std::vector<Finding> find_all(const Setup& setup, const Report& report) {
    std::vector<Finding> found;
    const Scene scene{setup, report, found};
    focus_findings(scene);
    arm_findings(scene);
    collision_findings(scene);
    aperture_findings(scene);
    edge_findings(scene);
    leak_findings(scene);
    sight_findings(scene);
    part_findings(scene);
    std::stable_sort(found.begin(), found.end(),
                     [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    return found;
}

}  // namespace beamfork
