// How easily a change of a setup is gone back on. Common practice, no source.
#pragma once

#include <string>

namespace beamfork {

/// How easily a change is gone back on; the easiest is offered first.
enum class Reversibility {
    at_once,    ///< take another part from the drawer
    exchange,   ///< another part must be bought or screwed in
    comfort,    ///< works, but observing gets less comfortable
    workshop,   ///< the telescope or the head itself is changed
    permanent,  ///< cannot be undone
};

/// The word shown to the user: "at once", "exchange a part" ...
std::string to_words(Reversibility reversibility);

}  // namespace beamfork
