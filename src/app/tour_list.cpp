#include "app/tour_list.hpp"

#include "scene/built_in_tours.hpp"
#include "scene/tour_quotes.hpp"

#include <fmt/format.h>

namespace beamfork {

Result<std::string> tour_list_text(const Document& document, const Report& report) {
    const Setup& setup = document.setup;
    const auto quotes = tour_quotes(setup, report);
    std::string out = fmt::format("Tours of \"{}\"\n", setup.title);
    for (const Tour& tour : all_tours(document, report)) {
        out += fmt::format("\n{} ({})\n", tour.title, tour.name);
        for (std::size_t i = 0; i < tour.steps.size(); ++i) {
            const TourStep& step = tour.steps[i];
            const auto caption = filled_caption(step.caption, quotes);
            if (!caption) return caption;
            out += fmt::format("  {}. [{}] {}\n", i + 1,
                               step.camera ? "a view of its own" : name_of(step.view), *caption);
            if (!step.notes.empty()) out += fmt::format("     Notes: {}\n", step.notes);
        }
    }
    return out;
}

}  // namespace beamfork
