#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/ways_to_focus/ways_to_focus_rows.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

Json magnitudes_json(double before, double after) {
    const auto lost = magnitudes_lost(before, after);
    return lost ? Json(*lost) : Json();
}

Json light_json(const WayToFocus& way) {
    const GivenLight& before = way.light_before;
    const GivenLight& after = way.light;
    return {
        {"working_aperture_mm", after.working_aperture.value},
        {"working_aperture_change_mm", (after.working_aperture - before.working_aperture).value},
        {"edge_relative_illumination", after.edge},
        {"edge_relative_illumination_change", after.edge - before.edge},
        {"stars_magnitudes_lost", magnitudes_json(before.into_eye, after.into_eye)},
        {"areas_magnitudes_lost", magnitudes_json(before.surface, after.surface)}};
}

}  // namespace

Json ways_to_focus_json(const Setup&, const Report& report) {
    Json list = Json::array();
    for (const WayToFocus& way : report.ways_to_focus) {
        list.push_back({{"id", way.id},
                        {"what", way.what},
                        {"cost", way.cost},
                        {"reversibility", to_words(way.reversibility)},
                        {"gained_mm", way.gained.value},
                        {"reaches", way.reaches},
                        {"margin_in_mm", way.margin_in.value},
                        {"margin_out_mm", way.margin_out.value},
                        {"magnification_ratio", way.magnification_ratio},
                        {"light", light_json(way)}});
    }
    return list;
}

std::string ways_to_focus_line(const Setup&, const Report& report) {
    const auto rows = ways_to_focus_rows(report);
    if (rows.empty()) return ways_to_focus_sentence(report);
    return fmt::format("{}: {}", rows.front().what, rows.front().effect);
}

std::string ways_to_focus_text(const Setup&, const Report& report) {
    std::string out = "WAYS TO FOCUS\n" + wrapped("  ", ways_to_focus_sentence(report), 2);
    for (const WayRow& row : ways_to_focus_rows(report)) {
        const char* mark = row.sign == FindingSign::cross ? "-" : "+";
        out += wrapped(fmt::format("  {} ", mark), row.what, 4);
        out += wrapped("    ", row.effect, 4);
        out += wrapped("    ", row.light, 4);
        out += wrapped("    ", row.cost, 4);
    }
    return out;
}

}  // namespace beamfork
