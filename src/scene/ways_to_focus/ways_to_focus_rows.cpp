#include "scene/ways_to_focus/ways_to_focus_rows.hpp"

#include <algorithm>
#include <cmath>

#include "study/findings/report.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

std::string effect_of(const WayToFocus& way) {
    std::string text = way.gained >= Millimetres{}
                           ? fmt::format("gives back {:.1f} mm", way.gained.value)
                           : fmt::format("takes {:.1f} mm", -way.gained.value);
    if (way.reaches) {
        const bool inward = way.margin_in < way.margin_out;
        text += fmt::format("; {:.1f} mm of travel left {}",
                            std::min(way.margin_in, way.margin_out).value,
                            inward ? "inward" : "outward");
    } else {
        text +=
            fmt::format("; still {:.1f} mm short", -std::min(way.margin_in, way.margin_out).value);
    }
    if (std::abs(way.magnification_ratio - 1) > 0.005)
        text += fmt::format("; {:.2f}× the magnification", way.magnification_ratio);
    return text;
}

constexpr double magnitude_shown = 0.005;  // less is 0.00 in print

std::string
change_of(const char* what, double before, double after, const char* less, const char* more) {
    const auto lost = magnitudes_lost(before, after);
    if (!lost || std::abs(*lost) < magnitude_shown) return "";
    return fmt::format("{} {:.2f} mag {}", what, std::abs(*lost), *lost > 0 ? less : more);
}

std::string light_of(const WayToFocus& way) {
    const GivenLight& before = way.light_before;
    const GivenLight& after = way.light;
    if (after.into_eye <= 0) return "Light: none reaches the middle of the field";
    std::vector<std::string> changes;
    if (before.into_eye <= 0) changes.emplace_back("none came through before");
    if (abs(after.working_aperture - before.working_aperture) >= Millimetres{0.5}) {
        changes.push_back(fmt::format("working aperture {:.0f} mm instead of {:.0f} mm",
                                      after.working_aperture.value, before.working_aperture.value));
    }
    changes.push_back(change_of("stars", before.into_eye, after.into_eye, "fainter", "brighter"));
    changes.push_back(
        change_of("sky and nebulae", before.surface, after.surface, "dimmer", "brighter"));
    if (std::abs(after.edge - before.edge) >= 0.005) {
        changes.push_back(fmt::format("edge of the field lit to {:.0f} % instead of {:.0f} %",
                                      100 * after.edge, 100 * before.edge));
    }
    std::erase(changes, "");
    if (changes.empty()) return "Light: none lost";
    return fmt::format("Light: {}", fmt::join(changes, "; "));
}

std::string capital(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

}  // namespace

std::string ways_to_focus_help() {
    return "Given back: travel left inward by the focus budget of the changed setup, less what the "
           "setup as it is leaves. Light: rays traced through both, mean of the two eyes. Working "
           "aperture: the aperture's diameter times the root of the share of light that passes all "
           "openings on axis. Magnitudes: 2.5 times the logarithm of the ratio of light; for stars "
           "of all light that enters the eye, for sky and nebulae of their brightness per area "
           "(see Brightness). Edge: light at the field stop's edge against the objective's.";
}

std::vector<WayRow> ways_to_focus_rows(const Report& report) {
    std::vector<WayRow> rows;
    for (const WayToFocus& way : report.ways_to_focus) {
        WayRow row;
        const bool is_barely =
            std::min(way.margin_in, way.margin_out) < thin_margin - Millimetres{0.1};
        if (!way.reaches) {
            row.sign = FindingSign::cross;
            row.role = ColourRole::clipped;
        } else if (is_barely) {
            row.sign = FindingSign::triangle;
            row.role = ColourRole::shortfall;
        }
        row.what = way.what;
        row.effect = effect_of(way);
        row.light = light_of(way);
        row.cost = capital(to_words(way.reversibility)) + ". " + way.cost;
        rows.push_back(std::move(row));
    }
    return rows;
}

const Setup& setup_of_way(const Report& report, std::size_t row) {
    return report.ways_to_focus.at(row).setup;
}

std::string ways_to_focus_sentence(const Report& report) {
    const FocusBudget& budget = report.budget;
    const Millimetres margin = std::min(budget.margin_in, budget.margin_out);
    if (margin >= thin_margin) {
        return fmt::format("Focus is reached with {:.1f} mm to spare: nothing need be changed.",
                           margin.value);
    }
    const bool inward = budget.margin_in < budget.margin_out;
    const std::string wanted = fmt::format(
        "{:.1f} mm {} wanted, {:.0f} mm of spare travel included", (thin_margin - margin).value,
        inward ? "of light path are" : "of added length are", thin_margin.value);
    return report.ways_to_focus.empty() ? wanted + "; no single change here gives it."
                                        : wanted + ". Best first:";
}

}  // namespace beamfork
