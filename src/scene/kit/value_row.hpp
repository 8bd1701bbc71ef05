// One number ready to show: its name, its text, its unit and one sentence about it.
#pragma once

#include <string>

namespace beamfork {

struct ValueRow {
    std::string label;
    std::string value;  ///< digits only, for right alignment; "–" when there is none
    std::string unit;   ///< may be empty; one that leads its number ends in a slash: "f/"
    std::string help;   ///< what it is, its formula in words and the source
    bool operator==(const ValueRow&) const = default;
    [[nodiscard]] bool unit_leads() const { return unit.ends_with('/'); }
};

}  // namespace beamfork
