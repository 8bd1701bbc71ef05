#include "scene/tune/tune_choice.hpp"

#include <algorithm>

namespace beamfork {

std::string tunable_label(const Setup& setup, const Tunable& tunable) {
    return setup.parts.at(tunable.varied.part).name + ": " + tunable.field.label;
}

TuneChoice tune_choice(const Setup& setup,
                       std::string_view varied,
                       std::string_view watched,
                       std::string_view wanted) {
    TuneChoice choice;
    choice.tunables = tunables(setup, setup.chosen);
    const auto& all = choice.tunables;
    const auto first = [&](const auto& suits) {
        return std::find_if(all.begin(), all.end(), suits);
    };
    auto found = first([&](const Tunable& one) { return name_of(setup, one.varied) == varied; });
    if (found == all.end()) {
        found = first([](const Tunable& one) {
            return one.field.by_hand && one.field.by_hand->moves == HandMoves::rear_end;
        });
    }
    if (found == all.end())
        found = first([](const Tunable& one) { return one.varied.key == "back_focus_mm"; });
    if (found == all.end()) found = all.begin();
    if (found == all.end()) return choice;
    choice.chosen = static_cast<std::size_t>(found - all.begin());
    choice.question.varied = found->varied;
    choice.question.watched = find_watched(watched).value_or(Watched::margin);
    if (wanted.find_first_not_of(' ') == std::string_view::npos) return choice;
    const auto number = parse_typed(wanted, info_of(choice.question.watched).unit);
    if (number) {
        choice.question.wanted = *number;
    } else {
        choice.problem = number.error().what;
    }
    return choice;
}

}  // namespace beamfork
