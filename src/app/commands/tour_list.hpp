// `beamfork tours`: the tours of a setup with their captions filled from its studies, as text.
#pragma once

#include <string>

#include "base/error.hpp"
#include "document/document.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

/// Errors as filled_caption (scene/tour/tour_quotes.hpp).
Result<std::string> tour_list_text(const Document& document, const Report& report);

}  // namespace beamfork
