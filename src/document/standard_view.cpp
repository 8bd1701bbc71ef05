#include "document/standard_view.hpp"

#include <algorithm>

namespace beamfork {

std::string_view name_of(StandardView view) {
    switch (view) {
    case StandardView::overview: return "overview";
    case StandardView::side: return "side";
    case StandardView::top: return "top";
    case StandardView::sky: return "sky";
    case StandardView::eyes: return "eyes";
    case StandardView::rear: return "rear";
    }
    return "overview";
}

std::optional<StandardView> standard_view_named(std::string_view name) {
    const auto* const found =
        std::find_if(all_standard_views.begin(), all_standard_views.end(),
                     [name](StandardView view) { return name_of(view) == name; });
    if (found == all_standard_views.end()) return std::nullopt;
    return *found;
}

}  // namespace beamfork
