// What the panel "compare" shows and asks for.
#pragma once

#include <string>
#include <vector>

#include "desk/compared_setup.hpp"
#include "scene/comparison/companion.hpp"

namespace beamfork {

/// Something that the open setup can be held against.
struct ComparisonChoice {
    std::string key;    ///< "opened", "before", "kept", "demo:…", "file:…"
    std::string label;  ///< on screen
    std::string help;
};

struct ComparisonRequest {
    std::string key;  ///< of a choice
    CompanionPlace place = CompanionPlace::none;
    bool operator==(const ComparisonRequest&) const = default;
};

/// What is true of it now.
struct ComparisonView {
    std::vector<ComparisonChoice> choices;
    const ComparedSetup* other = nullptr;  ///< null: none, or it makes no train ...
    std::string problem;                   ///< ... and why
};

}  // namespace beamfork
