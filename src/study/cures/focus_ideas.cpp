// Ideas for where the image falls and who reaches it.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_ideas.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// The same eyepiece, observer and target by their names, wherever they stand now.
Choice same_choice(const Setup& before, const Setup& after) {
    const auto found = [&](std::size_t wanted) {
        const Part& part = before.parts[wanted];
        for (std::size_t i = 0; i < after.parts.size(); ++i) {
            if (role_of(after.parts[i]) == role_of(part) && after.parts[i].name == part.name)
                return i;
        }
        return wanted;
    };
    return {found(before.chosen.eyepiece), found(before.chosen.observer),
            found(before.chosen.target)};
}

void add_ways(CureIdeas& ideas, const std::vector<WayToFocus>& ways, bool keeps_choice) {
    for (const WayToFocus& way : ways) {
        if (!way.reaches) continue;
        // Focus that the seats give already is no reason to cut a tube.
        if (ideas.report.budget.seats_take_up != Millimetres{}
            && way.reversibility == Reversibility::permanent)
            continue;
        CureIdea idea{way.what, way.cost, way.reversibility, way.setup, way.id};
        if (keeps_choice) idea.setup.chosen = same_choice(ideas.setup, way.setup);
        ideas.add(std::move(idea));
    }
}

// Where others than the chosen eyepiece, observer and target miss the focus: ways for the worst of them.
void add_ways_for_others(CureIdeas& ideas) {
    if (!ideas.has("reach_incomplete")) return;
    const auto& entries = ideas.report.reach.entries;
    const auto worst = std::max_element(
        entries.begin(), entries.end(),
        [](const ReachEntry& a, const ReachEntry& b) { return a.shortfall < b.shortfall; });
    constexpr ClippingEffort few_rays{48};  // the light of a way is not asked for here
    const auto budget = solved_focus(ideas.setup, worst->choice);
    if (budget) add_ways(ideas, ways_to_focus(ideas.setup, worst->choice, *budget, few_rays), true);
}

void add_released_drawtube(CureIdeas& ideas) {
    const std::size_t index = ideas.index_of(Role::focuser);
    Focuser focuser = part_as<Focuser>(ideas.setup, index);
    if (!focuser.held_at) return;
    focuser.held_at.reset();
    ideas.add_changed(index, focuser, "Let the drawtube go and focus", "", Reversibility::at_once);
}

void add_plain_compensator(CureIdeas& ideas) {
    const std::size_t index = ideas.index_of(Role::splitter);
    SplitterHead head = part_as<SplitterHead>(ideas.setup, index);
    if (!head.compensator) return;
    head.compensator.reset();
    ideas.add_changed(index, head,
                      fmt::format("Have compensating glass of {:.1f} mm set in, as long as the arm",
                                  head.arm_offset.value),
                      "The head must be opened by its maker.", Reversibility::workshop);
}

void add_spectacles(CureIdeas& ideas) {
    const std::size_t index = ideas.setup.chosen.observer;
    Observer observer = part_as<Observer>(ideas.setup, index);
    const bool are_on = observer.spectacles == Spectacles::kept_on;
    const bool has_any = observer.left.value != 0 || observer.right.value != 0;
    if (!are_on && !has_any) return;  // nothing to keep on is known of
    observer.spectacles = are_on ? Spectacles::taken_off : Spectacles::kept_on;
    ideas.add_changed(index, observer,
                      are_on ? "Take the spectacles off" : "Keep the spectacles on",
                      are_on ? "The focus must make up for the eyes; astigmatism stays."
                             : "The eye stays farther from the eyepiece.",
                      Reversibility::at_once);
}

// Rings that lift each eyepiece until it focuses where the innermost of them does. A ring of one mm moves the
// drawtube by its sensitivity, which a shifter makes another than one and lets grow or shrink along the ring: secants.
void add_parfocal_rings(CureIdeas& ideas) {
    if (!ideas.has("not_parfocal")) return;
    const auto drawtube = [](const Setup& setup, std::size_t eyepiece) {
        Choice choice = setup.chosen;
        choice.eyepiece = eyepiece;
        const auto budget = focus_budget(setup, choice);
        return budget ? budget->wanted_drawtube.value : 0.0;
    };
    const auto eyepieces = parts_with_role(ideas.setup, Role::eyepiece);
    double innermost = drawtube(ideas.setup, eyepieces.front());
    for (const std::size_t one : eyepieces)
        innermost = std::min(innermost, drawtube(ideas.setup, one));
    CureIdea idea{"", "Rings must clamp square, or the eyepiece tilts.", Reversibility::at_once,
                  ideas.setup};
    for (const std::size_t one : eyepieces) {
        auto& pair = idea.setup.parts[one].body.get<EyepiecePair>();
        const double depth = pair.field_stop_depth.value;
        double ring = 0;
        double step = 1;
        double there = drawtube(ideas.setup, one);
        for (int secant = 0; secant < 6 && std::abs(step) > 1e-3; ++secant) {
            pair.field_stop_depth = Millimetres{depth - ring - step};
            const double next = drawtube(idea.setup, one);
            const double per_mm = (there - next) / step;
            if (per_mm <= 0) break;
            ring += step;
            there = next;
            step = (there - innermost) / per_mm;
        }
        ring = std::round(10 * (ring + step)) / 10;
        pair.field_stop_depth = Millimetres{ring > 0 ? depth - ring : depth};
        if (ring <= 0) continue;
        idea.what += fmt::format("{}{:.1f} mm on “{}”", idea.what.empty() ? "" : ", ", ring,
                                 ideas.name(one));
    }
    if (idea.what.empty()) return;
    idea.what = "Put rings on the barrels: " + idea.what;
    ideas.add(std::move(idea));
}

}  // namespace

void add_focus_ideas(CureIdeas& ideas) {
    add_ways(ideas, ideas.report.ways_to_focus, false);
    add_ways_for_others(ideas);
    add_released_drawtube(ideas);
    add_plain_compensator(ideas);
    add_spectacles(ideas);
    add_parfocal_rings(ideas);
}

}  // namespace beamfork
