#include "parts/field.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

std::optional<std::string> number_objection(const FieldInfo& field, const FieldValue& value) {
    if (std::holds_alternative<std::monostate>(value) && field.type == FieldType::optional_number) {
        return std::nullopt;
    }
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr) return fmt::format("{} must be a number", field.key);
    if (!std::isfinite(*number)) return fmt::format("{} must be a finite number", field.key);
    if (*number < field.low || *number > field.high) {
        return fmt::format("{} must be from {} to {}, not {}", field.key, format_exact(field.low),
                           format_exact(field.high), format_exact(*number));
    }
    return std::nullopt;
}

}  // namespace

std::optional<std::string> objection(const FieldInfo& field, const FieldValue& value) {
    if (field.type != FieldType::choice) return number_objection(field, value);
    const auto* word = std::get_if<std::string>(&value);
    if (word == nullptr) {
        return fmt::format("{} must be one of: {}", field.key, fmt::join(field.choices, ", "));
    }
    if (std::find(field.choices.begin(), field.choices.end(), *word) != field.choices.end()) {
        return std::nullopt;
    }
    return fmt::format("{} cannot be '{}'; it must be one of: {}{}", field.key, *word,
                       fmt::join(field.choices, ", "), did_you_mean(*word, field.choices));
}

FieldInfo grows_with_openings(FieldInfo info) {
    info.grows_with_openings = true;
    return info;
}

FieldInfo front_opening(FieldInfo info) {
    info.is_front_opening = true;
    return grows_with_openings(std::move(info));
}

FieldInfo apart_from_light(FieldInfo info) {
    info.bears_on_light = false;
    return info;
}

FieldInfo moved_by_hand(FieldInfo info, const HandHold& hold) {
    info.by_hand = hold;
    return info;
}

FieldInfo measured_at_home(FieldInfo info, std::string_view sentence) {
    info.measured_by = sentence;
    return info;
}

std::string words_of(const TakenValue& taken, FieldUnit unit) {
    const std::string value = with_symbol(format_number(taken.value, 1), unit);
    return value
           + (taken.is_derived() ? ", derived from " + taken.derived_from : ", the usual value");
}

FieldInfo length_info(std::string key,
                      std::string label,
                      std::string help,
                      double low,
                      double high,
                      double usual_low,
                      double usual_high) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::millimetre;
    info.low = low;
    info.high = high;
    info.usual_low = usual_low;
    info.usual_high = usual_high;
    return info;
}

}  // namespace beamfork
