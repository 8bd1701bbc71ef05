// `beamfork picture`: the 3D view, or the whole window, as an image without a display.
#pragma once

#include "app/commands/tasks.hpp"
#include "document/document.hpp"
#include "render/image.hpp"

namespace beamfork {

/// Errors: no_graphics, and those of make_report.
Result<Image> make_picture(const Document& document, const MakePicture& command);

}  // namespace beamfork
