#include "app/commands/tour_list.hpp"

#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_frame.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

std::string lit_text(const TourStep& step) { return fmt::format("{}", fmt::join(step.lit, ", ")); }

std::string question_text(const AskedQuestion& asked) {
    std::string text = "Asks: " + asked.question;
    for (std::size_t i = 0; i < asked.answers.size(); ++i)
        text += fmt::format("\n       {} {}{}", i + 1, asked.answers[i],
                            asked.right == i ? " (right)" : "");
    return text;
}

}  // namespace

Result<std::string> tour_list_text(const Document& document, const Report& report) {
    const Setup& setup = document.setup;
    const auto quotes = tour_quotes(setup, report);
    std::string out = fmt::format("Tours of \"{}\"\n", setup.title);
    for (const Tour& tour : all_tours(document, report)) {
        out += fmt::format("\n{} ({})\n", tour.title, tour.name);
        for (std::size_t i = 0; i < tour.steps.size(); ++i) {
            const TourStep& step = tour.steps[i];
            const auto shown = tour_frame({&tour, 1}, tour.name, static_cast<int>(i) + 1, quotes);
            if (!shown) return tl::make_unexpected(shown.error());
            out += fmt::format("  {}. [{}{}] {}\n", i + 1,
                               step.camera ? "a view of its own" : name_of(step.view),
                               step.lit.empty() ? "" : "; lit: " + lit_text(step),
                               shown->asked ? question_text(*shown->asked) : shown->caption);
            if (shown->asked) out += fmt::format("     Then: {}\n", shown->caption);
            if (!step.notes.empty()) out += fmt::format("     Notes: {}\n", step.notes);
        }
    }
    return out;
}

}  // namespace beamfork
