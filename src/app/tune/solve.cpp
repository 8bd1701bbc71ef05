#include "app/tune/solve.hpp"

#include "app/page/page_text.hpp"
#include "base/text.hpp"
#include "scene/tune/tune_rows.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

using SolveJson = nlohmann::ordered_json;

SolveJson interval_json(const std::vector<TuneInterval>& intervals) {
    SolveJson list = SolveJson::array();
    for (const TuneInterval& one : intervals)
        list.push_back({{"from", one.low}, {"to", one.high}});
    return list;
}

SolveJson optional_json(const std::optional<Millimetres>& length) {
    return length ? SolveJson(length->value) : SolveJson();
}
SolveJson optional_json(const std::optional<double>& value) {
    return value ? SolveJson(*value) : SolveJson();
}

SolveJson number_json(const Setup& setup, const Tunable& tunable) {
    return {{"name", name_of(setup, tunable.varied)},
            {"part", setup.parts[tunable.varied.part].name},
            {"key", tunable.varied.key},
            {"label", tunable.field.label},
            {"unit", symbol(tunable.field.unit)},
            {"now", tunable.now},
            {"from", tunable.field.low},
            {"to", tunable.field.high}};
}

SolveJson result_json(const WatchedInfo& watched) {
    return {{"key", watched.key}, {"label", watched.label}, {"unit", symbol(watched.unit)}};
}

std::string solved_json(const TuneStudy& study) {
    const TuneAnswer& answer = *study.answer;
    SolveJson answers = SolveJson::array();
    for (const TuneCrossing& one : answer.crossings) {
        answers.push_back({{"value", one.at},
                           {"result", one.value},
                           {"margin_mm", one.margin.value},
                           {"reaches_focus", is_reached(one.margin)},
                           {"rising", one.is_rising}});
    }
    SolveJson nearest;
    if (answer.nearest && !answer.is_found()) {
        nearest = {{"value", answer.nearest->at},
                   {"result", optional_json(answer.nearest->value)},
                   {"margin_mm", optional_json(answer.nearest->margin)}};
    }
    SolveJson result = result_json(info_of(study.question.watched));
    result["now"] = optional_json(study.now.value);
    const SolveJson root{{"beamfork_solve", 1},
                         {"vary", number_json(study.setup, study.tunable)},
                         {"for", std::move(result)},
                         {"wanted", answer.wanted},
                         {"answers", std::move(answers)},
                         {"at_least", interval_json(answer.at_least)},
                         {"in_focus", interval_json(study.curve.in_focus)},
                         {"jumps_at", answer.jumps},
                         {"nearest", std::move(nearest)}};
    return root.dump(2) + "\n";
}

std::string focus_ranges(const TuneStudy& study) {
    std::string ranges;
    for (const TuneInterval& one : study.curve.in_focus) {
        ranges +=
            fmt::format("{}{} to {}", ranges.empty() ? "" : ", and ",
                        varied_text(study.tunable, one.low), varied_text(study.tunable, one.high));
    }
    return ranges.empty() ? "Focus is reached nowhere." : "Focus is reached from " + ranges + ".";
}

std::string solved_text(const TuneStudy& study) {
    const Setup& setup = study.setup;
    const TuneRows rows = tune_rows(setup, study);
    const auto name = [&](std::size_t part) { return setup.parts.at(part).name; };
    const Choice& now = setup.chosen;
    std::string out = wrapped("",
                              fmt::format("{}, {} {} ({}, {}, {}).", rows.headline, rows.at_now,
                                          "of " + name(study.tunable.varied.part),
                                          name(now.eyepiece), name(now.observer), name(now.target)),
                              0);
    out += wrapped("", rows.answer, 0);
    for (const TuneAnswerRow& row : rows.answers)
        out += "  " + in_column(row.text, 12, true) + "  " + row.note + "\n";
    if (!rows.answer_more.empty()) out += wrapped("", rows.answer_more, 0);
    out += wrapped("", focus_ranges(study), 0);
    if (!study.curve.why_not.empty()) out += wrapped("", rows.note, 0);
    return out;
}

Result<TuneQuestion> question_of(const Setup& setup, const SolveFor& asked) {
    const std::string hint = fmt::format(" (beamfork solve {} --list names all)", asked.file);
    const auto with_hint = [&](const Error& error) {
        return fail(ErrorCode::bad_input, error.what + hint);
    };
    if (asked.vary.empty() || asked.result.empty() || asked.wanted.empty())
        return fail(ErrorCode::bad_input,
                    "say --vary what, --for which result, and --wanted how much" + hint);
    const auto watched = find_watched(asked.result);
    if (!watched) return with_hint(watched.error());
    const auto known = tunables(setup, setup.chosen);
    const auto tunable = find_tunable(setup, known, asked.vary);
    if (!tunable) return with_hint(tunable.error());
    const auto wanted = parse_typed(asked.wanted, info_of(*watched).unit);
    if (!wanted) return fail(ErrorCode::bad_input, "--wanted: " + wanted.error().what);
    return TuneQuestion{tunable->varied, *watched, *wanted, true};
}

}  // namespace

Result<Solved> solve(const Setup& setup, const SolveFor& asked) {
    // A setup that makes no train says why before any name is looked for.
    if (const auto budget = focus_budget(setup, setup.chosen); !budget)
        return tl::make_unexpected(budget.error());
    const auto question = question_of(setup, asked);
    if (!question) return tl::make_unexpected(question.error());
    const auto study = study_tuning(setup, setup.chosen, *question, {1024});
    if (!study) return tl::make_unexpected(study.error());
    return Solved{asked.json ? solved_json(*study) : solved_text(*study),
                  study->answer->is_found()};
}

std::string solvable_text(const Setup& setup) {
    std::string out = "What can be varied (--vary), now, and from where to where:\n";
    for (const Tunable& one : tunables(setup, setup.chosen)) {
        out += fmt::format("  {} {}   {} to {}\n",
                           in_column('"' + name_of(setup, one.varied) + '"', 44),
                           in_column(varied_text(one, one.now), 12, true),
                           varied_text(one, one.field.low), varied_text(one, one.field.high));
    }
    out += "What can be watched (--for), in the unit of --wanted:\n";
    for (const WatchedInfo& info : watched_results())
        out += fmt::format("  {:<18} {}{}{}\n", info.key, info.label,
                           info.unit == FieldUnit::none ? "" : ", ", symbol(info.unit));
    return out;
}

std::string solvable_json(const Setup& setup) {
    SolveJson numbers = SolveJson::array();
    for (const Tunable& one : tunables(setup, setup.chosen))
        numbers.push_back(number_json(setup, one));
    SolveJson results = SolveJson::array();
    for (const WatchedInfo& info : watched_results())
        results.push_back(result_json(info));
    const SolveJson root{
        {"beamfork_solve_list", 1}, {"vary", std::move(numbers)}, {"for", std::move(results)}};
    return root.dump(2) + "\n";
}

}  // namespace beamfork
