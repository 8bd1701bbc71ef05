// Loads the OpenGL functions of the context that is current, through whatever finds their addresses.
#pragma once

namespace beamfork {

using GlAddress = void (*)();

/// False when they cannot be loaded or are older than OpenGL 3.3.
bool load_gl(GlAddress (*address_of)(const char* name));

}  // namespace beamfork
