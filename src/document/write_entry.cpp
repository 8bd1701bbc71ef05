#include "document/write_entry.hpp"

#include "base/text.hpp"
#include "document/read_entry.hpp"
#include "document/toml_text.hpp"
#include "document/words.hpp"

#include <fmt/format.h>

namespace beamfork {

void Lines::line(const std::string& text, const Remarks& remarks, const std::string& key) {
    const auto found = remarks.find(key);
    if (found == remarks.end()) {
        text_ += text + '\n';
        return;
    }
    const auto& [above, beside] = found->second;
    if (!above.empty()) text_ += above + '\n';
    text_ += text + (beside.empty() ? "" : "  " + beside) + '\n';
}

void Lines::value(const std::string& key, const std::string& value, const Remarks& remarks) {
    // "" is the heading's place among the remarks, though TOML allows it as a key.
    line(toml_key(key) + " = " + value, key.empty() ? Remarks{} : remarks, key);
}

void Lines::heading(const std::string& text, const Remarks& remarks) {
    text_ += '\n';
    line(text, remarks, "");
}

void Lines::unrecognised(const std::map<std::string, std::string>& values, const Remarks& remarks) {
    for (const auto& [key, text] : values)
        value(key, text, remarks);
}

namespace {

std::string field_text(const FieldValue& value) {
    if (const auto* number = std::get_if<double>(&value))
        return format_exact(*number == 0 ? 0 : *number);  // never "-0"
    return toml_string(std::get<std::string>(value));
}

// A field that does not count now and holds what it holds by itself would only confuse, unless the user wrote a comment
// at it.
bool is_worth_writing(const PartKind& kind,
                      const FieldInfo& field,
                      const Part& part,
                      const FieldValue& value) {
    if (std::holds_alternative<std::monostate>(value)) return false;
    return is_relevant(part.body, field) || value != field_value(kind.fresh, field.key)
           || part.remarks.contains(field.key);
}

// plus_minus = { length_mm = [0.5, "measured"], travel_mm = "guessed" }
void write_tolerances(Lines& lines, const Part& part) {
    std::string text;
    const auto add = [&](const std::string& key, const std::string& value) {
        text += (text.empty() ? "" : ", ") + toml_key(key) + " = " + value;
    };
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto found = part.tolerances.find(field.key);
        if (found == part.tolerances.end()) continue;
        const std::string known_by = toml_string(to_word(found->second.known_by));
        const auto& plus_minus = found->second.plus_minus;
        add(field.key,
            plus_minus ? fmt::format("[{}, {}]", format_exact(*plus_minus), known_by) : known_by);
    }
    for (const auto& [key, value] : part.unrecognised) {
        if (key.starts_with(tolerance_prefix)) add(key.substr(tolerance_prefix.size()), value);
    }
    if (!text.empty()) lines.value(std::string(tolerances_key), "{ " + text + " }", part.remarks);
}

}  // namespace

void write_entry(Lines& lines, const Part& part, const EntryKeys& more) {
    const PartKind& kind = kind_of(part.body);
    lines.heading(has_own_heading(kind) ? "[[" + kind.key + "]]" : "[[part]]", part.remarks);
    if (!has_own_heading(kind)) lines.value("kind", toml_string(kind.key), part.remarks);
    lines.value("name", toml_string(part.name), part.remarks);
    for (const auto& [key, text] : more)
        lines.value(key, text, part.remarks);
    for (const FieldInfo& field : kind.fields) {
        const auto value = field_value(part.body, field.key);
        BEAMFORK_EXPECTS(value.has_value());
        if (is_worth_writing(kind, field, part, *value)) {
            lines.value(field.key, field_text(*value), part.remarks);
        }
    }
    write_tolerances(lines, part);
    std::map<std::string, std::string> foreign = part.unrecognised;
    std::erase_if(foreign, [](const auto& one) { return one.first.starts_with(tolerance_prefix); });
    lines.unrecognised(foreign, part.remarks);
}

}  // namespace beamfork
