#include "parts/part.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "parts/part_kinds.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Its place among the kind's fields; as many as there are when there is none with that key.
std::size_t place_of(const PartKind& kind, std::string_view key) {
    const auto found = std::find_if(kind.fields.begin(), kind.fields.end(),
                                    [&](const FieldInfo& field) { return field.key == key; });
    return static_cast<std::size_t>(found - kind.fields.begin());
}

tl::unexpected<Error> no_such_field(const PartKind& kind, std::string_view key) {
    std::vector<std::string> keys;
    for (const FieldInfo& field : kind.fields)
        keys.push_back(field.key);
    return fail(ErrorCode::not_found,
                fmt::format("{} has no '{}'{}", kind.key, key, did_you_mean(key, keys)));
}

}  // namespace

Result<PartKind> find_kind(std::string_view key) {
    std::vector<std::string> keys;
    for (const PartKind& kind : part_kinds()) {
        if (kind.key == key) return kind;
        keys.push_back(kind.key);
    }
    return fail(ErrorCode::not_found,
                fmt::format("no part kind '{}'{}", key, did_you_mean(key, keys)));
}

const PartKind& kind_of(const PartBody& body) { return part_kinds()[body.index()]; }

Role role_of(const Part& part) { return kind_of(part.body).role; }

Result<FieldValue> field_value(const PartBody& body, std::string_view key) {
    const PartKind& kind = kind_of(body);
    const std::size_t field = place_of(kind, key);
    if (field == kind.fields.size()) return no_such_field(kind, key);
    return answers_of(body).value(body, field);
}

bool holds(const PartBody& body, const FieldCondition& condition) {
    return field_value(body, condition.key) == FieldValue{condition.word};
}

bool is_relevant(const PartBody& body, const FieldInfo& field) {
    return std::all_of(field.only_if.begin(), field.only_if.end(),
                       [&](const FieldCondition& condition) { return holds(body, condition); });
}

std::optional<TakenValue> taken_value(const PartBody& body, std::string_view key) {
    if (field_value(body, key) != FieldValue{}) return std::nullopt;
    return answers_of(body).taken(body, place_of(kind_of(body), key));
}

std::optional<double> number_that_counts(const PartBody& body, std::string_view key) {
    const auto value = field_value(body, key);
    if (value && std::holds_alternative<double>(*value)) return std::get<double>(*value);
    const auto taken = taken_value(body, key);
    return taken ? std::optional(taken->value) : std::nullopt;
}

bool is_ruled(const PartBody& body, const FieldInfo& field) {
    if (field.ruled_by.empty()) return false;
    const auto ruler = field_value(body, field.ruled_by);
    return ruler && std::holds_alternative<double>(*ruler);
}

Result<PartBody>
with_field_unchecked(const PartBody& body, std::string_view key, const FieldValue& value) {
    const PartKind& kind = kind_of(body);
    const std::size_t field = place_of(kind, key);
    if (field == kind.fields.size()) return no_such_field(kind, key);
    if (const auto wrong = objection(kind.fields[field], value))
        return fail(ErrorCode::bad_input, *wrong);
    PartBody changed = body;
    answers_of(body).set(changed, field, value);
    return changed;
}

Result<PartBody> with_field(const PartBody& body, std::string_view key, const FieldValue& value) {
    auto changed = with_field_unchecked(body, key, value);
    if (!changed) return changed;
    if (const auto wrong = contradiction(*changed)) return fail(ErrorCode::bad_input, *wrong);
    return changed;
}

std::optional<std::string> contradiction(const PartBody& body) {
    return answers_of(body).contradiction(body);
}

std::optional<Tolerance> assumed_tolerance(const FieldInfo& field, KnownBy known_by) {
    if (field.type == FieldType::choice || field.unit != FieldUnit::millimetre) return std::nullopt;
    return Tolerance{usual_plus_minus_mm(known_by), known_by};
}

std::optional<std::string>
tolerance_objection(const PartBody& body, std::string_view key, const Tolerance& tolerance) {
    const PartKind& kind = kind_of(body);
    const std::size_t place = place_of(kind, key);
    if (place == kind.fields.size()) return no_such_field(kind, key).value().what;
    const FieldInfo* field = &kind.fields[place];
    if (field->type == FieldType::choice)
        return fmt::format("{} is no number and has no plus_minus", key);
    if (!tolerance.plus_minus) {
        if (assumed_tolerance(*field, tolerance.known_by)) return std::nullopt;
        return fmt::format("plus_minus of {} needs a number: only lengths have a usual one", key);
    }
    const double most = field->high - field->low;
    if (*tolerance.plus_minus > 0 && *tolerance.plus_minus <= most) return std::nullopt;
    return fmt::format("plus_minus of {} must be more than 0 and at most {}", key,
                       format_exact(most));
}

PartLayout layout_of(const PartBody& body, const LayoutContext& context) {
    return answers_of(body).layout(body, context);
}

std::optional<Millimetres> stated_light_path(const PartBody& body) {
    return answers_of(body).stated_light_path(body);
}

std::optional<Mount> mount_of(const PartBody& body) {
    const Mount* mount = answers_of(body).mount(body);
    return mount == nullptr ? std::nullopt : std::optional(*mount);
}

void set_mount(PartBody& body, const Mount& mount) {
    if (Mount* held = answers_of(body).mount(body)) *held = mount;
}

std::optional<Balance> balance_of(const PartBody& body) {
    const Balance* balance = answers_of(body).balance(body);
    return balance == nullptr ? std::nullopt : std::optional(*balance);
}

void set_balance(PartBody& body, const Balance& balance) {
    if (Balance* held = answers_of(body).balance(body)) *held = balance;
}

}  // namespace beamfork
