// The study "tune" ready to draw: the curve in a unit square with its axes, what solves for the wanted result in
// words, and what one more of every number changes.
#pragma once

#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "scene/kit/plot_axis.hpp"
#include "scene/tune/tune_choice.hpp"
#include "study/tune/tune_study.hpp"

namespace beamfork {

/// A place in the plot: from 0 to 1 rightwards and upwards.
struct PlotPlace {
    double x = 0;
    double y = 0;
};

/// A value that can be taken by one press.
struct TuneAnswerRow {
    double value = 0;  ///< for the varied number, rounded as it will be set
    std::string text;  ///< "12.35 mm"
    std::string note;  ///< what focus does there
    ColourRole role = ColourRole::good;
    bool is_nearest = false;  ///< the wanted result is not had there, only the nearest to it
};

struct TuneChangeRow {
    std::size_t part = 0;
    std::string varied;  ///< as name_of: what a tuning is asked to vary
    std::string label;   ///< "Adapter: Length"
    std::string value;   ///< "−1.00 mm"
    std::string per;     ///< "+1 mm"
    double share = 0;    ///< of the largest, -1 to 1
    std::string help;
};

struct TuneRows {
    std::string headline;  ///< what is watched and its value now: "Focus margin: −12.3 mm"
    ColourRole headline_role = ColourRole::dimension;
    std::string headline_help;
    std::string at_now;   ///< "at Length 12.0 mm"
    std::string x_title;  ///< with its unit: "Length, mm"
    std::string y_title;
    std::vector<AxisTick> x_ticks;
    std::vector<AxisTick> y_ticks;
    std::vector<std::vector<PlotPlace>> lines;
    std::vector<TuneInterval> in_focus;  ///< from 0 to 1
    std::optional<PlotPlace> now;        ///< nothing: it has no result or lies outside
    std::optional<double> now_x;
    std::optional<double> wanted_y;
    std::vector<PlotPlace> solutions;
    std::string note;  ///< that the number has no effect, or why the curve breaks off; may be empty
    std::vector<TuneAnswerRow> answers;
    std::string answer;       ///< in a sentence; empty: nothing is wanted
    std::string answer_more;  ///< where the result is as wanted or more
    std::vector<TuneChangeRow> changes;
    std::string no_changes;  ///< why the table is empty
};

/// Whether the study is of these parts and that question, though their values may be newer.
bool is_study_of(const TuneStudy& study, const Setup& setup, const TuneQuestion& question);

/// `setup` is of the study's parts; the present place is taken from it.
TuneRows tune_rows(const Setup& setup, const TuneStudy& study);

TuneChangeRow
tune_change_row(const Setup& setup, const Sensitivity& one, const WatchedInfo& watched);

/// What the curve says at a place of the range, 0 to 1: "12.5 mm: 4.2 mm, reaches focus".
std::string tune_reading(const TuneStudy& study, double share);

/// A value of the varied number, of the watched result.
std::string varied_text(const Tunable& tunable, double value);
std::string watched_text(const WatchedInfo& watched, double value);

}  // namespace beamfork
