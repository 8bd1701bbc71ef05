// What the model leaves out or takes for granted: the page "What is assumed", in the window and from the command line.
#pragma once

#include <span>

namespace beamfork {

struct Paragraph {
    const char* heading;
    const char* text;
};

std::span<const Paragraph> assumptions();

}  // namespace beamfork
