// What is saved and undone: a setup, and whatever else the user's file says, so that nothing is lost.
// A plain value; it is changed by apply() alone (document/edit.hpp) and shared as shared_ptr<const Document>.
#pragma once

#include <map>
#include <string>

#include "train/setup.hpp"

namespace beamfork {

/// What a file says beside the values this program knows: foreign keys with their TOML text, and comments.
struct Extras {
    std::map<std::string, std::string> unrecognised;
    Remarks remarks;
    bool operator==(const Extras&) const = default;
};

/// Part entries carry their own extras (parts/part.hpp).
struct Document {
    Setup setup;
    Extras top;              ///< of the keys before the first entry
    Extras chosen;           ///< of the [chosen] entry
    std::string last_lines;  ///< comment lines at the end of the file
    bool operator==(const Document&) const = default;
};

/// A fresh document: one part of every role that a setup must have, with the kinds' own values.
Document new_document();

}  // namespace beamfork
