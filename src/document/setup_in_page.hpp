// A setup's text inside an HTML page, word for word, and how it is had back.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace beamfork {

/// A <pre> element with that text.
std::string setup_for_page(std::string_view setup_text);

/// True of a file that is a page rather than a setup: it begins as HTML does.
bool is_page(std::string_view bytes);

/// The text that setup_for_page put into the page; nothing when there is none.
std::optional<std::string> setup_in_page(std::string_view page);

}  // namespace beamfork
