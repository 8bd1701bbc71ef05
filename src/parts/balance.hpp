// What is known of a telescope's tube on its mount, how it balances and what room it has: fields that telescopes share, described
// once. A kind has them when it has a member `Balance balance`.
#pragma once

#include <optional>
#include <vector>

#include "parts/mount.hpp"

namespace beamfork {

struct Balance {
    std::optional<Grams> tube_mass;            ///< with focuser and finder, without what is behind
    std::optional<Millimetres> balance_point;  ///< of that tube, behind the objective's place
    std::optional<Millimetres> counterweight;  ///< from the balance point to where one can hang
    std::optional<Millimetres> free_behind{};  ///< the focuser's rear end at the zenith
    bool operator==(const Balance&) const = default;
};

FieldInfo tube_mass_info();
FieldInfo balance_point_info();
FieldInfo counterweight_info();
FieldInfo free_behind_info();

template <class Kind>
void append_balance_fields(std::vector<Field<Kind>>& fields) {
    fields.push_back(within(optional_field(tube_mass_info(), &Balance::tube_mass), &Kind::balance));
    fields.push_back(
        within(optional_field(balance_point_info(), &Balance::balance_point), &Kind::balance));
    fields.push_back(
        within(optional_field(counterweight_info(), &Balance::counterweight), &Kind::balance));
    fields.push_back(
        within(optional_field(free_behind_info(), &Balance::free_behind), &Kind::balance));
}

}  // namespace beamfork
