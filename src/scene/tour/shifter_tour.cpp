// What a shifter does: the cone without the lens, with it, and with the lens farther and farther from the image. A setup
// that has none is given one for the length of the tour.
#include <algorithm>

#include "base/text.hpp"
#include "document/tour_lit.hpp"
#include "parts/focuser.hpp"
#include "parts/shifter.hpp"
#include "scene/tour/tour_makers.hpp"
#include "scene/tour/tour_steps.hpp"
#include "study/findings/report.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A setup with a shifter in it, and what that does there.
struct ShifterInPlace {
    Setup setup;
    FocusBudget budget;
    ShifterAtWork works;
    bool is_put_in = false;  ///< the document's setup has none

    [[nodiscard]] const Part& part() const { return setup.parts.at(works.part); }
    [[nodiscard]] std::string factor() const { return format_number(works.factor, 2) + "×"; }
};

std::optional<ShifterInPlace> with_work(Setup setup, bool is_put_in) {
    auto budget = solved_focus(setup, setup.chosen);
    if (!budget) return std::nullopt;
    for (const ShifterAtWork& one : budget->shifters) {
        if (setup.parts.at(one.part).body.is<Shifter>())
            return ShifterInPlace{std::move(setup), *budget, one, is_put_in};
    }
    return std::nullopt;
}

// The setup's own; else that of the way to focus which has one; else a usual one in front of the head.
std::optional<ShifterInPlace> shifter_of(const Setup& setup, const Report& report) {
    if (find_part<Shifter>(setup) != nullptr) return with_work(setup, false);
    for (const WayToFocus& way : report.ways_to_focus) {
        if (!way.reaches || find_part<Shifter>(way.setup) == nullptr) continue;
        return with_work(way.setup, true);
    }
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    return with_work(with_part(setup, head, {"Focus shifter", Shifter{}, {}, {}}), true);
}

// The same train with a lens that does nothing, its drawtube where it stands with the lens at work.
Setup without_its_lens(const ShifterInPlace& placed) {
    Setup setup = placed.setup;
    auto& lens = setup.parts[placed.works.part].body.get<Shifter>();
    lens.given = ShifterGiven::focal_length;
    lens.focal_length = Millimetres{-1e7};  // a window
    for (Part& part : setup.parts) {
        if (auto* focuser = part.body.as<Focuser>()) focuser->held_at = placed.budget.drawtube;
    }
    return setup;
}

std::string put_in_words(const ShifterInPlace& placed) {
    if (!placed.is_put_in) return "";
    return fmt::format("This setup has no shifter: “{}” is put in for this tour. ",
                       plainly(placed.part().name));
}

TourStep before_step(const ShifterInPlace& placed) {
    return told_of({without_its_lens(placed)},
                   lit_by({the_head, the_eyepieces},
                          {StandardView::rear,
                           fmt::format("{}First without its lens: the cone runs together {} too "
                                       "early, and nothing is sharp in the eyepieces.",
                                       put_in_words(placed), millimetres(placed.works.gain)),
                           "The drawtube stands where it will stand with the lens."}));
}

TourStep after_step(const ShifterInPlace& placed) {
    const std::string gain = millimetres(placed.works.gain);
    return told_of(
        {placed.setup, without_its_lens(placed), "image without the lens"},
        lit_by({lit_word_of(placed.part()), the_head, the_eyepieces},
               asking_number(
                   {"How far does this one lens move the image outward?",
                    gain,
                    placed.works.gain.value,
                    "\u00A0mm",
                    {0.5, 1, 1.6},
                    1},
                   {StandardView::rear,
                    fmt::format("The lens bends the cone: it is slimmer, runs on and comes "
                                "together {} farther out. Green is the cone as it was.",
                                gain),
                    "A negative lens gives light path back; a positive one takes some more."})));
}

TourStep farther_step(const ShifterInPlace& nearer, const ShifterInPlace& farther) {
    return told_of(
        {farther.setup},
        lit_by({lit_word_of(farther.part()), the_head, the_eyepieces},
               {StandardView::rear,
                fmt::format("The same lens {} farther from the image: the "
                            "factor grows from {} to {}, and it gives {} instead of {}.",
                            millimetres(farther.works.image_distance - nearer.works.image_distance),
                            nearer.factor(), farther.factor(), millimetres(farther.works.gain),
                            millimetres(nearer.works.gain)),
                "Factor 1 + d / |f|, gain d - d / factor, for a thin lens at distance "
                "d: what its label says holds at one distance alone."}));
}

// The lens moved towards the telescope in its cell, which stays where it is, as far as there is room for it.
std::vector<TourStep> farther_steps(const ShifterInPlace& placed) {
    constexpr Millimetres can_be_seen{2};
    std::vector<TourStep> steps;
    Millimetres last = placed.works.image_distance;
    for (const double moved : {10.0, 20.0, 40.0}) {
        Setup setup = placed.setup;
        setup.parts[placed.works.part].body.get<Shifter>().lens_offset -= Millimetres{moved};
        const auto farther = with_work(std::move(setup), placed.is_put_in);
        if (!farther || farther->budget.reaches != placed.budget.reaches) break;
        if (farther->works.image_distance < last + can_be_seen) break;
        last = farther->works.image_distance;
        steps.push_back(farther_step(placed, *farther));
    }
    return steps;
}

TourStep price_step(const ShifterInPlace& placed) {
    return told_of({placed.setup},
                   lit_by({the_head, the_eyepieces},
                          {StandardView::eyes,
                           fmt::format("That is the price and the prize: everything is seen {} "
                                       "larger, and so much less of the sky fits into the field.",
                                       placed.factor()),
                           "A slimmer cone also passes the prisms with less loss."}));
}

}  // namespace

Tour what_a_shifter_does(const Setup& setup, const Report& report) {
    Tour tour{"what-a-shifter-does", "What a shifter does", {}};
    const auto placed = shifter_of(setup, report);
    if (!placed) {
        tour.steps = {{StandardView::side,
                       "No shifter finds room in this setup. A negative lens in the chain makes "
                       "the cone slimmer and moves the image outward.",
                       "Add one in the window and come back to this tour."}};
        return tour;
    }
    // A moving mirror would follow the image: there is no standing still without the lens.
    if (!placed->budget.primary) tour.steps.push_back(before_step(*placed));
    tour.steps.push_back(after_step(*placed));
    if (placed->budget.primary) tour.steps.back().instead->ghost.reset();
    for (TourStep& step : farther_steps(*placed))
        tour.steps.push_back(std::move(step));
    tour.steps.push_back(price_step(*placed));
    return tour;
}

}  // namespace beamfork
