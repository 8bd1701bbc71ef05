// One number ready to show: its name, its text, its unit and one sentence about it.
#pragma once

#include <string>

namespace beamfork {

struct ValueRow {
    std::string label;
    std::string value;  ///< digits only, for right alignment; "–" when there is none
    std::string unit;   ///< may be empty
    std::string help;   ///< what it is, its formula in words and the source
    bool operator==(const ValueRow&) const = default;
};

}  // namespace beamfork
