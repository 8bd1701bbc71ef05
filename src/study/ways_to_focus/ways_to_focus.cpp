#include "study/ways_to_focus/ways_to_focus.hpp"

#include <algorithm>
#include <cmath>

#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "study/light/magnification.hpp"
#include "study/ways_to_focus/way_search.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double largest_factor =
    4;  // beyond it hardly any field is left: common practice, no source
constexpr double thin_coupling_mm = 2;  // a threaded ring; common practice, no source
constexpr double short_diagonal_mm =
    38;  // T-thread prism diagonals 35-41; common practice, no source
constexpr double long_diagonal_mm = 50;  // from here on a short one helps

void offer_other_eyepieces(WaySearch& search) {
    for (const std::size_t index : parts_with_role(search.setup(), Role::eyepiece)) {
        if (index == search.choice().eyepiece) continue;
        Choice choice = search.choice();
        choice.eyepiece = index;
        WayToFocus way = way_named("other_eyepiece");
        way.what = fmt::format("Use “{}” instead: its field stop lies elsewhere in its barrel",
                               search.setup().parts[index].name);
        way.cost = "Another magnification; the pair you wanted still does not reach.";
        way.reversibility = Reversibility::at_once;
        way.setup = search.setup();
        way.setup.chosen = choice;
        search.offer(std::move(way));
    }
}

void offer_thin_couplings(WaySearch& search) {
    for (std::size_t i = 0; i < search.setup().parts.size(); ++i) {
        const auto* spacer = search.setup().parts[i].body.as<Spacer>();
        if (spacer == nullptr || spacer->length.value < thin_coupling_mm + 1) continue;
        WayToFocus way = way_named("low_profile_adapter");
        way.what = fmt::format("Replace “{}” by a threaded coupling of {:.0f} mm",
                               search.setup().parts[i].name, thin_coupling_mm);
        way.cost = "Threads at both ends must fit; quick changes by a clamp are lost.";
        way.setup = search.setup();
        way.setup.parts[i].body.get<Spacer>().length = Millimetres{thin_coupling_mm};
        search.offer(std::move(way));
    }
}

void offer_shorter_diagonals(WaySearch& search, const Train& train) {
    for (const LightPath& path : train.light_paths) {
        const Part& part = search.setup().parts[path.part];
        if (!kind_of(part.body).turns_light || path.counted() < long_diagonal_mm) continue;
        PrismDiagonal compact;
        compact.stated_light_path = Millimetres{short_diagonal_mm};
        WayToFocus way = way_named("shorter_diagonal");
        way.what = fmt::format("Replace “{}” by a short prism diagonal with threads ({:.0f} mm)",
                               part.name, short_diagonal_mm);
        way.cost = "Its openings are narrower, and glass in a fast beam costs sharpness.";
        way.setup = with_body(search.setup(), path.part, compact, "Short prism diagonal");
        search.offer(std::move(way));
    }
}

void offer_straight_through(WaySearch& search) {
    for (std::size_t i = 0; i < search.setup().parts.size(); ++i) {
        if (!kind_of(search.setup().parts[i].body).turns_light) continue;
        WayToFocus way = way_named("straight_through");
        way.what =
            fmt::format("Observe straight through, without “{}”", search.setup().parts[i].name);
        way.cost = "Hard on the neck when the target is high; the image is turned, not mirrored.";
        way.reversibility = Reversibility::comfort;
        way.setup = without_part(search.setup(), i);
        search.offer(std::move(way));
    }
}

// A negative lens whose place in the train is `at`: as weak as will do, by thin-lens algebra from its real
// distance d to the image: gain g = d - d/M, so M = d / (d - g) and |f| = d / (M - 1).
// `base` is the setup that it is put into, the search's own or one without a reducer.
void offer_shifter_at(WaySearch& search,
                      const Setup& base,
                      std::size_t at,
                      WayToFocus way,
                      const std::string& place) {
    Shifter lens;
    lens.given = ShifterGiven::focal_length;
    lens.focal_length = Millimetres{-2000};
    lens.clear_diameter = lens_that_fits_into(base.parts[at]);
    const auto focus_with_lens = [&] {
        const Setup trial = with_part(base, at, {"Shifter", lens, {}, {}});
        return solved_focus(trial, trial.chosen);
    };
    const auto bare = solved_focus(base, base.chosen);
    auto probe = focus_with_lens();
    if (probe && probe->lens_in_glass) {
        lens.lens_offset = Millimetres{0};  // no deeper than the face of its cell
        probe = focus_with_lens();
    }
    if (!bare || !probe) return;
    const auto found =
        std::find_if(probe->shifters.begin(), probe->shifters.end(),
                     [at](const ShifterAtWork& shifter) { return shifter.part == at; });
    if (found == probe->shifters.end()) return;
    const Millimetres distance = found->image_distance;
    const Millimetres gain = thin_margin - bare->margin_in;
    if (distance <= Millimetres{} || gain <= Millimetres{}
        || gain >= distance * (1 - 1 / largest_factor))
        return;
    const double factor = std::ceil(distance / (distance - gain) * 20 - 1e-9) / 20;
    lens.focal_length = Millimetres{std::round(-10 * distance.value / (factor - 1)) / 10};
    const std::string name = fmt::format("{:.2f}× shifter", factor);
    way.what = fmt::format("Put a {} {}", name, place);
    way.setup = with_part(base, at, {name, lens, {}, {}});
    way.cost = fmt::format(
        "Magnifies {:.2f}× there: the true field and the exit pupil shrink by as much.", factor);
    search.offer(std::move(way));
}

bool is_reducer(const Part& part) {
    const auto* lens = part.body.as<Shifter>();
    return lens != nullptr && lens->lens_focal_length().value > 0;
}

void offer_shifters(WaySearch& search) {
    const auto& parts = search.setup().parts;
    const std::size_t head = parts_with_role(search.setup(), Role::splitter).front();
    for (std::size_t i = 0; i < head; ++i) {
        if (parts[i].body.is<Shifter>()) return;
    }
    offer_shifter_at(search, search.setup(), head, way_named("shifter_in_nose"),
                     "into the head's nose");
    for (std::size_t i = 0; i < head; ++i) {
        if (!kind_of(parts[i].body).turns_light) continue;
        offer_shifter_at(search, search.setup(), i, way_named("shifter_before_diagonal"),
                         fmt::format("in front of “{}”", parts[i].name));
        return;
    }
}

// A reducer takes light path: without it, with one half as strong, or with a lens of the other kind in its place the
// image lies farther out.
void offer_less_reduction(WaySearch& search) {
    const auto& parts = search.setup().parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (!is_reducer(parts[i])) continue;
        WayToFocus without = way_named("reducer_left_out");
        without.what = fmt::format("Leave out “{}”", parts[i].name);
        without.cost = "It magnifies more: true field and exit pupil are the telescope's own.";
        without.reversibility = Reversibility::at_once;
        without.setup = without_part(search.setup(), i);
        offer_shifter_at(search, without.setup, i, way_named("shifter_for_reducer"),
                         fmt::format("in place of “{}”", parts[i].name));
        search.offer(std::move(without));

        Shifter weaker = part_as<Shifter>(search.setup(), i);
        weaker.focal_length = 2 * weaker.lens_focal_length();
        weaker.given = ShifterGiven::focal_length;
        WayToFocus exchanged = way_named("weaker_reducer");
        exchanged.what = fmt::format("A reducer of {:.0f} mm focal length in place of “{}”",
                                     weaker.focal_length.value, parts[i].name);
        exchanged.cost = "It reduces less.";
        exchanged.setup = search.setup();
        exchanged.setup.parts[i].body = weaker;
        search.offer(std::move(exchanged));
    }
}

// A shifter farther from the field stops gives back more, and magnifies more.
void offer_shifter_forward(WaySearch& search) {
    const auto& parts = search.setup().parts;
    for (std::size_t i = 1; i < parts.size(); ++i) {
        const bool stands_behind_diagonal =
            parts[i].body.is<Shifter>() && kind_of(parts[i - 1].body).turns_light;
        if (!stands_behind_diagonal) continue;
        WayToFocus way = way_named("shifter_moved_forward");
        way.what =
            fmt::format("Move “{}” to the other side of “{}”", parts[i].name, parts[i - 1].name);
        way.cost = "The same lens magnifies more there; its cell must clear the diagonal.";
        way.reversibility = Reversibility::at_once;
        way.setup = search.setup();
        std::swap(way.setup.parts[i - 1], way.setup.parts[i]);
        search.offer(std::move(way));
    }
}

void offer_spacer(WaySearch& search) {
    const std::size_t behind = parts_with_role(search.setup(), Role::focuser).front() + 1;
    Spacer spacer;
    spacer.length = Millimetres{std::ceil((thin_margin - search.budget().margin_out).value)};
    WayToFocus way = way_named("extension");
    way.what =
        fmt::format("Put an extension of {:.0f} mm behind the drawtube", spacer.length.value);
    way.cost = "One more joint that can sag; take it out when a part with a longer path is used.";
    way.setup = with_part(search.setup(), behind, {"Extension", spacer, {}, {}});
    search.offer(std::move(way));
}

}  // namespace

std::vector<WayToFocus> ways_to_focus(const Setup& setup,
                                      const Choice& choice,
                                      const FocusBudget& budget,
                                      ClippingEffort effort) {
    if (std::min(budget.margin_in, budget.margin_out) >= thin_margin) return {};
    const auto train = focused_train(setup, choice, budget);
    if (!train) return {};
    WaySearch search(
        setup, choice, budget,
        {given_light(setup, *train, magnification(setup, choice, budget), effort), effort});
    offer_other_eyepieces(search);
    if (budget.margin_in < budget.margin_out) {
        offer_less_reduction(search);
        offer_shorter_diagonals(search, *train);
        offer_thin_couplings(search);
        offer_straight_through(search);
        offer_shifters(search);
        offer_shifter_forward(search);
        // Nobody cuts a tube or moves a mirror for the sake of a reducer.
        const auto& parts = setup.parts;
        if (std::none_of(parts.begin(), parts.end(), is_reducer)) offer_ways_at_telescope(search);
    } else {
        offer_spacer(search);
    }
    return search.take();
}

}  // namespace beamfork
