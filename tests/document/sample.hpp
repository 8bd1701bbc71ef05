// Documents to try things on: a short file with one part of each needed role, and random ones.
#pragma once

#include <cmath>
#include <random>
#include <string>

#include "document/document.hpp"
#include "document/edit.hpp"
#include "parts/focuser.hpp"

namespace beamfork {

/// The smallest file that is a setup; line numbers in the tests count on it.
inline const std::string smallest_file = R"(beamfork = 1
title = "Smallest"

[[part]]
kind = "refractor"
name = "Tube"
aperture_mm = 100
focal_length_mm = 700
back_focus_mm = 116

[[part]]
kind = "focuser"
name = "Focuser"

[[part]]
kind = "splitter_head"
name = "Head"

[[part]]
kind = "eyepiece_pair"
name = "Pair"

[[observer]]
name = "Regular"

[[target]]
name = "The sky"
)";

inline std::string with(std::string text, const std::string& old, const std::string& fresh) {
    const auto at = text.find(old);
    if (at != std::string::npos) text.replace(at, old.size(), fresh);
    return text;
}

inline std::size_t number_below(std::mt19937& random, std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(random);
}

/// A value that the field accepts.
inline FieldValue random_value(const FieldInfo& field, std::mt19937& random) {
    if (field.type == FieldType::choice)
        return field.choices[number_below(random, field.choices.size())];
    if (field.type == FieldType::optional_number && number_below(random, 3) == 0) return {};
    const double share = std::uniform_real_distribution<double>(0, 1)(random);
    const double value = field.low + share * (field.high - field.low);
    return number_below(random, 4) == 0 ? std::clamp(std::round(value), field.low, field.high)
                                        : value;
}

/// Every field given a random value, as far as the values can hold together.
inline PartBody random_body(const PartKind& kind, std::mt19937& random) {
    PartBody body = kind.fresh;
    for (int round = 0; round < 3; ++round) {
        for (const FieldInfo& field : kind.fields) {
            if (auto changed = with_field(body, field.key, random_value(field, random)))
                body = *changed;
        }
    }
    return body;
}

/// Text with everything in it that a file format can trip over.
inline std::string random_text(std::mt19937& random, bool in_lines) {
    static const std::vector<std::string> pieces{"a", "Z",   "0",  " ",   "\"", "\"\"\"", "\\",
                                                 "'", "'''", "#",  "=",   "[",  "]]",     ".",
                                                 "µ", "×",   "中", "\\n", "{",  ","};
    std::string text = "x";
    for (std::size_t count = number_below(random, 12); count > 0; --count) {
        text += in_lines && number_below(random, 4) == 0
                    ? "\n"
                    : pieces[number_below(random, pieces.size())];
    }
    return text;
}

/// For one of its fields, if that is a number.
inline void add_random_tolerance(Part& part, std::mt19937& random) {
    const auto& fields = kind_of(part.body).fields;
    if (fields.empty()) return;
    const FieldInfo& field = fields[number_below(random, fields.size())];
    const double share = std::uniform_real_distribution<double>(0.001, 1)(random);
    const Tolerance tolerance{share * (field.high - field.low),
                              static_cast<KnownBy>(number_below(random, 3))};
    if (!tolerance_objection(part.body, field.key, tolerance))
        part.tolerances[field.key] = tolerance;
}

/// A part of every kind, a few of those that may come more than once and one of several telescopes, all fields
/// random.
inline Document random_document(std::mt19937& random) {
    Document document;
    document.setup.title = random_text(random, false);
    document.setup.story = random_text(random, true);
    for (int role = 0; role <= static_cast<int>(Role::target); ++role) {
        std::vector<std::string> keys;
        for (const PartKind& kind : part_kinds()) {
            if (static_cast<int>(kind.role) == role) keys.push_back(kind.key);
        }
        const std::string single_key = keys[number_below(random, keys.size())];
        for (const PartKind& kind : part_kinds()) {
            if (static_cast<int>(kind.role) != role) continue;
            const bool may_repeat = kind.role == Role::chain || kind.role >= Role::eyepiece;
            if (!may_repeat && kind.key != single_key) continue;
            for (std::size_t count = may_repeat ? 1 + number_below(random, 2) : 1; count > 0;
                 --count) {
                const std::string name =
                    random_text(random, false) + std::to_string(document.setup.parts.size());
                document.setup.parts.push_back({name, random_body(kind, random), {}});
                add_random_tolerance(document.setup.parts.back(), random);
            }
        }
    }
    Choice& chosen = document.setup.chosen;
    for (auto [index, role] :
         {std::pair{&chosen.eyepiece, Role::eyepiece}, std::pair{&chosen.observer, Role::observer},
          std::pair{&chosen.target, Role::target}}) {
        const auto places = parts_with_role(document.setup, role);
        *index = places[number_below(random, places.size())];
    }
    return document;
}

/// An edit that may or may not be possible.
inline Edit random_edit(const Document& document, std::mt19937& random) {
    const auto& parts = document.setup.parts;
    const auto any = [&] { return number_below(random, parts.size() + 1); };
    const std::size_t part = any();
    switch (number_below(random, 10)) {
    case 0: return RenamePart{part, random_text(random, false)};
    case 1: return AddPart{part_kinds()[number_below(random, part_kinds().size())].key, any()};
    case 2: return RemovePart{part};
    case 3: return MovePart{part, any()};
    case 4: return DuplicatePart{part};
    case 5: return ChoosePart{part};
    case 6: return SetTitle{random_text(random, false)};
    case 7: return SetStory{random_text(random, true)};
    case 8: return ReplaceSetup{random_document(random).setup, "Replace all"};
    default: break;
    }
    if (part >= parts.size()) return SetField{part, "length_mm", 1.0};
    const auto& fields = kind_of(parts[part].body).fields;
    const FieldInfo& field = fields[number_below(random, fields.size())];
    return SetField{part, field.key, random_value(field, random)};
}

}  // namespace beamfork
