#include "scene/home_measurement/home_measurement_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

int decimals_of(const Measured& measured) {
    if (!(measured.plus_minus > 0)) return 2;
    // The second digit of the ±; a hair is added so that 0.1 counts as a tenth.
    const double first_digit = std::floor(std::log10(measured.plus_minus) + 1e-12);
    return std::clamp(static_cast<int>(1 - first_digit), 0, 4);
}

std::string measured_text(const Measured& measured) {
    const int decimals = decimals_of(measured);
    return format_number(measured.value, decimals) + " ± "
           + format_number(measured.plus_minus, decimals);
}

namespace {

std::string with_unit(const std::string& number, const std::string& unit) {
    if (unit.empty()) return number;
    return number + (unit == "°" ? "" : " ") + unit;
}

// The telescope's own focal length saves typing; all else is read off by hand.
std::string suggested(const Setup& setup, const ReadingInfo& info) {
    if (info.key != "focal_length_mm" || order_fault(setup)) return "";
    return format_exact(telescope_of(setup).focal_length.value);
}

std::string help_of(const ReadingInfo& info) {
    return fmt::format(
        "{}\nFrom {} to {}. Add “± {}” to say what the {} can be off by; {} is taken "
        "where nothing is said.",
        info.help, format_exact(info.low), with_unit(format_exact(info.high), info.unit),
        format_exact(info.usual_plus_minus), info.unit == "s" ? "timing" : "reading",
        with_unit(format_exact(info.usual_plus_minus), info.unit));
}

const HomeMeasurement& chosen(const MeasurementDraft& draft) {
    const auto all = home_measurements();
    const auto found = std::find_if(all.begin(), all.end(), [&](const HomeMeasurement& one) {
        return one.key == draft.measurement;
    });
    return found != all.end() ? *found : all.front();
}

std::string text_of(const FieldInfo& field, const FieldValue& value) {
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr) return "not stated";
    return with_unit(format_exact(*number), std::string(symbol(field.unit)));
}

FillTarget target_for(const Setup& setup, std::size_t index, const FieldInfo& field) {
    const Part& part = setup.parts[index];
    FillTarget target{index, field.key, field.label + " of " + part.name, {}, {}, {}};
    if (const auto value = field_value(part.body, field.key))
        target.present = text_of(field, *value);
    return target;
}

std::vector<FillTarget> targets_of(const Setup& setup, const HomeMeasurement& measurement) {
    std::vector<FillTarget> targets;
    for (std::size_t index = 0; index < setup.parts.size(); ++index) {
        for (const FieldInfo& field : kind_of(setup.parts[index].body).fields) {
            const auto& keys = measurement.fields;
            if (std::find(keys.begin(), keys.end(), field.key) != keys.end())
                targets.push_back(target_for(setup, index, field));
        }
    }
    return targets;
}

void put_result(HomeMeasurementRows& rows, const Setup& setup) {
    const Measured& result = rows.result->result;
    rows.result_text = with_unit(measured_text(result), rows.measurement->unit);
    for (const ReadingShare& share : rows.result->contributions) {
        if (share.plus_minus == 0) continue;
        rows.readings[share.reading].share = with_unit(
            format_number(share.plus_minus, decimals_of(result) + 1), rows.measurement->unit);
    }
    const double steps = std::pow(10, decimals_of(result) + 1);
    for (FillTarget& target : rows.targets) {
        target.value = std::round(result.value * steps) / steps;
        const auto filled = with_field(setup.parts[target.part].body, target.key, target.value);
        if (!filled) target.problem = filled.error().what;
    }
}

}  // namespace

HomeMeasurementRows home_measurement_rows(const Setup& setup, const MeasurementDraft& draft) {
    HomeMeasurementRows rows;
    rows.measurement = &chosen(draft);
    std::vector<Reading> readings;
    for (const ReadingInfo& info : rows.measurement->readings) {
        ReadingRow row{&info,        rows.measurement->key + "/" + info.key, {}, {}, {}, {},
                       help_of(info)};
        const auto entered = draft.readings.find(row.name);
        row.text = entered != draft.readings.end() ? entered->second : suggested(setup, info);
        const auto reading = parse_reading(row.text, info.usual_plus_minus);
        if (!reading) row.problem = reading.error().what;
        readings.push_back(reading.value_or(Reading{}));
        if (readings.back().values.size() > 1) {
            row.mean = fmt::format("mean of {}: {}", readings.back().values.size(),
                                   with_unit(measured_text(mean_of(readings.back())), info.unit));
        }
        rows.readings.push_back(std::move(row));
    }
    rows.targets = targets_of(setup, *rows.measurement);
    rows.target = rows.targets.empty() ? 0 : std::min(draft.target, rows.targets.size() - 1);
    const auto result = evaluate(*rows.measurement, readings);
    const bool is_readable = std::all_of(rows.readings.begin(), rows.readings.end(),
                                         [](const ReadingRow& row) { return row.problem.empty(); });
    if (!result) {
        rows.problem = result.error().what;
    } else if (is_readable) {
        rows.result = *result;
        put_result(rows, setup);
    }
    return rows;
}

std::optional<Edit> fill_edit(const HomeMeasurementRows& rows) {
    if (!rows.result || rows.targets.empty()) return std::nullopt;
    const FillTarget& target = rows.targets[rows.target];
    if (!target.problem.empty()) return std::nullopt;
    return Edit(SetField{target.part, target.key, target.value});
}

std::optional<Edit> fill_tolerance_edit(const HomeMeasurementRows& rows, const Setup& setup) {
    if (!fill_edit(rows)) return std::nullopt;
    const FillTarget& target = rows.targets[rows.target];
    const Tolerance tolerance{rows.result->result.plus_minus, KnownBy::measured};
    const auto& body = setup.parts[target.part].body;
    if (tolerance_objection(body, target.key, tolerance)) return std::nullopt;
    return Edit(SetTolerance{target.part, target.key, tolerance});
}

}  // namespace beamfork
