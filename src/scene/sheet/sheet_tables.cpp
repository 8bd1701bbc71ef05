// Tables and lists of the printed sheet.
#include <algorithm>
#include <span>

#include "base/text.hpp"
#include "scene/findings/finding_rows.hpp"
#include "scene/fit/fit_rows.hpp"
#include "scene/focus/reach_table_rows.hpp"
#include "scene/focus/uncertainty_rows.hpp"
#include "scene/image/image_quality_rows.hpp"
#include "scene/light/brightness_rows.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "scene/light/magnification_rows.hpp"
#include "scene/sheet/sheet.hpp"
#include "scene/sheet/sheet_svg.hpp"
#include "scene/two_eyes/alignment_rows.hpp"
#include "train/setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string value_table(const std::string& heading, const std::vector<ValueRow>& rows) {
    std::string out =
        fmt::format("<table class=\"values\"><caption>{}</caption>\n", xml_text(heading));
    for (const ValueRow& row : rows) {
        const std::string value = (row.unit_leads() ? row.unit : "") + typeset(row.value);
        out += fmt::format("<tr><th scope=\"row\">{}</th><td class=\"n\">{}</td><td>{}</td></tr>\n",
                           xml_text(row.label), xml_text(value),
                           row.unit_leads() ? "" : xml_text(row.unit));
    }
    return out + "</table>\n";
}

// "±0.5, measured"; in brackets when nobody stated it.
std::string tolerance_words(const Part& part, const FieldInfo& field) {
    const auto stated = part.tolerances.find(field.key);
    if (stated != part.tolerances.end() && stated->second.plus_minus)
        return fmt::format(" ±{}, {}", format_exact(*stated->second.plus_minus),
                           to_word(stated->second.known_by));
    const auto known_by =
        stated == part.tolerances.end() ? KnownBy::datasheet : stated->second.known_by;
    const auto assumed = assumed_tolerance(field, known_by);
    if (!assumed || !assumed->plus_minus) return "";
    return fmt::format(" (±{}{})", format_exact(*assumed->plus_minus),
                       stated == part.tolerances.end() ? "" : ", " + to_word(known_by));
}

// Errors of prisms that nobody stated are noughts, and so many that they would hide what is known.
bool is_worth_printing(const Part& part, const FieldInfo& field, const FieldValue& value) {
    if (std::holds_alternative<std::monostate>(value) || !is_relevant(part.body, field))
        return false;
    if (const auto* word = std::get_if<std::string>(&value)) return *word != "unstated";
    return std::get<double>(value) != 0 || part.tolerances.contains(field.key);
}

std::string field_list(const Part& part) {
    std::string out;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto value = field_value(part.body, field.key);
        if (!value || !is_worth_printing(part, field, *value)) continue;
        const auto* number = std::get_if<double>(&*value);
        const std::string text = number != nullptr
                                     ? fmt::format("{} {}{}", typeset(format_exact(*number)),
                                                   symbol(field.unit), tolerance_words(part, field))
                                     : std::get<std::string>(*value);
        // A field is kept on one line, with the semicolon behind it.
        if (!out.empty()) out += ";</span> ";
        out += fmt::format("<span class=\"field\">{} <b>{}</b>", xml_text(field.label),
                           xml_text(text));
    }
    return out.empty() ? out : out + "</span>";
}

std::string sign_of(FindingSign sign) {
    switch (sign) {
    case FindingSign::cross: return "✗";
    case FindingSign::triangle: return "▲";
    case FindingSign::dot: return "•";
    case FindingSign::tick: return "✓";
    }
    return "";
}

std::string cure_list(const FindingRow& row) {
    if (row.cures.empty())
        return row.no_cure.empty() ? "" : "<p>" + xml_text(row.no_cure) + "</p>\n";
    std::string out = "<ul class=\"cures\">\n";
    // A mere note is worth one line of paper: its best cure.
    const std::size_t told = row.severity == Severity::note ? 1 : row.cures.size();
    for (const CureRow& cure : std::span(row.cures).first(told))
        out += fmt::format("<li><b>{}</b> – {}</li>\n", xml_text(cure.what),
                           xml_text(typeset(cure.text())));
    return out + "</ul>\n";
}

// The smaller of the two margins stands in the column of reach already.
bool has_room_on_paper(const ReachColumn& column) {
    return column.heading != "Left in" && column.heading != "Left out";
}

}  // namespace

std::string sheet_part_table(const Setup& setup) {
    std::string out =
        "<table class=\"parts\">\n<thead><tr><th scope=\"col\">No.</th><th scope=\"col\">Part</th>"
        "<th scope=\"col\">What is known of it</th></tr></thead>\n<tbody>\n";
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        const Part& part = setup.parts[i];
        out += fmt::format("<tr><td class=\"n\">{}</td><th scope=\"row\">{}<br/><small>{}</small>"
                           "</th><td>{}</td></tr>\n",
                           i + 1, xml_text(part.name), xml_text(kind_of(part.body).label),
                           field_list(part));
    }
    return out
           + "</tbody>\n</table>\n<p class=\"note\">± as stated, with where it is from; in "
             "brackets what is usual for a length of which nobody said. Errors of prisms are "
             "left out where they are 0.</p>\n";
}

std::string sheet_numbers(const Setup& setup, const Report& report) {
    std::string out = "<div class=\"columns\">\n";
    out += value_table("What you get", magnification_rows(report));
    for (const EyeLightRows& eye : light_at_stops_rows(setup, report).eyes)
        out += value_table("Light, " + eye.name, eye.values);
    out += value_table("Brightness of both eyes", brightness_rows(setup, report).both);
    const ImageRows image = image_quality_rows(report);
    for (const EyeImageRows& eye : image.eyes)
        out += value_table("Sharpness, " + eye.points[0].name, eye.points[0].values);
    const FitRows fit = fit_rows(setup, report);
    out += value_table("Eyes and eyepieces", fit.eyes);
    out += value_table("Weight", fit.weight);
    std::vector<ValueRow> merged;
    for (const AlignmentRow& row : alignment_rows(setup, report).values)
        merged.push_back({row.label + " (" + row.verdict + ")", row.value, row.unit, ""});
    out += value_table("Two images as one", merged);
    return out + "</div>\n<p class=\"note\">"
           + xml_text(typeset(uncertainty_rows(setup, report).sentence)) + "</p>\n";
}

std::string sheet_findings(const Report& report) {
    std::string out = "<ul class=\"findings\">\n";
    for (const FindingRow& row : finding_rows(report)) {
        out += fmt::format("<li><span class=\"sign\">{}</span><b>{}.</b> {}", sign_of(row.sign),
                           xml_text(row.word), xml_text(typeset(row.sentence)));
        if (!row.advice.empty()) out += " <i>" + xml_text(typeset(row.advice)) + "</i>";
        out += "\n" + cure_list(row) + "</li>\n";
    }
    return out + "</ul>\n";
}

std::string sheet_reach_table(const Setup& setup, const Report& report) {
    const ReachRows rows = reach_table_rows(setup, report);
    std::string out = "<table class=\"reach\">\n<thead><tr>";
    for (const ReachColumn& column : rows.columns) {
        if (!has_room_on_paper(column)) continue;
        const std::string unit = column.unit.empty() ? "" : ", " + column.unit;
        out += fmt::format("<th scope=\"col\"{}>{}</th>", column.is_number ? " class=\"n\"" : "",
                           xml_text(column.heading + unit));
    }
    out += "</tr></thead>\n<tbody>\n";
    for (const ReachRow& row : rows.rows) {
        out += row.is_chosen ? "<tr class=\"chosen\">" : "<tr>";
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            if (!has_room_on_paper(rows.columns[i])) continue;
            const bool is_first_of_chosen = i == 0 && row.is_chosen;
            out += fmt::format("<td{}>{}{}</td>", rows.columns[i].is_number ? " class=\"n\"" : "",
                               is_first_of_chosen ? "▶ " : "", xml_text(typeset(row.cells[i])));
        }
        out += "</tr>\n";
    }
    return out + "</tbody>\n</table>\n<p class=\"note\">" + xml_text(rows.summary) + " "
           + xml_text(rows.one_place)
           + " ▶ marks what is chosen; “!” a seat that cannot go that far." + "</p>\n";
}

}  // namespace beamfork
