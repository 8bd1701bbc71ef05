#include "scene/tour_frame.hpp"

#include <algorithm>

#include "base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

Result<TourFrame> tour_frame(std::span<const Tour> tours,
                             const std::string& name,
                             int step,
                             std::span<const TourQuote> quotes) {
    std::vector<std::string> names;
    for (const Tour& tour : tours)
        names.push_back(tour.name);
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) {
        const auto near = nearest_name(name, names);
        return fail(ErrorCode::bad_input,
                    fmt::format("no tour is called '{}'; expected one of: {}{}", name,
                                fmt::join(names, ", "),
                                near ? "; did you mean '" + *near + "'?" : ""));
    }
    const Tour& tour = tours[static_cast<std::size_t>(found - names.begin())];
    const int steps = static_cast<int>(tour.steps.size());
    if (step < 1 || step > steps) {
        return fail(ErrorCode::bad_input,
                    fmt::format("the tour '{}' has steps 1 to {}, not {}", name, steps, step));
    }
    const TourStep& shown = tour.steps[static_cast<std::size_t>(step - 1)];
    auto caption = filled_caption(shown.caption, quotes);
    if (!caption) return tl::make_unexpected(caption.error());
    return TourFrame{tour.title, std::move(*caption), shown, step, steps};
}

}  // namespace beamfork
