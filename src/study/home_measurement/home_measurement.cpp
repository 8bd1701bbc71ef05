#include "study/home_measurement/home_measurement.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "base/text.hpp"
#include "train/train.hpp"

#include <fmt/format.h>

namespace beamfork {

Measured mean_of(const Reading& reading) {
    BEAMFORK_EXPECTS(!reading.values.empty());
    const auto count = static_cast<double>(reading.values.size());
    const double mean = std::accumulate(reading.values.begin(), reading.values.end(), 0.0) / count;
    double squares = 0;
    for (const double value : reading.values)
        squares += (value - mean) * (value - mean);
    const double error = count > 1 ? std::sqrt(squares / (count - 1) / count) : 0;
    return {mean, std::hypot(error, reading.tool_plus_minus)};
}

namespace {

struct SplitText {
    std::string_view numbers;
    std::optional<std::string_view> plus_minus;
};

SplitText split_at_plus_minus(std::string_view text) {
    for (const std::string_view sign :
         {std::string_view("±"), std::string_view("+-"), std::string_view("+/-")}) {
        const auto at = text.find(sign);
        if (at != std::string_view::npos)
            return {text.substr(0, at), text.substr(at + sign.size())};
    }
    return {text, std::nullopt};
}

// As half of the world writes it, with a decimal comma.
std::optional<double> number_in(std::string_view word) {
    std::string plain(word);
    std::replace(plain.begin(), plain.end(), ',', '.');
    return parse_number(plain);
}

Error unreadable(std::string_view word) {
    return {ErrorCode::bad_input,
            fmt::format("'{}' is not a number; write one number, or several with blanks between "
                        "them, and if you like ± and what the tool can be off by",
                        word),
            {}};
}

}  // namespace

Result<Reading> parse_reading(std::string_view text, double usual_plus_minus) {
    const SplitText split = split_at_plus_minus(text);
    Reading reading{{}, usual_plus_minus};
    if (split.plus_minus) {
        const auto number = number_in(*split.plus_minus);
        if (!number || *number < 0) return tl::make_unexpected(unreadable(*split.plus_minus));
        reading.tool_plus_minus = *number;
    }
    constexpr std::string_view gaps = " \t;";
    std::size_t at = split.numbers.find_first_not_of(gaps);
    while (at != std::string_view::npos) {
        const std::size_t end =
            std::min(split.numbers.find_first_of(gaps, at), split.numbers.size());
        const std::string_view word = split.numbers.substr(at, end - at);
        const auto number = number_in(word);
        if (!number) return tl::make_unexpected(unreadable(word));
        reading.values.push_back(*number);
        at = split.numbers.find_first_not_of(gaps, end);
    }
    return reading;
}

Result<HomeMeasurement> find_home_measurement(std::string_view key) {
    std::vector<std::string> keys;
    for (const HomeMeasurement& one : home_measurements()) {
        if (one.key == key) return one;
        keys.push_back(one.key);
    }
    return fail(ErrorCode::not_found,
                fmt::format("no measurement is called '{}'{}", key, did_you_mean(key, keys)));
}

namespace {

Result<Measured> entered(const ReadingInfo& info, const Reading& reading) {
    if (reading.values.empty()) {
        if (info.otherwise) return Measured{*info.otherwise, 0};
        return fail(ErrorCode::bad_input, fmt::format("{} is missing", info.label));
    }
    for (const double value : reading.values) {
        if (value >= info.low && value <= info.high) continue;
        return fail(ErrorCode::bad_input,
                    fmt::format("{} must lie between {} and {}{}{}, not {}", info.label,
                                format_exact(info.low), format_exact(info.high),
                                info.unit.empty() || info.unit == "°" ? "" : " ", info.unit,
                                format_exact(value)));
    }
    return mean_of(reading);
}

// How far the result moves when that reading moves by its ±, half of both ways: GUM 5.1.3, note 2.
double moved_by(const HomeMeasurement& measurement,
                std::vector<double> values,
                std::size_t index,
                double plus_minus) {
    if (plus_minus == 0) return 0;
    const double middle = values[index];
    values[index] = middle + plus_minus;
    const double above = measurement.value(values);
    values[index] = middle - plus_minus;
    return std::abs(above - measurement.value(values)) / 2;
}

}  // namespace

Result<MeasurementResult> evaluate(const HomeMeasurement& measurement,
                                   std::span<const Reading> readings) {
    BEAMFORK_EXPECTS(readings.size() == measurement.readings.size());
    std::vector<double> values;
    std::vector<double> plus_minus;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto read = entered(measurement.readings[i], readings[i]);
        if (!read) return tl::make_unexpected(read.error());
        values.push_back(read->value);
        plus_minus.push_back(read->plus_minus);
    }
    MeasurementResult made;
    made.result.value = measurement.value(values);
    double squares = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double moved = moved_by(measurement, values, i, plus_minus[i]);
        made.contributions.push_back({i, moved});
        squares += moved * moved;
    }
    made.result.plus_minus = std::sqrt(squares);
    if (!std::isfinite(made.result.value) || !std::isfinite(made.result.plus_minus)) {
        return fail(ErrorCode::bad_input, "these readings contradict each other");
    }
    return made;
}

Radians drift_angle(double seconds, Degrees declination) {
    const double half_turn = std::numbers::pi * seconds / sidereal_day_seconds;
    return {2 * std::asin(std::cos(to_radians(declination).value) * std::sin(half_turn))};
}

Millimetres field_stop_by_drift(Millimetres focal_length, double seconds, Degrees declination) {
    return focal_length * (2 * std::tan(drift_angle(seconds, declination).value / 2));
}

Millimetres back_focus_by_paper(Millimetres drawtube_out,
                                Millimetres paper_behind,
                                Millimetres focal_length,
                                Metres target_distance) {
    return drawtube_out + paper_behind
           - near_target_shift(focal_length, to_millimetres(target_distance));
}

Millimetres
opening_by_lamp(Millimetres circle, Millimetres lamp_before, Millimetres screen_behind) {
    return circle * (lamp_before / (lamp_before + screen_behind));
}

}  // namespace beamfork
