// How a part is held by its neighbours and what it weighs: the fields that all parts from the focuser to the
// eyepieces share, described once. A kind has them when it has a member `Mount mount`.
#pragma once

#include <optional>
#include <vector>

#include "base/units.hpp"
#include "parts/field.hpp"
#include "parts/fitting.hpp"
#include "parts/kind.hpp"

namespace beamfork {

struct Mount {
    Fitting front = Fitting::unstated;  ///< the end towards the telescope
    Fitting rear = Fitting::unstated;   ///< the end towards the eyes
    std::optional<Grams> mass;          ///< of one piece: of one eyepiece of a pair
    bool operator==(const Mount&) const = default;
};

FieldInfo front_fitting_info();
FieldInfo rear_fitting_info();
FieldInfo part_mass_info();

/// A mass in grams from 0 to `high`, with a slider's usual range.
FieldInfo mass_info(std::string key,
                    std::string label,
                    std::string help,
                    double high,
                    double usual_low,
                    double usual_high);

/// A field that lives in a member struct of the kind.
template <class Kind, class Group>
Field<Kind> within(Field<Group> inner, Group Kind::*group) {
    return {
        inner.info, [get = inner.get, group](const Kind& kind) { return get(kind.*group); },
        [set = inner.set, group](Kind& kind, const FieldValue& value) { set(kind.*group, value); }};
}

/// A focuser is joined at its rear only and its mass belongs to the tube; an eyepiece at its front only.
template <class Kind>
void append_mount_fields(std::vector<Field<Kind>>& fields) {
    const auto words = fitting_words();
    if (Kind::role != Role::focuser)
        fields.push_back(
            within(choice_field(front_fitting_info(), &Mount::front, words), &Kind::mount));
    if (Kind::role != Role::eyepiece)
        fields.push_back(
            within(choice_field(rear_fitting_info(), &Mount::rear, words), &Kind::mount));
    if (Kind::role != Role::focuser)
        fields.push_back(within(optional_field(part_mass_info(), &Mount::mass), &Kind::mount));
}

}  // namespace beamfork
