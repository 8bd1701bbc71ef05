#include "scene/sheet/sheet.hpp"

#include "base/assets.hpp"
#include "base/base64.hpp"
#include "base/contract.hpp"
#include "base/text.hpp"
#include "document/setup_file.hpp"
#include "document/setup_in_page.hpp"
#include "scene/findings/finding_rows.hpp"
#include "scene/sheet/sheet_drawings.hpp"
#include "scene/sheet/sheet_svg.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string section(std::string_view heading, std::string_view css, const std::string& content) {
    return fmt::format("<section class=\"{}\">\n<h2>{}</h2>\n{}</section>\n", css, heading,
                       content);
}

std::string figure(const std::string& svg, std::string_view caption) {
    return fmt::format("<figure>\n{}<figcaption>{}</figcaption>\n</figure>\n", svg, caption);
}

std::string page_head(const std::string& title, const SheetOptions& options) {
    const auto css = asset("assets/sheet.css");
    BEAMFORK_EXPECTS(css.has_value());
    return fmt::format("<!DOCTYPE html>\n<html lang=\"en\" class=\"{}\" "
                       "xmlns=\"http://www.w3.org/1999/xhtml\">\n<head>\n"
                       "<meta charset=\"utf-8\"/>\n"
                       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
                       "<title>{}</title>\n<style>\n{}</style>\n</head>\n<body>\n",
                       options.night ? "night" : "day", xml_text(title), *css);
}

bool has_failed(const Report& report) {
    return !report.findings.empty() && report.findings.front().severity == Severity::fails;
}

std::string verdict_words(const Report& report) {
    const char* sign = has_failed(report) ? "✗" : is_poor(report.findings) ? "▲" : "✓";
    return fmt::format("{} {}", sign, finding_summary(report));
}

std::string heading_block(const Setup& setup, const Report& report) {
    const Choice& choice = report.train.choice;
    return fmt::format(
        "<header>\n<h1>{}</h1>\n<p class=\"verdict\">{}</p>\n<p class=\"choice\">{} · {} · {}</p>\n"
        "</header>\n<p class=\"story\">{}</p>\n",
        xml_text(setup.title), xml_text(verdict_words(report)),
        xml_text(setup.parts[choice.eyepiece].name), xml_text(setup.parts[choice.observer].name),
        xml_text(setup.parts[choice.target].name), xml_text(setup.story));
}

std::string step_list(const Setup& setup, const Report& report) {
    std::string out = "<ol class=\"steps\">\n";
    for (const SheetStep& step : sheet_steps(setup, report)) {
        out += fmt::format("<li><span class=\"box\">☐</span> <b>{}.</b> {}", xml_text(step.heading),
                           xml_text(step.text));
        for (const std::string& item : step.items)
            out += fmt::format(" <span class=\"item\">{}</span>", xml_text(item));
        out += "</li>\n";
    }
    return out + "</ol>\n";
}

std::string caution_list() {
    std::string out = "<ul class=\"cautions\">\n";
    for (const SheetCaution& caution : sheet_cautions())
        out += fmt::format("<li><b>⚠ {}.</b> {}</li>\n", xml_text(caution.subject),
                           xml_text(caution.text));
    return out
           + "</ul>\n<p>What makers say of their parts, your local rules and qualified advice come "
             "before anything printed here.</p>\n";
}

std::string side_view(const Setup& setup, const Report& report) {
    return figure(
        sheet_side_view(setup, report),
        "From the side, to scale. Numbers: the parts as they are mounted, and their table "
        "in the appendix. ◆ (◇ out of focus) where the image really is.");
}

// What fails, each with the change to begin with: before anything is mounted.
std::string first_of_all(const Report& report) {
    std::string out = "<ul class=\"findings\">\n";
    for (const FindingRow& row : finding_rows(report)) {
        if (row.severity != Severity::fails) continue;
        out += "<li><b>" + xml_text(typeset(row.sentence)) + "</b><br/>";
        out += row.cures.empty() ? xml_text(typeset(row.advice.empty() ? row.no_cure : row.advice))
                                 : "☐ " + xml_text(row.cures.front().what) + " – "
                                       + xml_text(typeset(row.cures.front().text()));
        out += "</li>\n";
    }
    return out + "</ul>\n";
}

std::string moon_figure(const SheetOptions& options) {
    if (options.moon_png.empty()) return "";
    return figure(
        "<svg viewBox=\"0 0 200 114\" role=\"img\" aria-label=\"The Moon as each eye sees "
        "it\">\n<image width=\"200\" height=\"114\" href=\"data:image/png;base64,"
            + base64(options.moon_png) + "\"/>\n</svg>\n",
        "The Moon as each eye sees it with this train.");
}

// All that is taken along: what to do, in which order, and what to heed.
std::string first_page(const Setup& setup, const Report& report, const SheetOptions& options) {
    std::string page = "<div class=\"first\">\n" + heading_block(setup, report);
    if (has_failed(report)) {
        page += section("This does not work yet: change first", "keep", first_of_all(report));
    } else {
        page += section("At the telescope", "keep", step_list(setup, report));
    }
    page +=
        "<div class=\"beside\">\n" + side_view(setup, report) + moon_figure(options) + "</div>\n";
    return page + section("Cautions", "keep", caution_list()) + "</div>\n";
}

std::string drawings(const Setup& setup, const Report& report) {
    std::string out;
    out += "<div class=\"pair\">\n";
    out += figure(sheet_head_view(setup, report),
                  "Both arms, to scale. Solid: light to the left eye; dashed: to the right.");
    out += figure(sheet_light_curves(setup, report),
                  "Light that arrives over the field, of what the objective gathers.");
    return out + "</div>\n";
}

}  // namespace

std::string
sheet_page(const Document& document, const Report& report, const SheetOptions& options) {
    const Setup& setup = document.setup;
    std::string page = page_head(setup.title, options);
    page += "<main>\n" + first_page(setup, report, options);
    page += "<div class=\"appendix\">\n<h1>Appendix</h1>\n<p class=\"note\">To look things up in; "
            "the first page is what you need at the telescope.</p>\n";
    if (has_failed(report))
        page += section("At the telescope, once it works", "keep", step_list(setup, report));
    page += section("The train", "", drawings(setup, report));
    page +=
        section("Focus budget", "keep",
                figure(sheet_focus_budget(report),
                       "Light path in mm, glass as air: + gives, − takes. Below: where drawtube "
                       "or main mirror stands (bar) and should (◆; ◇ out of reach)."));
    page += section("Unfolded path", "keep",
                    figure(sheet_unfolded_path(setup, report),
                           "The train straightened, the left eye's light above the axis (solid), "
                           "the right eye's below (dashed): openings as jaws, glass as boxes; × an "
                           "opening that takes light. ◆ (◇ out of focus) where the image really "
                           "is."));
    page += section("Findings and what would mend them", "", sheet_findings(report));
    page += section("Drawtube and seats for everybody", "", sheet_reach_table(setup, report));
    page += section("Numbers", "", sheet_numbers(setup, report));
    page += section("Parts", "", sheet_part_table(setup));
    page += section("The setup file", "file",
                    "<p>Save this text as <code>my.train.toml</code>, or give this page itself to "
                    "<code>beamfork check</code>, and the setup is as it was.</p>\n"
                        + setup_for_page(write_setup(document)));
    return page + "</div>\n</main>\n</body>\n</html>\n";
}

}  // namespace beamfork
