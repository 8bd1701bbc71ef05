#include "document/read_entry.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <set>

#include "base/text.hpp"
#include "document/toml_node.hpp"
#include "document/unknown_key.hpp"
#include "document/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

std::string what_it_is(const toml::node& node) {
    if (const auto* words = node.as_string()) {
        constexpr std::size_t most_shown = 40;
        const std::string& text = words->get();
        return text.size() > most_shown ? "a long text" : fmt::format("the text \"{}\"", text);
    }
    if (node.is_number()) return "a number";
    if (node.is_boolean()) return "true or false";
    if (node.is_array()) return "a list";
    if (node.is_table()) return "a table";
    return "a date or time";
}

std::vector<std::pair<const toml::key*, const toml::node*>>
in_file_order(const toml::table& table) {
    std::vector<std::pair<const toml::key*, const toml::node*>> entries;
    for (const auto& [key, value] : table)
        entries.emplace_back(&key, &value);
    std::stable_sort(entries.begin(), entries.end(), [](const auto& a, const auto& b) {
        const auto& left = a.first->source().begin;
        const auto& right = b.first->source().begin;
        return std::pair(left.line, left.column) < std::pair(right.line, right.column);
    });
    return entries;
}

Remark take_remark(Reading& reading, const toml::key& key, const toml::node& value) {
    if (key.str().empty()) return {};  // its place is the heading's
    const bool is_value = !value.is_table();
    const int last = is_value ? static_cast<int>(value.source().end.line) : line_of(key);
    return reading.comments.take(line_of(key), last);
}

void keep_remark(Remarks& remarks, std::string_view key, Remark remark) {
    if (remark != Remark{}) remarks.insert_or_assign(std::string(key), std::move(remark));
}

Result<void> keep_unrecognised(Reading& reading,
                               const toml::key& key,
                               const toml::node& value,
                               std::map<std::string, std::string>& unrecognised,
                               const std::string& sentence) {
    if (reading.notices.size() >= most_notices) {
        return fail(ErrorCode::bad_input,
                    fmt::format("this file has more than {} keys that are unknown here; is it a "
                                "Beamfork setup?",
                                most_notices),
                    reading.at(line_of(key)));
    }
    auto text = toml_text(value);
    if (!text) {
        return fail(ErrorCode::bad_input, fmt::format("'{}' is nested too deep", key.str()),
                    reading.at(line_of(key)));
    }
    unrecognised.insert_or_assign(std::string(key.str()), std::move(*text));
    reading.notices.push_back({line_of(key), sentence});
    return {};
}

Result<std::string>
read_words(const Reading& reading, const toml::node& value, const std::string& what) {
    if (const auto* words = value.as_string()) return words->get();
    return fail(ErrorCode::bad_input,
                fmt::format("{} must be a text in quotes, not {}", what, what_it_is(value)),
                reading.at(line_of(value)));
}

bool has_own_heading(const PartKind& kind) { return kind.role >= Role::observer; }

namespace {

std::vector<std::string> keys_of_train_parts() {
    std::vector<std::string> keys;
    for (const PartKind& kind : part_kinds()) {
        if (!has_own_heading(kind)) keys.push_back(kind.key);
    }
    return keys;
}

Result<PartKind> read_kind(const Reading& reading, const toml::table& entry) {
    const auto keys = keys_of_train_parts();
    const toml::node* value = entry.get("kind");
    if (value == nullptr) {
        return fail(ErrorCode::bad_input,
                    fmt::format("this part does not say what it is: expected kind = one of: {}",
                                fmt::join(keys, ", ")),
                    reading.at(line_of(entry)));
    }
    const auto word = read_words(reading, *value, "kind");
    if (!word) return tl::make_unexpected(word.error());
    auto kind = find_kind(*word);
    const Where where = reading.at(line_of(*value));
    if (!kind) {
        return fail(
            ErrorCode::bad_input,
            fmt::format("{}; expected one of: {}", kind.error().what, fmt::join(keys, ", ")),
            where);
    }
    if (has_own_heading(*kind)) {
        return fail(ErrorCode::bad_input,
                    fmt::format("'{0}' is not a part of the train: write it under [[{0}]]", *word),
                    where);
    }
    return kind;
}

std::string expectation(const FieldInfo& field) {
    if (field.type == FieldType::choice)
        return fmt::format("one of: {}", fmt::join(field.choices, ", "));
    const std::string_view unit = unit_in_words(field.unit);
    return unit.empty() ? "a number" : fmt::format("a number in {}", unit);
}

// The value as the field wants it, of the right type but not yet in range.
Result<FieldValue> typed_value(const FieldInfo& field, const toml::node& node, const Where& where) {
    const auto* words = node.as_string();
    if (field.type == FieldType::choice) {
        if (words != nullptr) return FieldValue{words->get()};
    } else {
        if (const auto* number = node.as_floating_point()) return FieldValue{number->get()};
        if (const auto* whole = node.as_integer())
            return FieldValue{static_cast<double>(whole->get())};
    }
    const bool is_quoted_number = words != nullptr && parse_number(words->get());
    return fail(ErrorCode::bad_input,
                fmt::format("{} must be {}, not {}{}", field.key, expectation(field),
                            what_it_is(node), is_quoted_number ? ": write it without quotes" : ""),
                where);
}

// [0.5, "measured"]: a number above 0 and where it is from; or "measured": as much as is usual.
Result<Tolerance>
typed_tolerance(const std::string& key, const toml::node& node, const Where& where) {
    constexpr std::array kinds{KnownBy::datasheet, KnownBy::measured, KnownBy::guessed};
    const auto refuse = [&](const std::string& found) {
        return fail(ErrorCode::bad_input,
                    fmt::format("plus_minus of {} must be a number and one of datasheet, measured, "
                                "guessed, like [0.5, \"measured\"], or the word alone, like "
                                "\"guessed\", not {}",
                                key, found),
                    where);
    };
    const auto* pair = node.as_array();
    if (pair == nullptr && !node.is_string()) return refuse(what_it_is(node));
    if (pair != nullptr
        && (pair->size() != 2 || !(*pair)[0].is_number() || !(*pair)[1].is_string()))
        return refuse("another list");
    const toml::node& known_by = pair == nullptr ? node : (*pair)[1];
    std::optional<double> plus_minus;
    if (pair != nullptr) plus_minus = (*pair)[0].value<double>();
    for (const KnownBy kind : kinds) {
        if (to_word(kind) == known_by.as_string()->get()) return Tolerance{plus_minus, kind};
    }
    return refuse(what_it_is(known_by));
}

// Reads the fields of one entry into a part, one after the other.
class EntryReader {
public:
    EntryReader(Reading& reading,
                const PartKind& kind,
                ReadEntry& into,
                std::span<const std::string> beside)
        : reading_(reading), kind_(kind), into_(into), beside_(beside) {}

    Result<void> read(const toml::key& key, const toml::node& value) {
        const auto field =
            std::find_if(kind_.fields.begin(), kind_.fields.end(),
                         [&](const FieldInfo& info) { return info.key == key.str(); });
        keep_remark(into_.part.remarks, key.str(), take_remark(reading_, key, value));
        if (field == kind_.fields.end()) {
            return keep_unrecognised(
                reading_, key, value, into_.part.unrecognised,
                unknown_field_sentence(key.str(), into_.part.name, kind_, beside_));
        }
        const Where where = reading_.at(line_of(value));
        auto typed = typed_value(*field, value, where);
        auto changed = typed.and_then([&](const FieldValue& given) {
            return with_field_unchecked(into_.part.body, field->key, given);
        });
        if (!changed) {
            return fail(ErrorCode::bad_input,
                        fmt::format("{}: {}", into_.part.name, changed.error().what), where);
        }
        into_.part.body = std::move(*changed);
        stated_.insert_or_assign(field->key, where.line);
        return {};
    }

    // plus_minus = { length_mm = [0.5, "measured"] }: how well values are known.
    Result<void> read_tolerances(const toml::key& key, const toml::node& value) {
        keep_remark(into_.part.remarks, key.str(), take_remark(reading_, key, value));
        const auto* table = value.as_table();
        if (table == nullptr) {
            return fail(
                ErrorCode::bad_input,
                fmt::format("plus_minus must be like {{ {} = [0.5, \"measured\"] }}, not {}",
                            kind_.fields.front().key, what_it_is(value)),
                reading_.at(line_of(value)));
        }
        for (const auto& [name, node] : in_file_order(*table)) {
            if (auto done = read_tolerance(*name, *node); !done) return done;
        }
        return {};
    }

    // Values that cannot hold together: blames the first stated key that the sentence names.
    [[nodiscard]] Result<void> check() const {
        const auto wrong = contradiction(into_.part.body);
        if (!wrong) return {};
        int line = into_.line;
        std::size_t first = std::string::npos;
        for (const auto& [key, key_line] : stated_) {
            const std::size_t place = wrong->find(key);
            if (place < first) {
                first = place;
                line = key_line;
            }
        }
        return fail(ErrorCode::bad_input, fmt::format("{}: {}", into_.part.name, *wrong),
                    reading_.at(line));
    }

    // A value that was stated but does not count, because nobody said which of two ways is meant.
    void note_idle_values() {
        for (const FieldInfo& field : kind_.fields) {
            const auto stated = stated_.find(field.key);
            if (stated == stated_.end()) continue;
            const auto missing = std::find_if(
                field.only_if.begin(), field.only_if.end(), [&](const FieldCondition& condition) {
                    return !stated_.contains(condition.key) && !holds(into_.part.body, condition);
                });
            if (missing == field.only_if.end()) continue;
            reading_.notices.push_back(
                {stated->second,
                 fmt::format("'{}' of '{}' has no effect unless you add {} = \"{}\"", field.key,
                             into_.part.name, missing->key, missing->word)});
        }
    }

private:
    Result<void> read_tolerance(const toml::key& key, const toml::node& node) {
        const std::string name(key.str());
        const bool is_known = std::any_of(kind_.fields.begin(), kind_.fields.end(),
                                          [&](const FieldInfo& info) { return info.key == name; });
        if (!is_known) {
            std::map<std::string, std::string> foreign;
            auto kept = keep_unrecognised(
                reading_, key, node, foreign,
                "plus_minus: " + unknown_field_sentence(name, into_.part.name, kind_));
            if (!kept) return kept;
            for (auto& [unknown, text] : foreign)
                into_.part.unrecognised.insert_or_assign(std::string(tolerance_prefix) + unknown,
                                                         std::move(text));
            return {};
        }
        const Where where = reading_.at(line_of(node));
        const auto tolerance = typed_tolerance(name, node, where);
        if (!tolerance) return tl::make_unexpected(tolerance.error());
        if (const auto wrong = tolerance_objection(into_.part.body, name, *tolerance))
            return fail(ErrorCode::bad_input, fmt::format("{}: {}", into_.part.name, *wrong),
                        where);
        into_.part.tolerances.insert_or_assign(name, *tolerance);
        return {};
    }

    Reading& reading_;
    const PartKind& kind_;
    ReadEntry& into_;
    std::span<const std::string>
        beside_;  // keys of the file's own kind, known but none of the part's
    std::map<std::string, int> stated_;  // key to line
};

Result<void> read_name(Reading& reading, const toml::table& entry, ReadEntry& into) {
    const toml::node* value = entry.get("name");
    if (value == nullptr) return {};
    auto name = read_words(reading, *value, "name");
    if (!name) return tl::make_unexpected(name.error());
    into.name_line = line_of(*value);
    if (const auto wrong = name_objection(*name)) {
        return fail(ErrorCode::bad_input, *wrong, reading.at(into.name_line));
    }
    into.part.name = std::move(*name);
    return {};
}

}  // namespace

Result<ReadEntry> read_entry(Reading& reading,
                             const toml::table& entry,
                             const PartKind* kind,
                             std::span<const std::string> beside) {
    const auto known = kind != nullptr ? Result<PartKind>(*kind) : read_kind(reading, entry);
    if (!known) return tl::make_unexpected(known.error());
    ReadEntry read{{known->label, known->fresh, {}}, line_of(entry)};
    if (auto named = read_name(reading, entry, read); !named)
        return tl::make_unexpected(named.error());

    keep_remark(read.part.remarks, "", reading.comments.take(read.line, read.line));
    EntryReader fields(reading, *known, read, beside);
    const auto is_no_field = [&](std::string_view key) {
        return key == "name" || (kind == nullptr && key == "kind")
               || std::find(beside.begin(), beside.end(), key) != beside.end();
    };
    for (const auto& [key, value] : in_file_order(entry)) {
        if (is_no_field(key->str())) {
            keep_remark(read.part.remarks, key->str(), take_remark(reading, *key, *value));
        } else if (auto done = key->str() == tolerances_key ? fields.read_tolerances(*key, *value)
                                                            : fields.read(*key, *value);
                   !done) {
            return tl::make_unexpected(done.error());
        }
    }
    if (auto sound = fields.check(); !sound) return tl::make_unexpected(sound.error());
    fields.note_idle_values();
    return read;
}

}  // namespace beamfork
