#include "study/focus/reach_table.hpp"

#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/focus/combinations.hpp"
#include "study/focus/diffraction.hpp"
#include "train/telescope.hpp"

namespace beamfork {

std::size_t ReachTable::reaching() const {
    return static_cast<std::size_t>(std::count_if(
        entries.begin(), entries.end(), [](const ReachEntry& entry) { return entry.reaches; }));
}

std::size_t ReachTable::usable() const {
    return static_cast<std::size_t>(std::count_if(
        entries.begin(), entries.end(), [](const ReachEntry& entry) { return entry.is_usable(); }));
}

const ReachEntry& ReachTable::of(const Choice& choice) const {
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const ReachEntry& entry) {
        return entry.choice == choice;
    });
    BEAMFORK_EXPECTS(found != entries.end());
    return *found;
}

DrawtubeRange seat_range(const Train& train, Eye eye, Millimetres seat_travel) {
    const EyePath& path = train.path(eye);
    const auto drawtube = [&](Millimetres seat) {
        // Seen from the field stop where the train has it, the wanted image moves with the seat.
        return Millimetres{train.back_focus}
               - needed_back_focus(path, seat - Millimetres{path.seat_shift}
                                             + Millimetres{path.wanted_image});
    };
    const Millimetres in = drawtube(seat_travel);
    const Millimetres out = drawtube(-seat_travel);
    return {std::min(in, out), std::max(in, out)};
}

namespace {

DrawtubeRange overlap(const DrawtubeRange& a, const DrawtubeRange& b) {
    return {std::max(a.low, b.low), std::min(a.high, b.high)};
}

// Of the drawtube, or what is left of a moving-mirror telescope's stated back focus.
Millimetres position_of(const FocusBudget& budget) {
    if (!budget.primary) return budget.wanted_drawtube;
    const Millimetres held = budget.is_held ? budget.drawtube : Millimetres{};
    const Millimetres missing = held - budget.wanted_drawtube;
    return budget.primary->stated_back_focus - (budget.primary->back_focus + missing);
}

Result<ReachEntry> entry_of(const Setup& setup, const Choice& choice) {
    const auto train = build_axes(setup, choice, Millimetres{0});
    if (!train) return tl::make_unexpected(train.error());
    const FocusBudget budget = solved_focus(setup, *train);
    if (const auto sound = lenses_can_work(setup, budget); !sound)
        return tl::make_unexpected(sound.error());
    const auto& head = *find_part<SplitterHead>(setup);
    const auto& eyepiece = part_as<EyepiecePair>(setup, choice.eyepiece);
    const Millimetres position = position_of(budget);
    ReachEntry entry{.choice = choice,
                     .drawtube = position,
                     .reaches = budget.reaches,
                     .margin_in = budget.margin_in,
                     .margin_out = budget.margin_out,
                     .shortfall = budget.shortfall,
                     .shortfall_is_inward = budget.shortfall_is_inward,
                     .seats = {},
                     .served = {position - budget.margin_in, position + budget.margin_out}};
    for (std::size_t side = 0; side < 2; ++side) {
        const Millimetres wanted =
            Millimetres{train->paths[side].seat_shift_wanted} + budget.seats_take_up;
        entry.seats[side] = {wanted, Dioptres{wanted / travel_per_dioptre(eyepiece.focal_length)},
                             abs(wanted) <= head.seat_travel + exact_fit};
        entry.served = overlap(entry.served, seat_range(*train, both_eyes[side], head.seat_travel));
    }
    // Rounding must not take the one place that a stiff seat leaves.
    if (entry.served.is_empty() && entry.served.low - entry.served.high < exact_fit)
        entry.served.high = entry.served.low;
    entry.pupil_distance_fits =
        head.reaches(part_as<Observer>(setup, choice.observer).pupil_distance);
    return entry;
}

void compare_with_reference(ReachTable& table) {
    for (ReachEntry& entry : table.entries) {
        Choice same = entry.choice;
        same.eyepiece = table.reference_eyepiece;
        entry.refocus = entry.drawtube - table.of(same).drawtube;
        entry.is_parfocal = abs(entry.refocus) <= table.depth_of_focus;
    }
}

// The pair that leaves the widest gap; an entry that is not served by itself is its own pair.
void find_common(ReachTable& table) {
    std::size_t innermost = 0;
    std::size_t outermost = 0;
    for (std::size_t i = 0; i < table.entries.size(); ++i) {
        const DrawtubeRange& range = table.entries[i].served;
        if (range.high < table.entries[innermost].served.high) innermost = i;
        if (range.low > table.entries[outermost].served.low) outermost = i;
    }
    table.common = {table.entries[outermost].served.low, table.entries[innermost].served.high};
    if (!table.common.is_empty()) return;
    table.conflict = ReachConflict{innermost, outermost, table.common.low - table.common.high};
    for (std::size_t i = 0; i < table.entries.size(); ++i) {
        const DrawtubeRange& range = table.entries[i].served;
        if (!range.is_empty()) continue;
        if (table.conflict->innermost == table.conflict->outermost
            && range.low - range.high <= table.conflict->gap) {
            continue;
        }
        table.conflict = ReachConflict{i, i, range.low - range.high};
    }
}

}  // namespace

ReachTable held_against(ReachTable table, std::size_t eyepiece) {
    table.reference_eyepiece = eyepiece;
    compare_with_reference(table);
    return table;
}

Result<ReachTable> reach_table(const Setup& setup, const Choice& chosen) {
    ReachTable table;
    Combinations all = combinations(setup, chosen);
    BEAMFORK_EXPECTS(!all.studied.empty());
    for (const Choice& choice : all.studied) {
        const auto entry = entry_of(setup, choice);
        if (!entry) return tl::make_unexpected(entry.error());
        table.entries.push_back(*entry);
    }
    table.left_out = std::move(all.left_out);
    table.by_primary = telescope_focuses_by_primary(setup);
    table.travel = find_part<Focuser>(setup)->travel;
    const TelescopeFacts telescope = telescope_of(setup);
    table.depth_of_focus = depth_of_focus(telescope.focal_length / telescope.aperture);
    find_common(table);
    return held_against(std::move(table), chosen.eyepiece);
}

}  // namespace beamfork
