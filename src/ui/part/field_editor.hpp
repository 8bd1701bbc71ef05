// Draws any field of any part from its description: a slider over what people own, an entry for any
// accepted number, a tick for what may be left unstated, a list for a choice, and the way back to the default.
#pragma once

#include "parts/part.hpp"
#include "ui/part/part_panel.hpp"

namespace beamfork {

struct EditedField {
    std::size_t part = 0;
    const FieldInfo& info;
    FieldValue value;
    FieldValue fresh;        ///< the kind's own value
    double first_value = 0;  ///< what ticking "stated" begins with
    std::string unstated{};  ///< what counts while it is not stated; empty: nothing takes its place
    std::string note{};      ///< what is to be known of it, below it: what rules it, where it holds
};

/// One line: label, slider, entry, unit, reset; below it its note, and a refusal.
void draw_field(const PartUi& ui, const EditedField& field);

}  // namespace beamfork
