// What opens over a panel and is answered: lists that drop down, and questions.
#pragma once

#include <string>

namespace beamfork {

/// The next popup opens right below (or above) the last widget instead of at the pointer.
void place_popup_below();

void place_popup_above();

/// A list of words that drops down; call ImGui::EndCombo when it returns true.
bool begin_chooser(const char* id, const std::string& chosen, float width);

/// One word of such a list; true when it is picked. The list opens with the chosen word in sight and under the keyboard.
bool chooser_entry(const std::string& word, bool is_chosen);

/// A centred popup that holds the user until it is answered. Call ImGui::EndPopup when it returns true.
bool begin_question(const char* title, float width);

}  // namespace beamfork
