#include "study/focus/reach_table.hpp"

#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/focus/combinations.hpp"
#include "train/telescope.hpp"

namespace beamfork {

std::size_t ReachTable::reaching() const {
    return static_cast<std::size_t>(std::count_if(
        entries.begin(), entries.end(), [](const ReachEntry& entry) { return entry.reaches; }));
}

const ReachEntry& ReachTable::of(const Choice& choice) const {
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const ReachEntry& entry) {
        return entry.choice == choice;
    });
    BEAMFORK_EXPECTS(found != entries.end());
    return *found;
}

DrawtubeRange seat_range(const Train& train, Eye eye, double seat_travel) {
    const EyePath& path = train.path(eye);
    const auto drawtube = [&](double seat) {
        // Seen from the field stop where the train has it, the wanted image moves with the seat.
        return train.back_focus
               - needed_back_focus(path, seat - path.seat_shift + path.wanted_image);
    };
    const double in = drawtube(seat_travel);
    const double out = drawtube(-seat_travel);
    return {std::min(in, out), std::max(in, out)};
}

namespace {

constexpr double reach_rounding = 1e-9;  // an exact fit still reaches

DrawtubeRange overlap(const DrawtubeRange& a, const DrawtubeRange& b) {
    return {std::max(a.low, b.low), std::min(a.high, b.high)};
}

// Of the drawtube, or what is left of a moving-mirror telescope's stated back focus.
double position_of(const FocusBudget& budget) {
    if (!budget.primary) return budget.wanted_drawtube;
    const double missing = budget.shortfall_is_inward ? budget.shortfall : -budget.shortfall;
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
    const double position = position_of(budget);
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
        const double wanted = train->paths[side].seat_shift_wanted;
        entry.seats[side] = {wanted,
                             Dioptres{wanted / travel_per_dioptre(eyepiece.focal_length).value},
                             std::abs(wanted) <= head.seat_travel.value + reach_rounding};
        entry.served =
            overlap(entry.served, seat_range(*train, both_eyes[side], head.seat_travel.value));
    }
    // Rounding must not take the one place that a stiff seat leaves.
    if (entry.served.is_empty() && entry.served.low - entry.served.high < reach_rounding)
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
        entry.is_parfocal = std::abs(entry.refocus) <= table.depth_of_focus;
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
    table.travel = find_part<Focuser>(setup)->travel.value;
    const TelescopeFacts telescope = telescope_of(setup);
    const double N = telescope.focal_length / telescope.aperture;
    // Quarter-wave depth of focus, +-2 lambda N^2 (derived from lambda / (2 NA^2)).
    table.depth_of_focus = 2 * spectral_line::e.value / 1000 * N * N;
    find_common(table);
    return held_against(std::move(table), chosen.eyepiece);
}

}  // namespace beamfork
