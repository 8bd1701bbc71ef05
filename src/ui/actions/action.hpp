// An action as it is offered now, to be found by a few letters of its name.
#pragma once

#include <functional>
#include <string>

namespace beamfork {

/// `run` is good within the frame in which the action is offered.
struct Action {
    std::string name;
    std::string group;
    std::string label;
    std::string help;
    std::string keys;
    bool enabled = true;
    std::function<void()> run;
};

}  // namespace beamfork
