// A small box in which everything that can be done is found by typing a few letters of its name.
#pragma once

#include <optional>
#include <vector>

#include "ui/actions/action.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct ActionSearch {
    std::string typed;
    std::size_t row = 0;  ///< of what fits: the one that Enter runs
    bool opened = false;  ///< the popup is up
};

/// Those that fit what is typed (base/word_match.hpp), best first; what cannot be done now comes behind what can.
std::vector<Action> matching_actions(std::vector<Action> all, const std::string& typed);

/// Draws the box while there is one, and runs what was chosen. `all` is asked for while it is open.
void draw_action_search(const Ui& ui,
                        std::optional<ActionSearch>& search,
                        const std::function<std::vector<Action>()>& all);

}  // namespace beamfork
