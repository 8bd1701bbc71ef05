#include "app/check_sections.hpp"
#include "app/page_text.hpp"
#include "scene/ways_to_focus_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

Json ways_to_focus_json(const Setup&, const Report& report) {
    Json list = Json::array();
    for (const WayToFocus& way : report.ways_to_focus) {
        list.push_back({{"id", way.id},
                        {"what", way.what},
                        {"cost", way.cost},
                        {"reversibility", to_words(way.reversibility)},
                        {"gained_mm", way.gained},
                        {"reaches", way.reaches},
                        {"margin_in_mm", way.margin_in},
                        {"margin_out_mm", way.margin_out},
                        {"magnification_ratio", way.magnification_ratio}});
    }
    return list;
}

std::string ways_to_focus_text(const Setup&, const Report& report) {
    std::string out = "WAYS TO FOCUS\n" + wrapped("  ", ways_to_focus_sentence(report), 2);
    for (const WayRow& row : ways_to_focus_rows(report)) {
        const char* mark = row.sign == FindingSign::cross ? "-" : "+";
        out += wrapped(fmt::format("  {} ", mark), row.what, 4);
        out += wrapped("    ", row.effect, 4);
        out += wrapped("    ", row.cost, 4);
    }
    return out;
}

}  // namespace beamfork
