#include <algorithm>

#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "base/letters.hpp"
#include "scene/focus/reach_table_rows.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

Json seat_json(const SeatSetting& seat) {
    return {{"shift_mm", seat.shift.value},
            {"dioptres", seat.dioptres.value},
            {"in_travel", seat.is_in_travel}};
}

Json entry_json(const Setup& setup, const ReachEntry& entry) {
    Json json{{"eyepiece", setup.parts[entry.choice.eyepiece].name},
              {"observer", setup.parts[entry.choice.observer].name},
              {"target", setup.parts[entry.choice.target].name},
              {"drawtube_mm", entry.drawtube.value},
              {"reaches", entry.reaches},
              {"margin_in_mm", entry.margin_in.value},
              {"margin_out_mm", entry.margin_out.value},
              {"shortfall_mm", entry.shortfall.value},
              {"refocus_mm", entry.refocus.value},
              {"parfocal", entry.is_parfocal},
              {"left_seat", seat_json(entry.seats[0])},
              {"right_seat", seat_json(entry.seats[1])},
              {"pupil_distance_fits", entry.pupil_distance_fits}};
    if (!entry.served.is_empty())
        json["served_mm"] = {{"low", entry.served.low.value}, {"high", entry.served.high.value}};
    return json;
}

}  // namespace

Json reach_table_json(const Setup& setup, const Report& report) {
    const ReachTable& table = report.reach;
    Json entries = Json::array();
    for (const ReachEntry& entry : table.entries)
        entries.push_back(entry_json(setup, entry));
    Json json{{"reference_eyepiece", setup.parts[table.reference_eyepiece].name},
              {"travel_mm", table.travel.value},
              {"depth_of_focus_mm", table.depth_of_focus.value},
              {"reaching", table.reaching()},
              {"usable", table.usable()},
              {"entries", std::move(entries)}};
    for (const std::size_t part : table.left_out)
        json["left_out"].push_back(setup.parts[part].name);
    if (table.conflict) {
        json["conflict"] = {{"innermost", table.conflict->innermost},
                            {"outermost", table.conflict->outermost},
                            {"gap_mm", table.conflict->gap.value}};
    } else {
        json["common_mm"] = {{"low", table.common.low.value}, {"high", table.common.high.value}};
    }
    return json;
}

std::string reach_table_line(const Setup& setup, const Report& report) {
    return reach_table_rows(setup, report).summary;
}

std::string reach_table_text(const Setup& setup, const Report& report) {
    const ReachRows rows = reach_table_rows(setup, report);
    constexpr std::size_t most = 16;  // letters; the line fits a terminal of 100
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < rows.columns.size(); ++i) {
        widths.push_back(letter_count(rows.columns[i].heading));
        for (const ReachRow& row : rows.rows)
            widths[i] = std::min(most, std::max(widths[i], letter_count(row.cells[i])));
    }
    const auto line = [&](const char* mark, auto cell) {
        std::string text = mark;
        for (std::size_t i = 0; i < rows.columns.size(); ++i) {
            if (!rows.columns[i].is_printed) continue;
            text += in_column(cell(i), widths[i], rows.columns[i].is_number) + "  ";
        }
        return text.substr(0, text.find_last_not_of(' ') + 1) + '\n';
    };
    std::string out =
        "EVERY EYEPIECE, OBSERVER AND TARGET (mm; left seat in dioptres, the right one "
        "opposite)\n";
    out += line("  ", [&](std::size_t i) { return rows.columns[i].heading; });
    for (const ReachRow& row : rows.rows)
        out += line(row.is_chosen ? "> " : "  ", [&](std::size_t i) { return row.cells[i]; });
    return out + wrapped("  ", rows.summary, 2) + wrapped("  ", rows.one_place, 2);
}

}  // namespace beamfork
