#include "ui/kit/field_numbers.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace beamfork {

double slider_step(const FieldInfo& field) {
    const double range = field.usual_high - field.usual_low;
    if (!(range > 0)) return 0.1;
    const double wish = range / 400;
    const double decade = std::pow(10.0, std::floor(std::log10(wish)));
    for (const double factor : {1.0, 5.0, 10.0}) {
        if (factor * decade >= wish * (1 - 1e-9)) return std::min(1.0, factor * decade);
    }
    return 1;
}

double snapped(const FieldInfo& field, double value) {
    const double step = slider_step(field);
    // Dividing by the inverse keeps 0.1 steps at the nearest double to their decimal.
    const double per_unit = std::round(1 / step);
    const double rounded = std::round(value * per_unit) / per_unit;
    return std::clamp(rounded, field.low, field.high);
}

std::string entry_text(double value) {
    std::string text = format_number(value, 4);
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string accepted_range(const FieldInfo& field) {
    if (field.type == FieldType::choice) return {};
    return "Accepts " + entry_text(field.low) + " to "
           + with_symbol(entry_text(field.high), field.unit) + ".";
}

double key_step(const FieldInfo& field, bool is_coarse, bool is_fine) {
    const double step = slider_step(field);
    if (is_coarse == is_fine) return step;
    return is_coarse ? 10 * step : step / 10;
}

double stepped(const FieldInfo& field, double value, double step) {
    // To the last digit that an entry shows, which also takes away the rounding of the sum.
    constexpr double per_unit = 10000;
    const double sum = std::round((value + step) * per_unit) / per_unit;
    return std::clamp(sum, field.low, field.high);
}

std::string entry_hint(const FieldInfo& field) {
    const double step = slider_step(field);
    return typing_help(field.unit) + "\nArrow up and down: "
           + with_symbol(entry_text(step), field.unit) + " more or less; with Shift "
           + entry_text(10 * step) + ", with Ctrl " + entry_text(step / 10) + ".";
}

}  // namespace beamfork
