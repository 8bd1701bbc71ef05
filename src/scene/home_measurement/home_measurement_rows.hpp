// Home measurements ready to show: what was entered, what is wrong with it, the number that follows with its
// plus-minus, and which fields of which parts it can fill.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "document/edit.hpp"
#include "study/home_measurement/home_measurement.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// What somebody is measuring and has entered so far; kept while the window is open.
struct MeasurementDraft {
    std::string measurement;                      ///< by key; unknown: the first
    std::map<std::string, std::string> readings;  ///< text by "<measurement>/<reading>"
    std::size_t target = 0;                       ///< index into HomeMeasurementRows::targets
};

struct ReadingRow {
    const ReadingInfo* info = nullptr;  ///< lives as long as home_measurements()
    std::string name;                   ///< key in MeasurementDraft::readings
    std::string text;                   ///< as entered, or as the setup suggests
    std::string mean;     ///< "112.5 ± 0.3" of several readings; empty: nothing to tell
    std::string problem;  ///< why it cannot be read; empty: fine
    std::string share;    ///< what it adds to the result's ±, with its unit; empty: no result yet
    std::string help;     ///< with its range and its usual ±
};

/// A field that the result can fill.
struct FillTarget {
    std::size_t part = 0;
    std::string key;
    std::string label;    ///< "Field stop of 25 mm pair"
    std::string present;  ///< its value now, with unit
    std::string problem;  ///< why the result does not fit it; empty: it fits
    FieldValue value;     ///< to be filled in, rounded to a hundredth of the ± or finer
};

struct HomeMeasurementRows {
    const HomeMeasurement* measurement = nullptr;
    std::vector<ReadingRow> readings;
    std::optional<MeasurementResult> result;
    std::string result_text;  ///< "21.3 ± 0.4 mm"; empty while there is none
    std::string problem;      ///< what is still missing, in one sentence
    std::vector<FillTarget> targets;
    std::size_t target = 0;  ///< the chosen one, within `targets` unless that is empty
};

HomeMeasurementRows home_measurement_rows(const Setup& setup, const MeasurementDraft& draft);

/// The edit that puts the result where the chosen target says; nothing while it does not fit.
std::optional<Edit> fill_edit(const HomeMeasurementRows& rows);
/// How well that value is then known; to be made together with fill_edit.
std::optional<Edit> fill_tolerance_edit(const HomeMeasurementRows& rows, const Setup& setup);

/// Value and ± with as many decimals as two digits of the ± need (GUM 7.2.6): "21.34 ± 0.42".
std::string measured_text(const Measured& measured);
/// How many decimals that are: at least 0, at most 4.
int decimals_of(const Measured& measured);

}  // namespace beamfork
