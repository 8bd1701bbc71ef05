#include "app/check/check_sections.hpp"

#include <fmt/format.h>

namespace beamfork {

Json coma_correction_json(const Setup& setup, const Report& report) {
    Json list = Json::array();
    for (const ComaCorrection& one : report.coma_corrections) {
        list.push_back({{"part", setup.parts[one.part].name},
                        {"wanted_spacing_mm", one.wanted.value},
                        {"spacing_window_mm", one.window.value},
                        {"spacing_mm", one.spacing.value},
                        {"beyond_window_mm", one.beyond().value},
                        {"coma_taken", one.share()}});
    }
    return list;
}

std::string coma_correction_text(const Setup& setup, const Report& report) {
    if (report.coma_corrections.empty()) return "";
    std::string out = "COMA CORRECTOR (from its shoulder to the image, light path in mm)\n";
    for (const ComaCorrection& one : report.coma_corrections) {
        out += fmt::format("  {}: {:.1f} mm, wants {:g} ± {:g} mm; takes {:.0f} % of the main "
                           "mirror's coma\n",
                           setup.parts[one.part].name, one.spacing.value, one.wanted.value,
                           one.window.value, 100 * one.share());
    }
    return out;
}

}  // namespace beamfork
