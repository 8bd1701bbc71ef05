#include "study/focus/other_uses.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "parts/shifter.hpp"

namespace beamfork {

std::string to_word(Use use) {
    switch (use) {
    case Use::one_eye: return "one_eye";
    case Use::straight_through: return "straight_through";
    case Use::without_shifter: return "without_shifter";
    }
    return "";
}

namespace {

bool turns_light(const Part& part) { return kind_of(part.body).turns_light; }
bool is_shifter(const Part& part) { return part.body.is<Shifter>(); }

// What screws into the head's nose and adds no length of its own, a shifter's lens cell above all, goes with the head.
std::vector<std::size_t> head_and_what_it_holds(const Setup& setup) {
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    std::size_t first = head;
    while (first > 0 && is_shifter(setup.parts[first - 1])
           && setup.parts[first - 1].body.get<Shifter>().length.value == 0)
        --first;
    std::vector<std::size_t> parts(head + 1 - first);
    std::iota(parts.begin(), parts.end(), first);
    return parts;
}

// The left eye's axial steps without those of the removed parts: a train without a head, too.
Millimetres wanted_drawtube(const Train& train, const OtherUse& use) {
    EyePath path = train.path(Eye::left);
    std::erase_if(path.steps, [&](const AxialStep& step) {
        return std::find(use.removed.begin(), use.removed.end(), step.part) != use.removed.end();
    });
    // One eye focuses for itself; two eyes share the seats' travel as before.
    const bool is_one_eye = use.use == Use::one_eye;
    const Millimetres back_focus{train.back_focus};
    if (is_one_eye) {
        // Without a seat of its own the eyepiece rests on its shoulder.
        return back_focus - needed_back_focus(path, {path.wanted_image - path.seat_shift});
    }
    return back_focus - needed_back_focus(path, {train.served_image(Eye::left)});
}

}  // namespace

Result<std::vector<OtherUse>>
other_uses(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    const auto train = build_axes(setup, choice, Millimetres{0});
    if (!train) return tl::make_unexpected(train.error());
    const auto removed_if = [&](auto is_removed) {
        std::vector<std::size_t> removed;
        for (const std::size_t index : parts_in_light(setup, choice)) {
            if (is_removed(setup.parts[index])) removed.push_back(index);
        }
        return removed;
    };
    std::vector<OtherUse> uses;
    uses.push_back({.use = Use::one_eye, .removed = head_and_what_it_holds(setup)});
    uses.push_back({.use = Use::straight_through, .removed = removed_if(turns_light)});
    uses.push_back({.use = Use::without_shifter, .removed = removed_if(is_shifter)});
    std::erase_if(uses, [](const OtherUse& use) { return use.removed.empty(); });
    const Millimetres all_parts = wanted_drawtube(*train, OtherUse{});
    for (OtherUse& use : uses) {
        use.drawtube = wanted_drawtube(*train, use);
        use.change = use.drawtube - all_parts;
        use.margin_in = budget.margin_in + use.change;
        use.margin_out = budget.margin_out - use.change;
        use.reaches = std::min(use.margin_in, use.margin_out) >= -exact_fit;
        use.shortfall_is_inward = use.margin_in < Millimetres{};
        if (!use.reaches) use.shortfall = -std::min(use.margin_in, use.margin_out);
    }
    return uses;
}

}  // namespace beamfork
