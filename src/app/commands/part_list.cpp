#include "app/commands/part_list.hpp"

#include "base/text.hpp"
#include "parts/part.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

std::string accepted(const FieldInfo& field) {
    if (field.type == FieldType::choice) return fmt::format("{}", fmt::join(field.choices, ", "));
    return fmt::format("{} to {}{}", format_exact(field.low), format_exact(field.high),
                       field.type == FieldType::optional_number ? ", or left out" : "");
}

std::string usual_value(const PartKind& kind, const FieldInfo& field) {
    const auto value = field_value(kind.fresh, field.key);
    if (!value) return "";
    if (const auto* number = std::get_if<double>(&*value)) return format_exact(*number);
    if (const auto* word = std::get_if<std::string>(&*value)) return *word;
    return "left out";
}

}  // namespace

std::string part_list_text() {
    std::string out = "Part kinds and their keys in a setup file. A key that is left out takes the "
                      "value in brackets.\n";
    for (const PartKind& kind : part_kinds()) {
        out += fmt::format("\n{} ({})\n  {}\n", kind.key, kind.label, kind.help);
        for (const FieldInfo& field : kind.fields) {
            out += fmt::format("    {:<26} {} [{}]\n        {}\n", field.key, accepted(field),
                               usual_value(kind, field), field.help);
        }
    }
    return out;
}

std::string part_list_markdown() {
    std::string out =
        "# Part kinds and their keys\n\nMade by `beamfork parts --markdown`; a test "
        "keeps it true.\n\nAny number may say how well it is known, by its key and in its unit: "
        "`plus_minus = { length_mm = [0.5, \"measured\"] }`. With `\"datasheet\"` or "
        "`\"guessed\"` it lies anywhere within ± with equal chance; with "
        "`\"measured\"`, ± is one standard deviation (JCGM 100:2008, 4.3). A number "
        "without it is taken as exact.\n";
    for (const PartKind& kind : part_kinds()) {
        out += fmt::format("\n## {} (`{}`)\n\n{}\n\n| key | meaning | accepted | if left out "
                           "|\n|---|---|---|---|\n",
                           kind.label, kind.key, kind.help);
        for (const FieldInfo& field : kind.fields) {
            out += fmt::format("| `{}` | {} | {} | {} |\n", field.key, field.help, accepted(field),
                               usual_value(kind, field));
        }
    }
    return out;
}

}  // namespace beamfork
