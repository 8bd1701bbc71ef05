// Will it focus: the telescope's light path as a ruler from which each part takes its share, what comes of it, and a cure.
#include <algorithm>

#include "document/tour_lit.hpp"
#include "parts/focuser.hpp"
#include "scene/tour/light_path_ruler.hpp"
#include "scene/tour/tour_makers.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A moving mirror focuses whatever holds the drawtube.
bool drawtube_decides(const FocusBudget& budget) { return budget.is_held && !budget.primary; }

TourStep told_verdict(const FocusBudget& budget) {
    if (drawtube_decides(budget)) {
        return {StandardView::rear,
                "Here the drawtube is held at {focus.drawtube}; focus wants it at {focus.wanted}.",
                "Free the drawtube in the focuser's properties to see whether it can go there."};
    }
    if (budget.seats_take_up != Millimetres{}) {
        return {StandardView::rear,
                "At the end of the focus travel a hair is missing; " + seats_words(budget)
                    + " in their seats make it up.",
                "The seats are meant for the eyes: little is left of them then."};
    }
    if (budget.reaches) {
        return {
            StandardView::rear,
            "This setup reaches focus, with {focus.margin_in} left inward and {focus.margin_out} "
            "outward. Longer parts use up the first, shorter parts the second.",
            "5 to 10 mm should be left either way (common practice)."};
    }
    if (budget.shortfall == Millimetres{}) {
        return {StandardView::rear,
                "One eye at a time comes to focus here, never both: " + arms_words(budget) + ".",
                "The compensating glass is there to make both arms equal."};
    }
    if (budget.shortfall_is_inward) {
        return {StandardView::rear,
                "The light runs together before the eyepieces, and the Moon is a blur. Even at the "
                "end of the focus travel it is {focus.shortfall}: no turn of the knob brings the "
                "image there.",
                "The purple arrow runs from the image to where the eyepieces want it."};
    }
    return {StandardView::rear,
            "The image falls behind the eyepieces. Focus lies {focus.shortfall}: a spacer of that "
            "length right behind the focuser cures it.",
            "This is the cheap way to fail: a plain tube mends it."};
}

TourStep asking_for_focus(TourStep told) {
    return asking({"Will it come to focus?",
                   {"Yes", "No, it falls short", "No, it falls too far"},
                   0,
                   "{focus.verdict}"},
                  std::move(told));
}

TourStep path_to_spend(const FocusBudget& budget) {
    if (budget.primary) {
        return {StandardView::side,
                "This telescope focuses by moving its main mirror. As it stands, the image lies "
                "{focus.back_focus} behind the rear face.",
                "Light path costs focal length here: the telescope becomes a longer one."};
    }
    return {
        StandardView::side,
        "With the drawtube fully in, the image stands {focus.back_focus} behind it. That is all "
        "the light path there is to spend.",
        "Back focus is a property of the telescope. It can be measured with a card and the "
        "Moon."};
}

// Light path that the head spends, reduced mm.
double path_of_head(const Setup& setup, const Report& report) {
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    double spends = 0;
    for (const LightPath& path : report.train.light_paths)
        if (path.part == head) spends = path.counted();
    return spends;
}

// Where no drawtube that is free to move decides: what is spent, without a ruler.
Tour told_without_ruler(const Setup& setup, const Report& report) {
    const FocusBudget& budget = report.budget;
    TourStep verdict = lit_by({the_focuser, the_eyepieces}, told_verdict(budget));
    if (!drawtube_decides(budget)) verdict = asking_for_focus(std::move(verdict));
    return {
        "why-it-will-not-focus",
        drawtube_decides(budget) ? "Where it focuses" : "Will it focus, and why",
        {std::move(verdict), lit_by({the_telescope, the_focuser}, path_to_spend(budget)),
         lit_by(
             {the_chain, the_head},
             asking_number(
                 {"How much longer does the head alone make the light's path?",
                  "{head.path}",
                  path_of_head(setup, report),
                  "\u00A0mm",
                  {0.1, 0.5, 1},
                  1},
                 {StandardView::rear,
                  "The parts behind the focuser spend {chain.path}, of which the head alone spends "
                  "{head.path}.",
                  "Air counts in full; glass counts its length divided by its index."}))}};
}

// With the drawtube racked in, where the ruler begins.
Setup racked_in(Setup setup) {
    for (Part& part : setup.parts) {
        if (auto* focuser = part.body.as<Focuser>()) focuser->held_at = Millimetres{0};
    }
    return setup;
}

class RulerSteps {
public:
    RulerSteps(const Setup& setup, const Report& report)
        : setup_(setup),
          report_(report),
          racked_in_(racked_in(setup)),
          left_(report.train.back_focus) {
        const auto axes = build_axes(racked_in_, setup.chosen, Millimetres{0});
        if (axes) shares_ = ruler_shares(*axes);
    }

    std::vector<TourStep> made() {
        std::vector<TourStep> steps{step(
            "The telescope gives {focus.back_focus} of light path behind the drawtube: so far off "
            "its image falls. Every part that is put on takes its share of this ruler.",
            "Back focus can be measured with a card and the Moon.")};
        const std::size_t head = parts_with_role(setup_, Role::splitter).front();
        for (const RulerShare& share : shares_) {
            lit_.push_back(lit_word_of(setup_.parts[share.part]));
            if (share.part == head) {
                steps.push_back(head_step(share));
                break;
            }
            if (auto told = part_step(share)) steps.push_back(std::move(*told));
            left_ = share.left.value;
        }
        return steps;
    }

private:
    TourStep step(std::string caption, std::string notes) const {
        TourStep made{StandardView::rear, std::move(caption), std::move(notes)};
        made.show = {TourShow::ruler};
        made.lit = lit_;
        made.instead = ToldInstead{racked_in_};
        return made;
    }

    // None for a part too short to be seen on the ruler.
    [[nodiscard]] std::optional<TourStep> part_step(const RulerShare& share) const {
        constexpr Millimetres seen_on_ruler{4};
        const std::string name = plainly(setup_.parts[share.part].name);
        const double pushed = share.left.value - (left_ - share.takes.value);
        if (pushed > 1) {
            return step(fmt::format("“{}” bends the light: it pushes the image {} farther out, and "
                                    "{} are left behind it.",
                                    name, millimetres({pushed}), millimetres(share.left)),
                        "What is left is told from the part's rear end to the image.");
        }
        if (share.takes < seen_on_ruler) return std::nullopt;
        return step(fmt::format("“{}” takes {} of it: {} are left, and the image stands so much "
                                "nearer.",
                                name, millimetres(share.takes), millimetres(share.left)),
                    "Air counts in full; glass counts its length divided by its index.");
    }

    TourStep head_step(const RulerShare& share) {
        lit_.emplace_back(the_eyepieces);
        const bool is_left_behind = !report_.budget.reaches && report_.budget.shortfall_is_inward;
        const std::string name = plainly(setup_.parts[share.part].name);
        const std::string asks = fmt::format("“{}” takes {}, and {} were left", name,
                                             millimetres(share.takes), millimetres({left_}));
        TourStep told =
            step(is_left_behind ? asks + ": the image is left behind, {focus.shortfall}."
                                : asks + ". What remains is there for the drawtube.",
                 "The head alone takes more than all other parts together.");
        told.show.insert(TourShow::sight);
        if (!is_left_behind) told.show.erase(TourShow::sight);
        return asking_for_focus(std::move(told));
    }

    const Setup& setup_;
    const Report& report_;
    Setup racked_in_;
    std::vector<RulerShare> shares_;
    double left_;  ///< of the ruler, behind the parts so far
    std::vector<std::string> lit_{the_telescope, the_focuser};
};

std::optional<TourStep> cure_step(const Setup& setup, const Report& report) {
    if (report.budget.reaches) return std::nullopt;
    const auto& ways = report.ways_to_focus;
    const auto way =
        std::find_if(ways.begin(), ways.end(), [](const WayToFocus& one) { return one.reaches; });
    if (way == ways.end()) return std::nullopt;
    TourStep cured{StandardView::rear,
                   fmt::format("{}: the image falls into the eyepieces again, and the Moon is "
                               "sharp.",
                               plainly(way->what)),
                   plainly(way->cost)};
    cured.show = {TourShow::sight};
    cured.instead = ToldInstead{way->setup, setup, "image before"};
    return cured;
}

}  // namespace

// The title does not tell what the room is asked.
Tour why_it_will_not_focus(const Setup& setup, const Report& report) {
    if (report.budget.primary || report.budget.is_held) return told_without_ruler(setup, report);
    Tour tour{"why-it-will-not-focus", "Will it focus, and why", RulerSteps(setup, report).made()};
    tour.steps.push_back(showing({TourShow::sight}, told_verdict(report.budget)));
    if (auto cured = cure_step(setup, report)) tour.steps.push_back(std::move(*cured));
    return tour;
}

}  // namespace beamfork
