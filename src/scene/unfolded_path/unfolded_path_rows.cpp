#include "scene/unfolded_path/unfolded_path_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "parts/focuser.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/unfolded_path/unfolded_track.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string signed_mm(Millimetres length) {
    if (format_number(abs(length).value, 1) == "0.0") return "0.0 mm";
    return typeset(format_signed(length.value, 1)) + " mm";
}

// All that the budget books under that part.
Millimetres booked(const FocusBudget& budget, std::size_t part) {
    Millimetres sum;
    for (const BudgetRow& row : budget.rows) {
        if (row.part == part) sum += row.change;
    }
    return sum;
}

PathStretch chain_stretch(const Setup& setup, const Report& report, std::size_t part) {
    const EyePath& path = report.train.path(Eye::left);
    PathStretch stretch;
    stretch.part = part;
    stretch.name = setup.parts[part].name;
    const Millimetres change = booked(report.budget, part);
    stretch.value = signed_mm(change);
    stretch.role = change > Millimetres{} ? ColourRole::good : ColourRole::dimension;
    stretch.help = fmt::format(
        "{}: {} {:.1f} mm of light path. Air counts in full, glass as length over index; a lens "
        "adds what it gives back, image distance less image distance over factor.",
        stretch.name, change > Millimetres{} ? "gives back" : "takes", abs(change).value);
    for (const AxialStep& step : path.steps) {
        if (step.part == part) stretch.reduced += step.reduced();
    }
    return stretch;
}

// The telescope's last stretch and the drawtube, then the chain in the order of its steps.
std::vector<PathStretch>
stretches(const Setup& setup, const Report& report, const EyeTrack& track) {
    const EyePath& path = report.train.path(Eye::left);
    const double rear = rear_face_place(path, track.stop);
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const std::size_t focuser = parts_with_role(setup, Role::focuser).front();
    const double front = rear - part_as<Focuser>(setup, focuser).drawtube_length.value;
    const double start = path.surfaces[last_telescope_surface(path)].axis_position;

    const Millimetres offered = booked(report.budget, telescope);
    PathStretch light{
        telescope,
        setup.parts[telescope].name,
        std::min(start, front),
        front,
        0,
        signed_mm(offered),
        ColourRole::undivided_beam,
        fmt::format("{} offers {:.1f} mm of light path behind the racked-in drawtube: "
                    "its back focus.",
                    setup.parts[telescope].name, offered.value)};
    PathStretch tube{focuser,
                     setup.parts[focuser].name,
                     front,
                     rear,
                     0,
                     fmt::format("{:.1f} mm out", report.budget.drawtube.value),
                     ColourRole::dimension,
                     fmt::format("{}: drawtube {:.1f} mm out of {:.0f} mm. Being out takes as much "
                                 "light path.",
                                 setup.parts[focuser].name, report.budget.drawtube.value,
                                 report.budget.travel.value)};
    std::vector<PathStretch> all{std::move(light), std::move(tube)};
    double place = rear;
    for (const LightPath& each : report.train.light_paths) {
        PathStretch stretch = chain_stretch(setup, report, each.part);
        stretch.from = place;
        for (const AxialStep& step : path.steps)
            place += step.part == each.part ? step.length : 0;
        stretch.to = place;
        all.push_back(std::move(stretch));
    }
    return all;
}

DrawtubeZone drawtube_zone(const Setup& setup, const Report& report, double rear) {
    const TravelScale scale = focus_budget_rows(report).travel;
    DrawtubeZone zone;
    zone.part = parts_with_role(setup, Role::focuser).front();
    zone.racked_in = rear - report.budget.drawtube.value;
    zone.racked_out = zone.racked_in + report.budget.travel.value;
    zone.present = rear;
    zone.wanted = zone.racked_in + report.budget.wanted_drawtube.value;
    zone.shows_wanted = !report.budget.primary.has_value();
    zone.role = scale.role;
    zone.text = scale.sentence;
    zone.help =
        "Where the drawtube's rear face can stand, from racked in (left) to racked out: the "
        "bar is where it stands"
        + std::string(zone.shows_wanted ? ", the diamond where focus wants it. " : ". ")
        + scale.sentence;
    return zone;
}

// The widest light between two places.
double beam_height(const EyeTrack& track, double from, double to) {
    double height = 0;
    for (const LightCone& cone : track.cones) {
        for (const LightBand& band : cone.bands) {
            for (const BandPlace& place : band.places) {
                if (place.at < from || place.at > to) continue;
                height = std::max({height, std::abs(place.a), std::abs(place.b)});
            }
        }
    }
    return height;
}

// From the drawtube's front end, or the telescope's own openings right before it, to what lies behind the stops.
void find_fit(UnfoldedPathRows& rows) {
    constexpr double near_openings = 120;    // mm before the drawtube
    constexpr double biting_openings = 500;  // those that take light are worth a smaller scale
    constexpr double room_before = 12;
    constexpr double room_behind = 16;
    const PathStretch& light = rows.stretches.front();
    double from = light.to;
    rows.fit_to = rows.drawtube.present;
    for (const EyeTrack& track : rows.eyes) {
        for (const Jaw& jaw : track.jaws) {
            const double before = light.to - jaw.above.x;
            const bool is_telescopes = jaw.part == light.part && jaw.kind == JawKind::opening;
            if (is_telescopes && before < (jaw.bites() ? biting_openings : near_openings))
                from = std::min({from, jaw.above.x, jaw.below.x});
        }
        rows.fit_to = std::max({rows.fit_to, track.stop, track.focus.real, track.focus.wanted});
    }
    rows.fit_from = from - room_before;
    rows.fit_to += room_behind;
    rows.fit_height = 1;
    for (const EyeTrack& track : rows.eyes) {
        const double beam = beam_height(track, from, rows.fit_to);
        // An opening so much wider than the light need not be seen.
        constexpr double wide_open = 1.6;
        rows.fit_height = std::max(rows.fit_height, beam);
        for (const Jaw& jaw : track.jaws) {
            if (jaw.above.x < from || jaw.above.y > wide_open * beam) continue;
            rows.fit_height = std::max({rows.fit_height, jaw.above.y, -jaw.below.y});
        }
    }
}

}  // namespace

UnfoldedPathRows unfolded_path_rows(const Setup& setup, const Report& report) {
    UnfoldedPathRows rows;
    for (std::size_t side = 0; side < rows.eyes.size(); ++side)
        rows.eyes[side] = unfolded_track(setup, report, both_eyes[side]);
    const EyeTrack& left = rows.eyes.front();
    rows.stretches = stretches(setup, report, left);
    const double rear = rear_face_place(report.train.path(Eye::left), left.stop);
    rows.drawtube = drawtube_zone(setup, report, rear);
    rows.zero = rows.drawtube.racked_in;
    rows.grips = unfolded_grips(setup, report, rows);
    find_fit(rows);
    return rows;
}

std::vector<BitingJaw>
worst_jaws(const UnfoldedPathRows& rows, std::span<const Eye> eyes, std::size_t most) {
    std::vector<BitingJaw> worst;
    for (const Eye eye : eyes) {
        for (const Jaw& jaw : rows.eyes[side_of(eye)].jaws) {
            if (!jaw.bites()) continue;
            const auto same = std::find_if(worst.begin(), worst.end(), [&](const BitingJaw& other) {
                return other.jaw.name == jaw.name;
            });
            if (same == worst.end()) {
                worst.push_back({eye, jaw});
            } else if (jaw.loss.share > same->jaw.loss.share) {
                *same = {eye, jaw};
            }
        }
    }
    std::stable_sort(worst.begin(), worst.end(), [](const BitingJaw& a, const BitingJaw& b) {
        return a.jaw.loss.share > b.jaw.loss.share;
    });
    if (worst.size() > most) worst.resize(most);
    return worst;
}

}  // namespace beamfork
