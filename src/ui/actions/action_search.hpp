// A small box in which everything that can be done is found by typing a few letters of its name.
#pragma once

#include "ui/actions/action.hpp"

namespace beamfork {

/// Those that fit what is typed (base/word_match.hpp), best first; what cannot be done now comes behind what can.
std::vector<Action> matching_actions(const Ui& ui, const std::string& typed);

/// Draws the box while it is open, and runs what was chosen.
void draw_action_search(const Ui& ui);

/// The page of all keys, by topic, from the same table.
void draw_keys_page(const Ui& ui);

/// The words of the trade, explained (scene/glossary.hpp); opened by ui.state.page_wanted.
void draw_glossary_page(const Ui& ui);
/// Opens that page on one word; on all of them when it is empty.
void ask_for_glossary(const Ui& ui, std::string_view word);

}  // namespace beamfork
