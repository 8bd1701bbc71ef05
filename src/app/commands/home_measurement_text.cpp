#include "app/commands/home_measurement_text.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "scene/home_measurement/home_measurement_rows.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

std::string readings_text(const HomeMeasurement& measurement) {
    std::string out;
    for (const ReadingInfo& info : measurement.readings) {
        out += fmt::format("    {:<18} {}{}{}\n        {}\n", info.key, info.label,
                           info.unit.empty() ? "" : ", " + info.unit,
                           info.otherwise ? " (may be left out)" : "", info.help);
    }
    return out;
}

std::string guide(const HomeMeasurement& measurement) {
    std::string out = fmt::format("{} ({})\n", measurement.key, measurement.title);
    int number = 0;
    for (const std::string& step : measurement.steps)
        out += fmt::format("  {}. {}\n", ++number, step);
    for (const std::string& caution : measurement.cautions)
        out += fmt::format("  Caution: {}\n", caution);
    out += "  Readings:\n" + readings_text(measurement);
    return out + fmt::format("  {}\n", measurement.formula);
}

Result<std::vector<Reading>> readings_of(const HomeMeasurement& measurement,
                                         const std::vector<std::string>& texts) {
    std::vector<std::string> keys;
    for (const ReadingInfo& info : measurement.readings)
        keys.push_back(info.key);
    std::vector<Reading> readings(keys.size());
    for (const std::string& text : texts) {
        const std::string key = text.substr(0, text.find('='));
        const auto found = std::find(keys.begin(), keys.end(), key);
        if (found == keys.end() || key.size() == text.size()) {
            const auto near = nearest_name(key, keys);
            return fail(ErrorCode::bad_input,
                        fmt::format("'{}' is no reading of {}; write KEY=VALUES{}", text,
                                    measurement.key,
                                    near ? " such as '" + *near + "=...'" : std::string()));
        }
        const auto index = static_cast<std::size_t>(found - keys.begin());
        auto reading = parse_reading(text.substr(key.size() + 1),
                                     measurement.readings[index].usual_plus_minus);
        if (!reading) return tl::make_unexpected(reading.error());
        readings[index] = *std::move(reading);
    }
    return readings;
}

// "field_stop_mm" for a Field stop in mm.
std::string json_key(const HomeMeasurement& measurement) {
    std::string key = measurement.gives;
    std::transform(key.begin(), key.end(), key.begin(), [](unsigned char letter) {
        return letter == ' ' ? '_' : static_cast<char>(std::tolower(letter));
    });
    return key + (measurement.unit == "mm" ? "_mm" : "");
}

std::string result_json(const HomeMeasurement& measurement, const MeasurementResult& made) {
    nlohmann::ordered_json out;
    out["beamfork_measure"] = 1;
    out["measurement"] = measurement.key;
    out[json_key(measurement)] = made.result.value;
    out["plus_minus"] = made.result.plus_minus;
    for (const ReadingShare& share : made.contributions)
        out["plus_minus_from"][measurement.readings[share.reading].key] = share.plus_minus;
    return out.dump(2) + "\n";
}

std::string result_text(const HomeMeasurement& measurement, const MeasurementResult& made) {
    std::string out =
        fmt::format("{}: {} {}\n", measurement.gives, measured_text(made.result), measurement.unit);
    for (const ReadingShare& share : made.contributions) {
        out += fmt::format("  ± {} {} from: {}\n",
                           format_number(share.plus_minus, decimals_of(made.result) + 1),
                           measurement.unit, measurement.readings[share.reading].label);
    }
    return out + fmt::format("  {}\n", measurement.formula);
}

}  // namespace

Result<std::string> home_measurement_text(const MeasureAtHome& command) {
    if (command.name.empty()) {
        std::string out = "Home measurements. Each ± is one standard uncertainty.\n";
        for (const HomeMeasurement& one : home_measurements())
            out += "\n" + guide(one);
        return out;
    }
    const auto measurement = find_home_measurement(command.name);
    if (!measurement) return tl::make_unexpected(measurement.error());
    if (command.readings.empty()) return guide(*measurement);
    const auto readings = readings_of(*measurement, command.readings);
    if (!readings) return tl::make_unexpected(readings.error());
    const auto made = evaluate(*measurement, *readings);
    if (!made) return tl::make_unexpected(made.error());
    return command.json ? result_json(*measurement, *made) : result_text(*measurement, *made);
}

}  // namespace beamfork
