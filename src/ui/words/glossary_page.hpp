// The words of the trade, explained (scene/words/glossary), sought by a few letters.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

inline constexpr const char* glossary_popup = "Glossary";

/// Draws the page while it is open; `typed` is what is sought.
void draw_glossary_page(const Ui& ui, std::string& typed);

}  // namespace beamfork
