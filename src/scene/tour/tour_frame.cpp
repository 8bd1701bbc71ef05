#include "scene/tour/tour_frame.hpp"

#include <fmt/format.h>

namespace beamfork {

Result<TourFrame> tour_frame(std::span<const Tour> tours,
                             const std::string& name,
                             int step,
                             std::span<const TourQuote> quotes) {
    const auto found = find_tour(tours, name);
    if (!found) return tl::make_unexpected(found.error());
    const Tour& tour = **found;
    const int steps = static_cast<int>(tour.steps.size());
    if (step < 1 || step > steps) {
        return fail(ErrorCode::bad_input,
                    fmt::format("the tour '{}' has steps 1 to {}, not {}", name, steps, step));
    }
    const TourStep& shown = tour.steps[static_cast<std::size_t>(step - 1)];
    auto caption = filled_caption(shown.caption, quotes);
    if (!caption) return tl::make_unexpected(caption.error());
    TourFrame frame{tour.title, std::move(*caption), shown, step, steps};
    if (!shown.asks) return frame;
    auto asked = asked_question(*shown.asks, quotes);
    if (!asked) return tl::make_unexpected(asked.error());
    frame.caption = told_result(*asked, frame.caption);
    frame.asked = std::move(*asked);
    return frame;
}

ViewOptions shown_in(const TourStep& step, ViewOptions before) {
    if (step.show.contains(TourShow::motion)) before.light_moves = true;
    if (step.show.contains(TourShow::pupil)) before.paint_pupil = true;
    if (step.show.contains(TourShow::apart)) before.apart = 1;
    const bool is_dark =
        step.show.contains(TourShow::fields) || step.show.contains(TourShow::ruler);
    if (is_dark) before.light = before.clipped_rays = false;
    return before;
}

}  // namespace beamfork
