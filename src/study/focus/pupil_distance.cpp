#include "study/focus/pupil_distance.hpp"

#include <algorithm>
#include <cmath>

#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"

namespace beamfork {

Millimetres DistanceCoupling::whole_range() const {
    return ends.empty() ? Millimetres{} : ends.back().path - ends.front().path;
}

namespace {

// One setting of the head and what it leaves of the focus.
struct Setting {
    Millimetres distance;
    Millimetres path;
    FocusBudget budget;
};

// The setup with its head set to other distances, its prisms true to their place.
class HeadBench {
public:
    HeadBench(const Setup& setup, const Choice& choice)
        : setup_(setup), choice_(choice), part_(parts_with_role(setup, Role::splitter).front()) {
        setup_.parts[part_].body.get<SplitterHead>().prisms_stand = PrismsStand::true_to_place;
    }

    [[nodiscard]] const SplitterHead& head() const { return part_as<SplitterHead>(setup_, part_); }
    [[nodiscard]] Millimetres nearest(Millimetres distance) const {
        return std::clamp(distance, head().narrowest(), head().widest());
    }

    Result<Millimetres> path_at(Millimetres distance) {
        set(distance);
        const auto train = build_axes(setup_, choice_, Millimetres{0});
        if (!train) return tl::make_unexpected(train.error());
        const auto found = std::find_if(train->light_paths.begin(), train->light_paths.end(),
                                        [&](const LightPath& path) { return path.part == part_; });
        BEAMFORK_EXPECTS(found != train->light_paths.end());
        return Millimetres{(found->derived_left + found->derived_right) / 2};
    }
    Result<Setting> setting_at(Millimetres distance) {
        const auto path = path_at(distance);
        if (!path) return tl::make_unexpected(path.error());
        auto budget = solved_focus(setup_, choice_);
        if (!budget) return tl::make_unexpected(budget.error());
        return Setting{distance, *path, *std::move(budget)};
    }

    // Both seats, for the eyes of that observer and moved against the change of path, stay within their travel.
    [[nodiscard]] Result<bool> seats_take(Millimetres path, std::size_t observer) const {
        Choice choice = choice_;
        choice.observer = observer;
        const auto train = build_axes(setup_, choice, Millimetres{0});
        if (!train) return tl::make_unexpected(train.error());
        const Millimetres travel = head().seat_travel + exact_fit;
        return std::all_of(train->paths.begin(), train->paths.end(), [&](const EyePath& one) {
            return abs(Millimetres{one.seat_shift_wanted} - path) <= travel;
        });
    }

private:
    void set(Millimetres distance) {
        setup_.parts[choice_.observer].body.get<Observer>().pupil_distance = distance;
    }

    Setup setup_;
    Choice choice_;
    std::size_t part_;
};

constexpr Millimetres half_step{0.5};  // about the present setting: far above rounding

// Light path per mm around the present setting, from two settings within the range.
Result<double> path_slope(HeadBench& bench, Millimetres present) {
    const Millimetres low = bench.nearest(present - half_step);
    const Millimetres high = bench.nearest(present + half_step);
    if (high <= low) return 0.0;
    const auto below = bench.path_at(low);
    if (!below) return tl::make_unexpected(below.error());
    const auto above = bench.path_at(high);
    if (!above) return tl::make_unexpected(above.error());
    constexpr double turn_rounding = 1e-9;  // what the turns of a hinge leave
    const double slope = (*above - *below) / (high - low);
    return std::abs(slope) > turn_rounding ? slope : 0.0;
}

// Drawtube or back focus per mm there, of a head that has a range.
Result<double> refocus_slope(HeadBench& bench, Millimetres present) {
    const auto below = bench.setting_at(bench.nearest(present - half_step));
    if (!below) return tl::make_unexpected(below.error());
    const auto above = bench.setting_at(bench.nearest(present + half_step));
    if (!above) return tl::make_unexpected(above.error());
    return (above->budget.margin_in - below->budget.margin_in)
           / (above->distance - below->distance);
}

DistanceChange change_between(const Setting& now, const Setting& then) {
    DistanceChange change;
    change.distance = then.distance;
    change.wider = then.distance - now.distance;
    change.path = then.path - now.path;
    change.refocus = then.budget.margin_in - now.budget.margin_in;
    change.reaches = then.budget.reaches;
    change.missing = then.budget.shortfall;
    change.missing_is_inward = then.budget.shortfall_is_inward;
    return change;
}

}  // namespace

Result<DistanceCoupling> distance_coupling(const Setup& setup, const Choice& choice) {
    HeadBench bench(setup, choice);
    DistanceCoupling coupling;
    coupling.present = bench.nearest(part_as<Observer>(setup, choice.observer).pupil_distance);
    coupling.seat_travel = bench.head().seat_travel;
    const auto slope = path_slope(bench, coupling.present);
    if (!slope) return tl::make_unexpected(slope.error());
    coupling.path_per_mm = *slope;
    if (coupling.path_per_mm == 0) return coupling;
    const auto refocus = refocus_slope(bench, coupling.present);
    if (!refocus) return tl::make_unexpected(refocus.error());
    coupling.refocus_per_mm = *refocus;

    const auto now = bench.setting_at(coupling.present);
    if (!now) return tl::make_unexpected(now.error());
    const auto change_to = [&](Millimetres distance,
                               std::size_t observer) -> Result<DistanceChange> {
        const auto then = bench.setting_at(distance);
        if (!then) return tl::make_unexpected(then.error());
        DistanceChange change = change_between(*now, *then);
        const auto taken = bench.seats_take(change.path, observer);
        if (!taken) return tl::make_unexpected(taken.error());
        change.seats_suffice = *taken;
        return change;
    };
    for (const std::size_t observer : parts_with_role(setup, Role::observer)) {
        const Millimetres distance =
            bench.nearest(part_as<Observer>(setup, observer).pupil_distance);
        if (distance == coupling.present) continue;
        auto change = change_to(distance, observer);
        if (!change) return tl::make_unexpected(change.error());
        change->observer = observer;
        coupling.observers.push_back(*change);
    }
    for (const Millimetres end : {bench.head().narrowest(), bench.head().widest()}) {
        const auto change = change_to(end, choice.observer);
        if (!change) return tl::make_unexpected(change.error());
        coupling.ends.push_back(*change);
    }
    return coupling;
}

}  // namespace beamfork
