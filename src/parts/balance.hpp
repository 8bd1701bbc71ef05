// What is known of how a telescope's tube balances on its mount: fields that telescopes share, described
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
    bool operator==(const Balance&) const = default;
};

FieldInfo tube_mass_info();
FieldInfo balance_point_info();
FieldInfo counterweight_info();

template <class Kind>
void append_balance_fields(std::vector<Field<Kind>>& fields) {
    fields.push_back(within(optional_field(tube_mass_info(), &Balance::tube_mass), &Kind::balance));
    fields.push_back(
        within(optional_field(balance_point_info(), &Balance::balance_point), &Kind::balance));
    fields.push_back(
        within(optional_field(counterweight_info(), &Balance::counterweight), &Kind::balance));
}

}  // namespace beamfork
