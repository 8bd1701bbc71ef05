#include <algorithm>
#include <cmath>

#include "base/chance.hpp"
#include "base/text.hpp"
#include "parts/mount.hpp"
#include "scene/sheet/sheet.hpp"
#include "scene/sheet/sheet_svg.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string cure_to_begin_with(const Report& report) {
    for (const Finding& finding : report.findings) {
        if (finding.severity == Severity::fails && !finding.cures.empty())
            return finding.cures.front().what + ".";
    }
    return "See the findings for what would bring it there.";
}

std::string joint_words(const Report& report, std::size_t part) {
    for (const Joint& joint : report.fit.joints) {
        if (joint.behind != part || !joint.is_claimed() || joint.fits()) continue;
        return " – " + adapter_between(joint.rear, joint.front);
    }
    return "";
}

SheetStep mounting_step(const Setup& setup, const Report& report) {
    SheetStep step{"Mount in this order",
                   "Telescope capped and, if you can, pointing level; drawtube racked fully in and "
                   "clamped. Hold each part until its clamp or thread is tight.",
                   {}};
    for (const std::size_t part : parts_in_light(setup, report.train.choice)) {
        if (role_of(setup.parts[part]) <= Role::focuser) continue;
        const auto mount = mount_of(setup.parts[part].body);
        std::string item = fmt::format("[{}] {}", part + 1, setup.parts[part].name);
        if (mount && mount->mass) item += fmt::format(", {:.0f} g", mount->mass->value);
        step.items.push_back(item + joint_words(report, part));
    }
    return step;
}

SheetStep balance_step(const Report& report) {
    const Fit& fit = report.fit;
    SheetStep step{"Balance", "", {}};
    if (fit.load.mass > Grams{})
        step.text += fmt::format("{:.0f} g hang on the drawtube{}. ", fit.load.mass.value,
                                 fit.load.unstated.empty() ? ""
                                                           : ", without parts whose mass is "
                                                             "not stated");
    if (fit.load.rated)
        step.text += fmt::format("The focuser is rated for {:.0f} g. ", fit.load.rated->value);
    if (fit.balance)
        step.text +=
            fmt::format("The balance point moves {:.0f} mm back. ", fit.balance->shift.value);
    if (fit.balance && fit.balance->counterweight)
        step.text += fmt::format("A counterweight of {:.0f} g at its stated place ahead of the "
                                 "balance point makes up for it. ",
                                 fit.balance->counterweight->value);
    step.text += "Hold the tube, loosen one clamp at a time, balance both axes anew, tighten.";
    return step;
}

SheetStep room_step(const Report& report) {
    const ZenithRoom& room = report.fit.zenith;
    std::string text =
        fmt::format("At the zenith the train reaches {:.0f} mm {}", room.wanted.value,
                    room.is_sideways ? "to the side" : "behind the tube");
    text += room.there ? fmt::format("; the mount leaves {:.0f} mm{}.", room.there->value,
                                     room.hits() ? ": it would strike. Do not go there" : "")
                       : ". Try it by hand, slowly, before any motor moves the telescope.";
    return {"Room to turn", text, {}};
}

SheetStep distance_step(const Setup& setup, const Report& report) {
    const EyepieceSpacing& spacing = report.fit.spacing;
    std::string text =
        fmt::format("Set the head to {:.1f} mm for {} (it goes from {:.1f} to {:.1f} mm).",
                    spacing.pupil_distance.value, setup.parts[report.train.choice.observer].name,
                    spacing.narrowest.value, spacing.widest.value);
    if (!spacing.is_in_range) text += " That is out of its range: one eye will see less.";
    if (report.distance.refocus_per_mm != 0)
        text += fmt::format(" Each mm wider moves focus: {} mm of drawtube.",
                            typeset(format_signed(report.distance.refocus_per_mm, 2)));
    return {"Pupil distance", text, {}};
}

SheetStep focus_step(const Report& report) {
    const FocusBudget& budget = report.budget;
    SheetStep step{"Drawtube", "", {}};
    if (!budget.reaches) {
        step.heading = "Focus is not reached";
        const std::string missing =
            budget.shortfall > Millimetres{}
                ? fmt::format("{:.1f} mm are missing {}", budget.shortfall.value,
                              budget.shortfall_is_inward ? "inward" : "outward")
                : "For both eyes at once: " + arms_words(budget);
        step.text = fmt::format("{}. {}", missing, cure_to_begin_with(report));
        return step;
    }
    if (budget.primary) {
        step.text = fmt::format(
            "{}; focus with the main mirror: {:.1f} mm {} "
            "from its middle position.",
            budget.drawtube_helps()
                ? fmt::format("Rack the drawtube {:.1f} mm out", budget.drawtube.value)
                : "Leave the drawtube where it is",
            abs(budget.primary->moved).value,
            budget.primary->moved < Millimetres{} ? "away from the sky" : "towards the sky");
    } else if (budget.seats_take_up != Millimetres{}) {
        step.text =
            fmt::format("Rack it fully {} and set {} in their seats.",
                        budget.margin_in < Millimetres{} ? "in" : "out", seats_words(budget));
    } else {
        step.text = fmt::format(
            "Set it to {:.1f} mm out, then focus by eye: {:.1f} mm are left inward, "
            "{:.1f} mm outward.",
            budget.wanted_drawtube.value, budget.margin_in.value, budget.margin_out.value);
    }
    step.text += fmt::format(" Chance that it reaches, with every ±: {} %. Other eyepieces and "
                             "observers: see the table below.",
                             format_chance(report.uncertainty.probability));
    return step;
}

SheetStep seat_step(const Report& report) {
    SheetStep step{
        "Dioptre seats",
        "Focus the right eye with the drawtube or knob, the left eye shut; then turn the left "
        "seat alone until the left eye is sharp. Where the seats have a scale, begin at:",
        {}};
    const ReachEntry& entry = report.reach.of(report.train.choice);
    for (std::size_t side = 0; side < 2; ++side) {
        const SeatSetting& seat = entry.seats[side];
        step.items.push_back(fmt::format("{} eye: {} D, that is {} mm{}",
                                         name_of(both_eyes.at(side)),
                                         typeset(format_signed(seat.dioptres.value, 2)),
                                         typeset(format_signed(seat.shift.value, 2)),
                                         seat.is_in_travel ? "" : " – more than the seat travels"));
    }
    return step;
}

}  // namespace

std::vector<SheetStep> sheet_steps(const Setup& setup, const Report& report) {
    std::vector<SheetStep> steps{mounting_step(setup, report), balance_step(report),
                                 room_step(report), distance_step(setup, report),
                                 focus_step(report)};
    if (report.budget.reaches) steps.push_back(seat_step(report));
    steps.push_back(
        {"First look",
         "A bright star, not the Moon, shows whether both images fall together: blink. If it "
         "stays double, stop and look after the head; do not force your eyes.",
         {}});
    return steps;
}

std::vector<SheetCaution> sheet_cautions() {
    return {
        {"Sun", "Never point this telescope at the Sun without a certified solar filter made for "
                "it, fixed over "
                "the whole of its front, or a purpose-built solar instrument used as its "
                "instructions say. No "
                "filter at the eyepiece end: it can crack. Cap or take off the finder. Injury to "
                "the eye is "
                "painless and stays for life."},
        {"Heat in the head",
         "Unfiltered sunlight, even for seconds while the telescope sweeps past, is brought "
         "together "
         "inside the head: cement, coatings and prisms can be destroyed and metal parts can burn "
         "fingers. Keep the cap on by day until the filter is fixed."},
        {"Weight", "Head, diagonal and two eyepieces are heavy at the end of a long lever. Stay "
                   "within what the "
                   "makers of focuser and mount allow, tighten every clamp, keep clear of a tube "
                   "that may swing."},
        {"Lasers",
         "Use collimation lasers of the lowest class, never look into the beam or the front of the "
         "telescope, never point it at people, vehicles or aircraft."},
        {"Eyes and night",
         "If you see double, blurred or feel pain, stop and ask an eye specialist: this page is no "
         "medical advice. Mind cables and steps."},
    };
}

}  // namespace beamfork
