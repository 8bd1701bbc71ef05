// What a change of the setup would look like, drawn as a ghost into the picture of the setup as it is.
#pragma once

#include "scene/picture/frame.hpp"

namespace beamfork {

/// `now` with everything of `changed` that stands elsewhere or is new, as translucent bodies and lines in
/// the role of a ghost, named by `words`. Camera bounds and picking stay as they are: ghosts belong to no part. Where nothing
/// moves, only the words are added.
Frame with_ghost(const Frame& now, const Frame& changed, const std::string& words);

}  // namespace beamfork
