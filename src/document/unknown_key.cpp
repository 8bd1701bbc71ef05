#include "document/unknown_key.hpp"

#include <array>

#include "base/letters.hpp"
#include "base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

// Endings of keys that people write for a unit, ours and others'.
constexpr std::array<std::string_view, 24> unit_endings{
    "_mm",      "_cm",       "_m",      "_km",      "_um",          "_nm",
    "_in",      "_inch",     "_inches", "_ft",      "_deg",         "_degree",
    "_degrees", "_rad",      "_arcmin", "_arcsec",  "_dioptre",     "_dioptres",
    "_diopter", "_diopters", "_dpt",    "_percent", "_millimetres", "_metres"};

std::string_view without_unit(std::string_view key) {
    for (const std::string_view ending : unit_endings) {
        if (key.size() > ending.size() && key.ends_with(ending))
            return key.substr(0, key.size() - ending.size());
    }
    return key;
}

std::string shortened(std::string_view key) {
    constexpr std::size_t most = 60;
    if (key.size() <= most) return std::string(key);
    return std::string(letters_within(key, most)) + "...";
}

}  // namespace

std::string_view unit_in_words(FieldUnit unit) {
    switch (unit) {
    case FieldUnit::millimetre: return "millimetres (mm)";
    case FieldUnit::degree: return "degrees";
    case FieldUnit::dioptre: return "dioptres";
    case FieldUnit::metre: return "metres (m)";
    case FieldUnit::percent: return "percent (%)";
    case FieldUnit::arcminute: return "arcminutes";
    case FieldUnit::gram: return "grams (g)";
    case FieldUnit::times:
    case FieldUnit::none: break;
    }
    return "";
}

std::string unknown_key_sentence(std::string_view key,
                                 const std::string& place,
                                 std::span<const std::string> known) {
    const std::string near = did_you_mean(key, known);
    return fmt::format("'{}' is unknown {} and has no effect{}", shortened(key), place,
                       near.empty() ? fmt::format("; known here: {}", fmt::join(known, ", "))
                                    : near);
}

std::string unknown_field_sentence(std::string_view key,
                                   const std::string& part_name,
                                   const PartKind& kind,
                                   std::span<const std::string> beside) {
    std::vector<std::string> known;
    for (const FieldInfo& field : kind.fields) {
        if (without_unit(field.key) == without_unit(key)) {
            const std::string_view unit = unit_in_words(field.unit);
            return fmt::format("'{}' of '{}' has no effect: {} is given{}{}, as '{}'",
                               shortened(key), part_name, field.label,
                               unit.empty() ? " without a unit" : " in ", unit, field.key);
        }
        known.push_back(field.key);
    }
    known.emplace_back("name");
    known.emplace_back("plus_minus");
    known.insert(known.end(), beside.begin(), beside.end());
    const bool has_vowel =
        std::string_view("aeiou").find(kind.key.front()) != std::string_view::npos;
    return unknown_key_sentence(
        key, fmt::format("to {} {} ('{}')", has_vowel ? "an" : "a", kind.key, part_name), known);
}

}  // namespace beamfork
