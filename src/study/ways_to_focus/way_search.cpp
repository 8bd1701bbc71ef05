#include "study/ways_to_focus/way_search.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "study/light/magnification.hpp"

namespace beamfork {

WayToFocus way_named(std::string id) {
    WayToFocus way;
    way.id = std::move(id);
    return way;
}

Millimetres lens_that_fits_into(const Part& part) {
    constexpr double widest = 26;
    constexpr double cell = 3;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        if (!field.is_front_opening) continue;
        const auto value = field_value(part.body, field.key);
        return {std::clamp(std::get<double>(*value) - cell, 3.0, widest)};
    }
    return {widest};
}

WaySearch::WaySearch(const Setup& setup,
                     const Choice& choice,
                     const FocusBudget& budget,
                     const LightToCompare& light)
    : setup_(setup),
      budget_(budget),
      light_(light),
      power_(magnification(setup, choice, budget).magnification) {
    setup_.chosen = choice;
}

void WaySearch::offer(WayToFocus way) {
    const Choice& choice = way.setup.chosen;
    const auto after = solved_focus(way.setup, choice);
    if (!after || after->lens_in_glass) return;
    way.gained = after->margin_in - budget_.margin_in;
    // By the drawtube or the mirror: seats that must help are no way that was looked for.
    way.reaches = after->reaches && after->seats_take_up == Millimetres{};
    way.margin_in = after->margin_in;
    way.margin_out = after->margin_out;
    const Magnification power = magnification(way.setup, choice, *after);
    way.magnification_ratio = power.magnification / power_;
    const bool helps = std::min(way.margin_in, way.margin_out)
                       > std::min(budget_.margin_in, budget_.margin_out) + Millimetres{0.5};
    if (!helps) return;
    const auto train = focused_train(way.setup, choice, *after);
    if (!train) return;
    way.light_before = light_.before;
    way.light = given_light(way.setup, *train, power, light_.effort);
    ways_.push_back(std::move(way));
}

std::vector<WayToFocus> WaySearch::take() {
    const auto rank = [](const WayToFocus& way) {
        const Millimetres margin = std::min(way.margin_in, way.margin_out);
        return std::tuple(!way.reaches, margin < thin_margin - Millimetres{0.1}, way.reversibility,
                          std::abs(std::log(way.magnification_ratio)), abs(way.gained));
    };
    std::stable_sort(ways_.begin(), ways_.end(),
                     [&](const WayToFocus& a, const WayToFocus& b) { return rank(a) < rank(b); });
    return std::move(ways_);
}

}  // namespace beamfork
