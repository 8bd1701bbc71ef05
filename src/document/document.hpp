// What is saved and undone: a setup, and whatever else the user's file says, so that nothing is lost.
// A plain value; it is changed by apply() alone (document/edit.hpp) and shared as shared_ptr<const Document>.
#pragma once

#include <string>
#include <vector>

#include "document/extras.hpp"
#include "document/tour.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// Part entries carry their own extras (parts/part.hpp).
struct Document {
    Setup setup;
    Extras top;                 ///< of the keys before the first entry
    Extras chosen;              ///< of the [chosen] entry
    std::string last_lines;     ///< comment lines at the end of the file
    std::vector<Tour> tours{};  ///< of one's own; tours_objection() has nothing against them
    bool operator==(const Document&) const = default;
};

/// A fresh document: one part of every role that a setup must have, with the kinds' own values.
Document new_document();

}  // namespace beamfork
