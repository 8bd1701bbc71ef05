// A part of a setup: a name, and the values of one of the known kinds (parts/part_kinds.cpp lists them).
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "parts/field.hpp"
#include "parts/part_body.hpp"
#include "parts/role.hpp"
#include "parts/tolerance.hpp"

namespace beamfork {

struct Balance;
struct LayoutContext;
struct Mount;
struct PartLayout;

/// The user's comments at one line of a file, kept when saving: whole lines above it, and one beside it.
struct Remark {
    std::string above;
    std::string beside;
    bool operator==(const Remark&) const = default;
};
/// By key; "" stands for the entry's heading.
using Remarks = std::map<std::string, Remark>;

struct Part {
    std::string name;
    PartBody body;
    /// Keys of its file entry that this program does not know, with their TOML text; kept when saving.
    std::map<std::string, std::string> unrecognised;
    Remarks remarks{};
    /// By the key of a number field: how well its value is known. `assumed_tolerance` says what holds for a
    /// value without one.
    std::map<std::string, Tolerance> tolerances{};
    bool operator==(const Part&) const = default;
};

/// What the program knows of a kind without holding a part of it.
struct PartKind {
    std::string key;
    std::string label;
    std::string help;
    Role role = Role::chain;
    bool turns_light = false;  ///< a diagonal: can be left out for looking straight through
    bool holds_lens = false;   ///< one that moves the image and magnifies
    PartBody fresh;            ///< with its default values
    std::vector<FieldInfo> fields;
};

/// All kinds in the order of their list.
std::span<const PartKind> part_kinds();
/// The kind with that key, or an error with the nearest known one.
Result<PartKind> find_kind(std::string_view key);
const PartKind& kind_of(const PartBody& body);
Role role_of(const Part& part);

/// The value of a field; an error with the nearest key when the kind has no such field.
Result<FieldValue> field_value(const PartBody& body, std::string_view key);

/// Whether that condition, or all conditions of that field, hold with the part's values as they are.
bool holds(const PartBody& body, const FieldCondition& condition);
bool is_relevant(const PartBody& body, const FieldInfo& field);

/// What counts in place of a number that is left unstated. Nothing for one that is stated, and where nothing takes its
/// place; the kind must have that field.
std::optional<TakenValue> taken_value(const PartBody& body, std::string_view key);

/// The number as stated, or what counts in its place; nothing where there is neither.
std::optional<double> number_that_counts(const PartBody& body, std::string_view key);

/// Whether another field that rules over this one is stated.
bool is_ruled(const PartBody& body, const FieldInfo& field);

/// A copy with one field changed; an error says why the value does not fit the field or contradicts
/// the part's other values.
Result<PartBody> with_field(const PartBody& body, std::string_view key, const FieldValue& value);

/// As with_field, without the check against the other values: for reading many fields before one check.
Result<PartBody>
with_field_unchecked(const PartBody& body, std::string_view key, const FieldValue& value);
std::optional<std::string> contradiction(const PartBody& body);

/// How well a value is known that nobody speaks of, or only by where it is from: a length has the +- that
/// is usual for it, as of a datasheet when not even that is said; other values are taken as exact.
std::optional<Tolerance> assumed_tolerance(const FieldInfo& field,
                                           KnownBy known_by = KnownBy::datasheet);

/// What is wrong with a +- for that field: no such field, no number, not above 0 or beyond the field's range;
/// without a number, only lengths have a usual one.
std::optional<std::string>
tolerance_objection(const PartBody& body, std::string_view key, const Tolerance& tolerance);

PartLayout layout_of(const PartBody& body, const LayoutContext& context);

/// The light path its maker states, for kinds that have such a field and parts where it is stated.
std::optional<Millimetres> stated_light_path(const PartBody& body);

/// How it is held and what it weighs, for kinds that are screwed or slid into others.
std::optional<Mount> mount_of(const PartBody& body);
/// Of a kind that has none it changes nothing.
void set_mount(PartBody& body, const Mount& mount);

/// What is known of a telescope's balance, for kinds that have such fields.
std::optional<Balance> balance_of(const PartBody& body);
/// Of a kind that has none it changes nothing.
void set_balance(PartBody& body, const Balance& balance);

}  // namespace beamfork
