#include "parts/part.hpp"

#include <algorithm>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A kind's own fields, then those that it shares with others.
template <class Kind>
std::vector<Field<Kind>> all_fields() {
    std::vector<Field<Kind>> fields = Kind::fields();
    if constexpr (requires(const Kind& kind) { kind.mount; }) append_mount_fields(fields);
    if constexpr (requires(const Kind& kind) { kind.balance; }) append_balance_fields(fields);
    return fields;
}

template <class Kind>
PartKind describe() {
    PartKind kind{std::string(Kind::key),
                  std::string(Kind::label),
                  std::string(Kind::help),
                  Kind::role,
                  Kind{},
                  {}};
    for (const auto& field : all_fields<Kind>())
        kind.fields.push_back(field.info);
    return kind;
}

template <class... Kinds>
std::vector<PartKind> describe_all(const std::variant<Kinds...>*) {
    return {describe<Kinds>()...};
}

// Described once: fields of glass read the catalogue, which is not free.
template <class Kind>
const std::vector<Field<Kind>>& fields_of() {
    static const std::vector<Field<Kind>> fields = all_fields<Kind>();
    return fields;
}

template <class Kind>
const Field<Kind>* find_field(std::string_view key) {
    const auto& fields = fields_of<Kind>();
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const Field<Kind>& field) {
        return field.info.key == key;
    });
    return found == fields.end() ? nullptr : &*found;
}

tl::unexpected<Error> no_such_field(const PartKind& kind, std::string_view key) {
    std::vector<std::string> keys;
    for (const FieldInfo& field : kind.fields)
        keys.push_back(field.key);
    const auto near = nearest_name(key, keys);
    return fail(ErrorCode::not_found, fmt::format("{} has no '{}'{}", kind.key, key,
                                                  near ? "; did you mean '" + *near + "'?" : ""));
}

}  // namespace

std::span<const PartKind> part_kinds() {
    static const std::vector<PartKind> kinds = describe_all(static_cast<const PartBody*>(nullptr));
    return kinds;
}

Result<PartKind> find_kind(std::string_view key) {
    std::vector<std::string> keys;
    for (const PartKind& kind : part_kinds()) {
        if (kind.key == key) return kind;
        keys.push_back(kind.key);
    }
    const auto near = nearest_name(key, keys);
    return fail(ErrorCode::not_found, fmt::format("no part kind '{}'{}", key,
                                                  near ? "; did you mean '" + *near + "'?" : ""));
}

const PartKind& kind_of(const PartBody& body) { return part_kinds()[body.index()]; }

Role role_of(const Part& part) {
    return std::visit([]<class Kind>(const Kind&) { return Kind::role; }, part.body);
}

bool is_diagonal(const Part& part) {
    return kind_of(part.body).key.find("diagonal") != std::string::npos;
}

Result<FieldValue> field_value(const PartBody& body, std::string_view key) {
    return std::visit(
        [&]<class Kind>(const Kind& kind) -> Result<FieldValue> {
            const Field<Kind>* field = find_field<Kind>(key);
            if (field == nullptr) return no_such_field(kind_of(body), key);
            return field->get(kind);
        },
        body);
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
    return std::visit(
        [&]<class Kind>(const Kind& kind) -> std::optional<TakenValue> {
            const Field<Kind>* field = find_field<Kind>(key);
            if (field == nullptr || !field->taken) return std::nullopt;
            return field->taken(kind);
        },
        body);
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
    return std::visit(
        [&]<class Kind>(Kind kind) -> Result<PartBody> {
            const Field<Kind>* field = find_field<Kind>(key);
            if (field == nullptr) return no_such_field(kind_of(body), key);
            if (const auto wrong = objection(field->info, value))
                return fail(ErrorCode::bad_input, *wrong);
            field->set(kind, value);
            return PartBody{std::move(kind)};
        },
        body);
}

Result<PartBody> with_field(const PartBody& body, std::string_view key, const FieldValue& value) {
    auto changed = with_field_unchecked(body, key, value);
    if (!changed) return changed;
    if (const auto wrong = contradiction(*changed)) return fail(ErrorCode::bad_input, *wrong);
    return changed;
}

std::optional<std::string> contradiction(const PartBody& body) {
    return std::visit([](const auto& kind) { return kind.contradiction(); }, body);
}

std::optional<Tolerance> assumed_tolerance(const FieldInfo& field, KnownBy known_by) {
    if (field.type == FieldType::choice || field.unit != FieldUnit::millimetre) return std::nullopt;
    return Tolerance{usual_plus_minus_mm(known_by), known_by};
}

std::optional<std::string>
tolerance_objection(const PartBody& body, std::string_view key, const Tolerance& tolerance) {
    const PartKind& kind = kind_of(body);
    const auto field = std::find_if(kind.fields.begin(), kind.fields.end(),
                                    [&](const FieldInfo& info) { return info.key == key; });
    if (field == kind.fields.end()) return no_such_field(kind, key).value().what;
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
    return std::visit([&](const auto& kind) { return kind.layout(context); }, body);
}

std::optional<Millimetres> stated_light_path(const PartBody& body) {
    return std::visit(
        []<class Kind>(const Kind& kind) -> std::optional<Millimetres> {
            if constexpr (requires { kind.stated_light_path; }) return kind.stated_light_path;
            return std::nullopt;
        },
        body);
}

std::optional<Mount> mount_of(const PartBody& body) {
    return std::visit(
        []<class Kind>(const Kind& kind) -> std::optional<Mount> {
            if constexpr (requires { kind.mount; }) return kind.mount;
            return std::nullopt;
        },
        body);
}

std::optional<Balance> balance_of(const PartBody& body) {
    return std::visit(
        []<class Kind>(const Kind& kind) -> std::optional<Balance> {
            if constexpr (requires { kind.balance; }) return kind.balance;
            return std::nullopt;
        },
        body);
}

}  // namespace beamfork
