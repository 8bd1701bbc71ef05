// Keys that work everywhere in the window.
#pragma once

#include "ui/shell/ui.hpp"

namespace beamfork {

/// Nothing happens while a question is open; single letters also wait while text is typed.
void use_shortcuts(const Ui& ui);

/// Those of the speaker, while a talk is given.
void use_talk_keys(const Ui& ui);

}  // namespace beamfork
