#include "scene/tune/tune_rows.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Two decimals, fewer where they are zeros, more where the number is small.
std::string short_number(double value) {
    std::string text = format_number(value, std::abs(value) < 1 ? 3 : 2);
    if (text.find('.') == std::string::npos) return typeset(text);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return typeset(text);
}

struct TuneScale {
    double low = 0;
    double high = 1;
    [[nodiscard]] double place(double value) const { return (value - low) / (high - low); }
};

TuneScale vertical_scale(const TuneStudy& study) {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    const auto include = [&](double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    };
    for (const TunePoint& point : study.curve.points) {
        if (point.value) include(*point.value);
    }
    if (low > high) include(0);
    if (study.question.wanted) include(*study.question.wanted);
    const double least = std::max(1e-3 * std::max(std::abs(low), std::abs(high)),
                                  2 * std::pow(10, -info_of(study.question.watched).decimals));
    const double pad = std::max(0.06 * (high - low), (least - (high - low)) / 2);
    return {low - pad, high + pad};
}

// Between the curve's neighbours; nothing where there is no curve.
std::optional<TunePoint> curve_at(const TuneCurve& curve, double at) {
    for (const TuneCurve::Run& run : curve.runs) {
        for (std::size_t i = run.first; i < run.end; ++i) {
            const TunePoint& point = curve.points[i];
            if (point.at == at) return point;
            if (i + 1 >= run.end || at < point.at || at > curve.points[i + 1].at) continue;
            const TunePoint& next = curve.points[i + 1];
            const double share = (at - point.at) / (next.at - point.at);
            TunePoint found{at, std::lerp(*point.value, *next.value, share), {}};
            if (point.margin && next.margin)
                found.margin =
                    Millimetres{std::lerp(point.margin->value, next.margin->value, share)};
            return found;
        }
    }
    return std::nullopt;
}

std::string focus_note(Millimetres margin) {
    return is_reached(margin)
               ? fmt::format("reaches focus, {} mm to spare", short_number(margin.value))
               : fmt::format("focus short by {} mm", short_number(-margin.value));
}

ColourRole focus_role(Millimetres margin) {
    return is_reached(margin) ? ColourRole::good : ColourRole::shortfall;
}

void put_curve(TuneRows& rows, const TuneStudy& study, const TuneScale& scale) {
    const TuneCurve& curve = study.curve;
    const TuneRange& range = curve.range;
    for (const TuneCurve::Run& run : curve.runs) {
        auto& line = rows.lines.emplace_back();
        for (std::size_t i = run.first; i < run.end; ++i)
            line.push_back(
                {range.share_of(curve.points[i].at), scale.place(*curve.points[i].value)});
    }
    for (const TuneInterval& one : curve.in_focus)
        rows.in_focus.push_back({range.share_of(one.low), range.share_of(one.high)});
    rows.x_ticks = range.is_logarithmic() ? logarithmic_ticks(range.low, range.high)
                                          : even_ticks(range.low, range.high, 6);
    rows.y_ticks = even_ticks(scale.low, scale.high, 4);
    if (study.question.wanted) rows.wanted_y = scale.place(*study.question.wanted);
    if (!study.answer) return;
    for (const TuneCrossing& one : study.answer->crossings) {
        const double x = range.share_of(one.at);
        if (x >= 0 && x <= 1) rows.solutions.push_back({x, scale.place(one.value)});
    }
}

bool is_flat(const TuneCurve& curve, double grain) {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    for (const TunePoint& point : curve.points) {
        if (!point.value) continue;
        low = std::min(low, *point.value);
        high = std::max(high, *point.value);
    }
    return high - low <= grain;
}

void put_now(TuneRows& rows, const Setup& setup, const TuneStudy& study, const TuneScale& scale) {
    const WatchedInfo& watched = info_of(study.question.watched);
    const Part& part = setup.parts.at(study.tunable.varied.part);
    TunePoint now{study.tunable.now, study.now.value, study.now.margin};
    const auto held = field_value(part.body, study.tunable.varied.key);
    const auto* number = held ? std::get_if<double>(&*held) : nullptr;
    if (number != nullptr && *number != now.at)  // it was moved since: as the curve says
        now = curve_at(study.curve, *number).value_or(TunePoint{*number, {}, {}});
    rows.at_now =
        fmt::format("at {} {}", study.tunable.field.label, varied_text(study.tunable, now.at));
    rows.headline = fmt::format("{}: {}", watched.label,
                                now.value ? watched_text(watched, *now.value) : "none");
    rows.headline_help = std::string(watched.help);
    if (study.question.watched == Watched::margin && now.margin)
        rows.headline_role = focus_role(*now.margin);
    const double x = study.curve.range.share_of(now.at);
    if (x < 0 || x > 1) return;
    rows.now_x = x;
    if (now.value) rows.now = PlotPlace{x, scale.place(*now.value)};
}

double settable(double value) { return std::round(value * 1000) / 1000; }

TuneAnswerRow answer_row(const TuneStudy& study, double at, Millimetres margin) {
    TuneAnswerRow row;
    row.value = std::clamp(settable(at), study.tunable.field.low, study.tunable.field.high);
    row.text = varied_text(study.tunable, row.value);
    row.note = focus_note(margin);
    row.role = focus_role(margin);
    return row;
}

// The first number, by the size of its slope, that would do it within what people own: an estimate.
std::string other_that_may(const TuneStudy& study) {
    if (!study.now.value) return "";
    for (const Sensitivity& one : study.changes) {
        if (one.tunable.varied == study.question.varied || one.per_unit == 0) continue;
        const double at =
            one.tunable.now + (study.answer->wanted - *study.now.value) / one.per_unit;
        const TuneRange range = usual_range(one.tunable);
        if (at < range.low || at > range.high) continue;
        return fmt::format("“{}” may, at about {}: vary that.",
                           tunable_label(study.setup, one.tunable),
                           varied_text(one.tunable, std::round(at)));
    }
    return "";
}

void put_none(TuneRows& rows, const TuneStudy& study, const std::string& wanted) {
    const FieldInfo& field = study.tunable.field;
    const WatchedInfo& watched = info_of(study.question.watched);
    rows.answer = fmt::format("No {} from {} to {} gives {}.", field.label, short_number(field.low),
                              varied_text(study.tunable, field.high), wanted);
    const auto& nearest = study.answer->nearest;
    if (!nearest) return;
    rows.answer += fmt::format(" Nearest: {}.", watched_text(watched, *nearest->value));
    auto row = answer_row(study, nearest->at, nearest->margin.value_or(Millimetres{}));
    row.is_nearest = true;
    rows.answers.push_back(std::move(row));
    rows.answer_more += other_that_may(study);
}

void put_answer(TuneRows& rows, const TuneStudy& study, bool has_no_effect) {
    const TuneAnswer& answer = *study.answer;
    const WatchedInfo& watched = info_of(study.question.watched);
    const std::string wanted = watched_text(watched, answer.wanted);
    if (has_no_effect) {
        rows.answer = answer.is_found()
                          ? fmt::format("Any value gives {}.", wanted)
                          : fmt::format("No value gives {}: it changes nothing.", wanted);
        return;
    }
    for (const double jump : answer.jumps)
        rows.answer_more +=
            fmt::format("At {} it jumps past {}. ", varied_text(study.tunable, jump), wanted);
    if (!answer.is_found()) return put_none(rows, study, wanted);
    for (const TuneCrossing& one : answer.crossings)
        rows.answers.push_back(answer_row(study, one.at, one.margin));
    rows.answer = fmt::format("{} is {} at", watched.label, wanted);
    std::string ranges;
    for (const TuneInterval& one : answer.at_least) {
        if (one.high <= one.low) continue;
        ranges += fmt::format("{}{} to {}", ranges.empty() ? "" : ", and ", short_number(one.low),
                              varied_text(study.tunable, one.high));
    }
    if (!ranges.empty()) rows.answer_more += fmt::format("{} or more from {}.", wanted, ranges);
}

void put_changes(TuneRows& rows, const TuneStudy& study) {
    const WatchedInfo& watched = info_of(study.question.watched);
    if (!study.has_changes) {
        rows.no_changes = "Working it out …";
        return;
    }
    double largest = 0;
    for (const Sensitivity& one : study.changes)
        largest = std::max(largest, std::abs(one.per_step()));
    for (const Sensitivity& one : study.changes) {
        rows.changes.push_back(tune_change_row(study.setup, one, watched));
        rows.changes.back().share = largest > 0 ? one.per_step() / largest : 0;
    }
    if (rows.changes.empty()) rows.no_changes = "Nothing changes it by a step.";
}

}  // namespace

std::string varied_text(const Tunable& tunable, double value) {
    return with_symbol(short_number(value), tunable.field.unit);
}

std::string watched_text(const WatchedInfo& watched, double value) {
    return with_symbol(typeset(format_number(value, watched.decimals)), watched.unit);
}

bool is_study_of(const TuneStudy& study, const Setup& setup, const TuneQuestion& question) {
    const auto& before = study.setup.parts;
    return study.question.varied == question.varied && study.question.watched == question.watched
           && std::equal(before.begin(), before.end(), setup.parts.begin(), setup.parts.end(),
                         [](const Part& a, const Part& b) {
                             return a.name == b.name && a.body.index() == b.body.index();
                         });
}

TuneChangeRow
tune_change_row(const Setup& setup, const Sensitivity& one, const WatchedInfo& watched) {
    TuneChangeRow row;
    row.part = one.tunable.varied.part;
    row.varied = name_of(setup, one.tunable.varied);
    row.label = tunable_label(setup, one.tunable);
    const int decimals = watched.decimals + 1;
    const auto text = [&](double change) {
        return with_symbol(typeset(format_signed(change, decimals)), watched.unit);
    };
    row.value = text(one.per_step());
    row.per = "+" + with_symbol(short_number(one.step()), one.tunable.field.unit);
    row.help = fmt::format(
        "{} of {} changes {} by {}; now {}. Slope at the present setup, by central "
        "difference through the same study.",
        row.per, row.label, watched.label, row.value, varied_text(one.tunable, one.tunable.now));
    if (one.is_bent())
        row.help += fmt::format(" The curve bends here: one more gives {}, one less {}.",
                                text(one.up * one.step()), text(-one.down * one.step()));
    return row;
}

TuneRows tune_rows(const Setup& setup, const TuneStudy& study) {
    TuneRows rows;
    const auto titled = [](std::string_view label, FieldUnit unit) {
        return unit == FieldUnit::none ? std::string(label)
                                       : fmt::format("{}, {}", label, symbol(unit));
    };
    const WatchedInfo& watched = info_of(study.question.watched);
    rows.x_title = titled(study.tunable.field.label, study.tunable.field.unit);
    rows.y_title = titled(watched.label, watched.unit);
    const TuneScale scale = vertical_scale(study);
    put_curve(rows, study, scale);
    put_now(rows, setup, study, scale);
    const bool has_no_effect = is_flat(study.curve, watched.grain);
    if (has_no_effect) {
        rows.note = fmt::format("{} does not change with this.", watched.label);
    } else if (!study.curve.why_not.empty()) {
        rows.note = "The curve breaks off: " + study.curve.why_not + ".";
    }
    if (study.answer) put_answer(rows, study, has_no_effect);
    put_changes(rows, study);
    return rows;
}

std::string tune_reading(const TuneStudy& study, double share) {
    const double at = study.curve.range.at(share);
    const std::string where = varied_text(study.tunable, at);
    const auto there = curve_at(study.curve, at);
    if (!there) return where + ": impossible, or no result";
    std::string text = where + ": " + watched_text(info_of(study.question.watched), *there->value);
    if (there->margin) text += ", " + focus_note(*there->margin);
    return text;
}

}  // namespace beamfork
