// The standard views of a train by name; what they show is scene/picture/camera's.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace beamfork {

enum class StandardView { overview, side, top, sky, eyes, rear };

inline constexpr std::array all_standard_views{StandardView::overview, StandardView::side,
                                               StandardView::top,      StandardView::sky,
                                               StandardView::eyes,     StandardView::rear};

/// The word of a view in files and on the command line: "overview", "side", "top", "sky", "eyes", "rear".
std::string_view name_of(StandardView view);

std::optional<StandardView> standard_view_named(std::string_view name);

}  // namespace beamfork
