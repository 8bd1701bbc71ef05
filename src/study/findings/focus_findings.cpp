#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/finding_scope.hpp"
#include "study/focus/diffraction.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string inward_advice(const Report& report) {
    const Millimetres wanted = report.budget.shortfall + thin_margin;
    const auto& ways = report.ways_to_focus;
    if (ways.empty() || !ways.front().reaches) {
        return fmt::format("Save {:.1f} mm of light path: a shorter diagonal or adapter, or a "
                           "focus shifter that gives back at least that much.",
                           wanted.value);
    }
    return fmt::format("{} (gives back {:.0f} mm; {:.0f} mm are wanted). More under “Ways to "
                       "focus”.",
                       ways.front().what, ways.front().gained.value, wanted.value);
}

// Where the drawtube stops too early and the seats do the rest.
void seats_finding(const FindingScope& scope) {
    const FocusBudget& budget = scope.report.budget;
    const bool is_inward = budget.margin_in < Millimetres{};
    scope.add(
        Severity::poor, "focus_by_seats",
        fmt::format("Reaches focus by the eyepieces' seats: with the {} fully {}, {:.1f} mm "
                    "are missing, which {} in their seats make up.",
                    budget.primary ? "main mirror" : "drawtube",
                    budget.primary ? (is_inward ? "up" : "down") : (is_inward ? "in" : "out"),
                    -std::min(budget.margin_in, budget.margin_out).value, seats_words(budget)),
        is_inward ? "Nothing need be cut or bought for this eyepiece; another one or a "
                    "short-sighted observer may need more light path."
                  : "A ring of a few mm behind the drawtube gives the seats back to the eyes.",
        scope.index_of(budget.primary ? Role::telescope : Role::focuser));
}

// A moving-mirror telescope focuses by its main mirror; margins are mm of light path.
void primary_findings(const FindingScope& scope) {
    const FocusBudget& budget = scope.report.budget;
    const PrimaryFocus& primary = *budget.primary;
    const std::size_t telescope = scope.index_of(Role::telescope);
    if (!budget.reaches && budget.shortfall_is_inward) {
        scope.add(Severity::fails, "focus_short",
                  fmt::format("Does not reach focus: with the main mirror fully up, {:.1f} mm of "
                              "light path are missing.",
                              budget.shortfall.value),
                  inward_advice(scope.report), telescope);
    } else if (!budget.reaches) {
        scope.add(Severity::fails, "focus_far",
                  fmt::format("Does not reach focus: with the main mirror fully down{}, the image "
                              "still falls {:.1f} mm too far out.",
                              budget.drawtube_helps() ? " and the drawtube fully out" : "",
                              budget.shortfall.value),
                  fmt::format("Add a spacer of {:.0f} mm or more behind the telescope.",
                              std::ceil((budget.shortfall + thin_margin).value)),
                  telescope);
    } else if (const Millimetres margin = std::min(budget.margin_in, budget.margin_out);
               margin < thin_margin) {
        scope.add(Severity::poor, "focus_margin_thin",
                  fmt::format("Reaches focus, but the main mirror{} only {:.1f} mm of back "
                              "focus left {}.",
                              budget.drawtube_helps() ? " and the drawtube have" : " has",
                              margin.value,
                              budget.margin_in < budget.margin_out ? "outward" : "inward"),
                  "Another eyepiece or a short-sighted observer may need more; 5 to 10 mm both "
                  "ways is usual.",
                  telescope);
    } else {
        scope.add(
            Severity::good, "focus_reached",
            fmt::format("Reaches focus with the main mirror {:.1f} mm {}{}; it could take "
                        "{:.0f} mm more light path, or {:.0f} mm less.",
                        abs(primary.moved).value, primary.moved < Millimetres{} ? "down" : "up",
                        budget.drawtube_helps()
                            ? fmt::format(" and the drawtube {:.1f} mm out", budget.drawtube.value)
                            : "",
                        budget.margin_in.value, budget.margin_out.value),
            "", telescope);
    }
}

void drawtube_findings(const FindingScope& scope) {
    const FocusBudget& budget = scope.report.budget;
    const std::size_t focuser = scope.index_of(Role::focuser);
    if (budget.seats_take_up != Millimetres{}) return seats_finding(scope);
    if (budget.seats_lack > Millimetres{} && budget.shortfall == Millimetres{})
        return;  // the arms tell
    if (budget.primary) return primary_findings(scope);
    if (!budget.reaches && budget.shortfall_is_inward) {
        scope.add(Severity::fails, "focus_short",
                  fmt::format("Does not reach focus: the drawtube would have to go {:.1f} mm "
                              "farther in than it can.",
                              budget.shortfall.value),
                  inward_advice(scope.report), focuser);
    } else if (!budget.reaches) {
        scope.add(Severity::fails, "focus_far",
                  fmt::format("Does not reach focus: the drawtube would have to come {:.1f} mm "
                              "farther out than it can.",
                              budget.shortfall.value),
                  fmt::format("Add a spacer of {:.0f} mm or more behind the drawtube.",
                              std::ceil((budget.shortfall + thin_margin).value)),
                  focuser);
    } else if (const Millimetres margin = std::min(budget.margin_in, budget.margin_out);
               margin < thin_margin) {
        const char* way = budget.margin_in < budget.margin_out ? "inward" : "outward";
        scope.add(
            Severity::poor, "focus_margin_thin",
            fmt::format("Reaches focus with only {:.1f} mm of travel left {}.", margin.value, way),
            "Another eyepiece or a short-sighted observer may need more; 5 to 10 mm both "
            "ways is usual.",
            focuser);
    } else {
        scope.add(Severity::good, "focus_reached",
                  fmt::format("Reaches focus with the drawtube {:.1f} mm out; {:.1f} mm left "
                              "inward, {:.1f} mm outward.",
                              budget.wanted_drawtube.value, budget.margin_in.value,
                              budget.margin_out.value),
                  "", focuser);
    }
    if (budget.is_held && budget.reaches
        && abs(budget.drawtube - budget.wanted_drawtube) > Millimetres{0.05}) {
        scope.add(Severity::note, "drawtube_held",
                  fmt::format("The drawtube is held at {:.1f} mm; focus is at {:.1f} mm.",
                              budget.drawtube.value, budget.wanted_drawtube.value),
                  "Clear “Held at” of the focuser to let it focus.", focuser);
    }
}

// "left eyepiece 0.32 mm in, right 0.32 mm out (0.51 D each)": half of what the arms differ by.
std::string shared_words(Millimetres arm_difference, Millimetres per_dioptre) {
    const Millimetres half = abs(arm_difference) / 2;
    const bool is_left_in = arm_difference > Millimetres{};
    return fmt::format("left eyepiece {:.2f} mm {}, right {:.2f} mm {} ({:.1f} D each)", half.value,
                       is_left_in ? "in" : "out", half.value, is_left_in ? "out" : "in",
                       half / per_dioptre);
}

void arm_findings(const FindingScope& scope) {
    const Report& report = scope.report;
    const std::size_t head_index = scope.index_of(Role::splitter);
    const auto& head = part_as<SplitterHead>(scope.setup, head_index);
    const auto& eyepiece = part_as<EyepiecePair>(scope.setup, report.train.choice.eyepiece);
    const Millimetres per_dioptre = travel_per_dioptre(eyepiece.focal_length);
    const Millimetres difference = report.budget.arm_difference;
    const Millimetres depth = depth_of_focus(report.magnification.focal_ratio);
    if (report.budget.seats_lack > Millimetres{}) {
        scope.add(Severity::fails, "arms_unequal",
                  fmt::format("The two eyes are never sharp together: {}. Between them lie {:.1f} "
                              "D.",
                              arms_words(report.budget), abs(difference) / per_dioptre),
                  "Leave the compensating glass unstated, or have the head's maker look at it.",
                  head_index);
        return;
    }
    const Millimetres by_filter =
        eyepiece.filter_shift(Eye::right) - eyepiece.filter_shift(Eye::left);
    if (abs(difference) > depth && abs(difference - by_filter) <= depth) {
        scope.add(Severity::note, "filter_in_one_barrel",
                  fmt::format("The filter in the {} eyepiece moves that eye's image {:.2f} mm out. "
                              "The drawtube serves both eyes' mean, the seats take up the rest: "
                              "{}.",
                              by_filter < Millimetres{} ? "left" : "right", abs(by_filter).value,
                              shared_words(difference, per_dioptre)),
                  "A filter or clear glass as thick in the other barrel makes both alike.",
                  report.train.choice.eyepiece);
    } else if (abs(difference) > depth) {
        scope.add(Severity::note, "arms_unequal",
                  fmt::format("The two arms differ by {:.2f} mm in light path. The drawtube serves "
                              "their mean, the seats take up the rest: {}.",
                              abs(difference).value, shared_words(difference, per_dioptre)),
                  "Leave the compensating glass unstated if the arms are alike.", head_index);
    }
    for (const EyePath& path : report.train.paths) {
        if (std::abs(path.seat_shift_wanted) <= head.seat_travel.value) continue;
        scope.add(Severity::poor, "seat_travel_short",
                  fmt::format("The {} seat would have to move {:.2f} mm for the difference between "
                              "the eyes{}; it has "
                              "{:.2f} mm.",
                              name_of(path.eye), std::abs(path.seat_shift_wanted),
                              abs(difference) > depth ? " and the arms" : "",
                              head.seat_travel.value),
                  "Keep spectacles on, or refocus from eye to eye.", head_index);
    }
}

}  // namespace

void focus_findings(const FindingScope& scope) {
    drawtube_findings(scope);
    arm_findings(scope);
}

}  // namespace beamfork
