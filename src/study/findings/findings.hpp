// What the user should know about a setup, in plain sentences with numbers, most severe first. A poor
// setup is a finding, never an error.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "study/findings/cure.hpp"

namespace beamfork {

enum class Severity {
    fails,  ///< the setup does not do its job
    poor,   ///< it works, but something is lost that will be noticed
    note,   ///< worth knowing
    good    ///< what is right
};

std::string to_word(Severity severity);

struct Finding {
    Severity severity = Severity::note;
    std::string id;                   ///< stable name for machines: "focus_short"
    std::string sentence;             ///< what is the matter, with numbers and units
    std::string advice;               ///< what would mend it; empty when nothing need be done
    std::optional<std::size_t> part;  ///< index of the part it is about
    std::vector<Cure> cures{};        ///< best first; only of a report that was asked for them
    bool is_of_sharpness = false;     ///< alone no reason to stay at home: see is_poor
    bool operator==(const Finding&) const = default;
};

}  // namespace beamfork
