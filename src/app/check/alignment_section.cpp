#include <cmath>

#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/two_eyes/alignment_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string word_of(Merging merging) {
    switch (merging) {
    case Merging::good: return "good";
    case Merging::comfortable: return "comfortable";
    case Merging::hard: return "hard";
    case Merging::impossible: return "impossible";
    }
    return "";
}

Json tolerance_json(const Setup& setup, const ErrorAllowance& tolerance) {
    const Json allowed = std::isinf(tolerance.allowed) ? Json(nullptr) : Json(tolerance.allowed);
    return {{"part", setup.parts[tolerance.part].name},
            {"field", tolerance.key},
            {"stated", tolerance.stated},
            {"allowed_alone", allowed},
            {"limited_by", tolerance.limited_by},
            {"inward_arcmin_per_unit", tolerance.per_unit.inward.value},
            {"left_up_arcmin_per_unit", tolerance.per_unit.left_up.value},
            {"rotation_deg_per_unit", tolerance.per_unit.rotation.value}};
}

std::string amount(const ErrorAllowance& tolerance) {
    return tolerance.unit == FieldUnit::arcminute ? fmt::format("{:.1f}′", tolerance.allowed)
                                                  : fmt::format("{:.3f} mm", tolerance.allowed);
}

}  // namespace

Json alignment_json(const Setup& setup, const Report& report) {
    const Alignment& alignment = report.alignment;
    Json tolerances = Json::array();
    for (const ErrorAllowance& tolerance : alignment.tolerances)
        tolerances.push_back(tolerance_json(setup, tolerance));
    return {{"inward_arcmin", alignment.seen.inward.value},
            {"left_up_arcmin", alignment.seen.left_up.value},
            {"rotation_deg", alignment.seen.rotation.value},
            {"size_difference_percent", alignment.seen.size},
            {"focus_difference_dioptres", alignment.focus_difference.value},
            {"same_handed", alignment.same_handed},
            {"merging", word_of(alignment.worst())},
            {"tolerances", std::move(tolerances)}};
}

std::string alignment_line(const Setup& setup, const Report& report) {
    return first_sentence(alignment_rows(setup, report).sentence);
}

std::string alignment_text(const Setup& /*setup*/, const Report& report) {
    const Alignment& alignment = report.alignment;
    const Misalignment& seen = alignment.seen;
    std::string out =
        fmt::format("TWO EYES (as seen behind the eyepieces): {}\n", word_of(alignment.worst()));
    out += fmt::format("  Eyes turn {} by {:.1f}′, {} image {:.1f}′ higher, turned by {:.2f}°\n",
                       seen.inward < Arcminutes{} ? "outward" : "inward", abs(seen.inward).value,
                       seen.left_up < Arcminutes{} ? "right" : "left", abs(seen.left_up).value,
                       abs(seen.rotation).value);
    out += fmt::format("  Sizes differ by {:.2f} %, focus by {:.2f} D\n", std::abs(seen.size),
                       abs(alignment.focus_difference).value);
    std::size_t told = 0;
    for (const ErrorAllowance& tolerance : alignment.tolerances) {
        if (told++ == 6 || std::isinf(tolerance.allowed)) break;
        out += fmt::format("    {:<44} {:>9} of it alone reach the limit ({})\n",
                           tolerance.place + ", " + tolerance.error, amount(tolerance),
                           tolerance.limited_by);
    }
    return out;
}

}  // namespace beamfork
