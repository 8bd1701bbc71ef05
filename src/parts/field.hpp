// The description of one editable value of a part: its key in a file, its label, one sentence of help,
// unit and range. Panels, files, JSON, help and the documentation table all run off it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "base/contract.hpp"
#include "base/typed_number.hpp"
#include "base/units.hpp"

namespace beamfork {

using FieldUnit = NumberUnit;

enum class FieldType {
    number,           ///< always there
    optional_number,  ///< may be left unstated
    choice,           ///< one of `choices`
};

/// A number in the field's unit, a chosen word, or nothing (an unstated optional number).
using FieldValue = std::variant<std::monostate, double, std::string>;

/// A choice field of the same part that must hold this word.
struct FieldCondition {
    std::string key;
    std::string word;
};

/// What goes along when somebody takes hold of a part in the picture and moves it.
enum class HandMoves { drawtube, rear_end, lens, arms };

/// How a length is changed by hand in the picture, in words.
struct HandHold {
    HandMoves moves = HandMoves::rear_end;
    std::string_view what;      ///< "Drawtube"
    std::string_view how;       ///< "Drag to make it longer or shorter."
    std::string_view low_word;  ///< why not less: "fully in"
    std::string_view high_word;
    double wall = 0;  ///< mm of body round the part's opening, where it is held
};

struct FieldInfo {
    std::string key;    ///< as in a file, with its unit: "focal_length_mm"
    std::string label;  ///< as on screen, without the unit
    std::string help;   ///< one sentence for somebody new to it
    FieldUnit unit = FieldUnit::none;
    double low = 0;        ///< smallest value that is accepted
    double high = 0;       ///< largest value that is accepted
    double usual_low = 0;  ///< a slider's ends: what people own
    double usual_high = 0;
    FieldType type = FieldType::number;
    std::vector<std::string> choices;
    std::vector<FieldCondition> only_if;  ///< the field matters only while all of these hold
    /// A part like it with wider openings has more of this; wider prisms stand farther apart and want longer legs.
    bool grows_with_openings = false;
    bool is_front_opening = false;    ///< the clear diameter that light meets first
    bool bears_on_light = true;       ///< not weights, nor the room round a telescope
    std::optional<HandHold> by_hand;  ///< where it can be taken hold of
    std::string_view measured_by;     ///< at home, in one sentence; empty: as its kind is
    std::string
        ruled_by{};  ///< a field of the same part that rules once it is stated: what follows
                     ///< from it stays as it is, whatever this one says
};

/// The same field with what is so of it besides.
FieldInfo grows_with_openings(FieldInfo info);
FieldInfo front_opening(FieldInfo info);  ///< grows with the other openings, too
FieldInfo apart_from_light(FieldInfo info);
FieldInfo moved_by_hand(FieldInfo info, const HandHold& hold);
/// `sentence` must outlive the program's use of it: a literal.
FieldInfo measured_at_home(FieldInfo info, std::string_view sentence);

/// What is wrong with a value for this field, in one sentence; nothing when it fits.
std::optional<std::string> objection(const FieldInfo& field, const FieldValue& value);

/// What counts in place of a number that is left unstated.
struct TakenValue {
    double value = 0;  ///< in the field's unit
    std::string
        derived_from;  ///< "the stated light path"; empty: it is the usual value, and a guess
    [[nodiscard]] bool is_derived() const { return !derived_from.empty(); }
};

/// "9.2 mm, derived from the stated light path"; "14.0 mm, the usual value".
std::string words_of(const TakenValue& taken, FieldUnit unit);

/// A field of one part kind `Kind`.
template <class Kind>
struct Field {
    FieldInfo info;
    std::function<FieldValue(const Kind&)> get;
    std::function<void(Kind&, const FieldValue&)> set;  ///< the value must have no objection
    /// Empty where nothing takes the place of an unstated number.
    std::function<TakenValue(const Kind&)> taken{};
};

/// The same field, with what counts while its number is unstated.
template <class Kind>
Field<Kind> taken_as(Field<Kind> field,
                     std::type_identity_t<std::function<TakenValue(const Kind&)>> taken) {
    field.taken = std::move(taken);
    return field;
}

template <class Kind, class Unit>
Field<Kind> number_field(FieldInfo info, Quantity<Unit> Kind::*member) {
    info.type = FieldType::number;
    return {std::move(info),
            [member](const Kind& kind) { return FieldValue{(kind.*member).value}; },
            [member](Kind& kind, const FieldValue& value) {
                BEAMFORK_EXPECTS(std::holds_alternative<double>(value));
                (kind.*member).value = std::get<double>(value);
            }};
}

template <class Kind>
Field<Kind> number_field(FieldInfo info, double Kind::*member) {
    info.type = FieldType::number;
    return {std::move(info), [member](const Kind& kind) { return FieldValue{kind.*member}; },
            [member](Kind& kind, const FieldValue& value) {
                BEAMFORK_EXPECTS(std::holds_alternative<double>(value));
                kind.*member = std::get<double>(value);
            }};
}

template <class Kind, class Unit>
Field<Kind> optional_field(FieldInfo info, std::optional<Quantity<Unit>> Kind::*member) {
    info.type = FieldType::optional_number;
    return {std::move(info),
            [member](const Kind& kind) {
                const auto& held = kind.*member;
                return held ? FieldValue{held->value} : FieldValue{};
            },
            [member](Kind& kind, const FieldValue& value) {
                const auto* number = std::get_if<double>(&value);
                kind.*member = number ? std::optional(Quantity<Unit>{*number}) : std::nullopt;
            }};
}

template <class Kind>
Field<Kind> optional_field(FieldInfo info, std::optional<double> Kind::*member) {
    info.type = FieldType::optional_number;
    return {std::move(info),
            [member](const Kind& kind) {
                const auto& held = kind.*member;
                return held ? FieldValue{*held} : FieldValue{};
            },
            [member](Kind& kind, const FieldValue& value) {
                const auto* number = std::get_if<double>(&value);
                kind.*member = number ? std::optional(*number) : std::nullopt;
            }};
}

/// A choice held as an enum whose values count from 0 in the order of `names`.
template <class Kind, class Enum>
Field<Kind>
choice_field(FieldInfo info, Enum Kind::*member, const std::vector<std::string>& names) {
    info.type = FieldType::choice;
    info.choices = names;
    return {std::move(info),
            [member, names](const Kind& kind) {
                return FieldValue{names.at(static_cast<std::size_t>(kind.*member))};
            },
            [member, names](Kind& kind, const FieldValue& value) {
                const auto* word = std::get_if<std::string>(&value);
                BEAMFORK_EXPECTS(word != nullptr);
                for (std::size_t i = 0; i < names.size(); ++i) {
                    if (names[i] == *word) kind.*member = static_cast<Enum>(i);
                }
            }};
}

/// A choice held as the word itself, such as a glass by name.
template <class Kind>
Field<Kind> word_field(FieldInfo info, std::string Kind::*member, std::vector<std::string> names) {
    info.type = FieldType::choice;
    info.choices = std::move(names);
    return {std::move(info), [member](const Kind& kind) { return FieldValue{kind.*member}; },
            [member](Kind& kind, const FieldValue& value) {
                BEAMFORK_EXPECTS(std::holds_alternative<std::string>(value));
                kind.*member = std::get<std::string>(value);
            }};
}

/// A length in mm with its accepted range and its usual range.
FieldInfo length_info(std::string key,
                      std::string label,
                      std::string help,
                      double low,
                      double high,
                      double usual_low,
                      double usual_high);

}  // namespace beamfork
