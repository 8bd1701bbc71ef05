#include "scene/focus/light_path_rows.hpp"

#include <cmath>

#include "base/text.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* unstated = "–";
constexpr double last_digit = 0.05;  // mm: differences below it cannot be seen in the numbers

std::string derived_text(const LightPath& path) {
    const std::string left = format_number(path.derived_as_stated(), 1);
    const std::string right = format_number(path.derived_right - path.beyond_stated, 1);
    return left == right ? left : left + " / " + right;
}

std::string note_on(double extra, bool fits) {
    if (!fits) {
        return fmt::format(
            "{:.1f} mm shorter than its glass and air can be: check legs, width and glass.",
            -extra);
    }
    return extra > 0 ? fmt::format("{:.1f} mm of air are added at its end.", extra)
                     : fmt::format("{:.1f} mm of air at its end are taken away.", -extra);
}

}  // namespace

std::vector<LightPathRow> light_path_rows(const Setup& setup, const Report& report) {
    std::vector<LightPathRow> rows;
    for (const LightPath& path : report.train.light_paths) {
        LightPathRow row;
        row.part = path.part;
        row.name = setup.parts.at(path.part).name;
        row.derived = derived_text(path);
        row.stated = unstated;
        row.difference = unstated;
        if (path.beyond_stated != 0) row.now = format_number(path.counted(), 1);
        row.glass = path.glass > 0 ? format_number(path.glass, 1) : unstated;
        if (path.stated) {
            const double extra = *path.stated - path.derived_as_stated();
            row.stated = format_number(*path.stated, 1);
            row.difference = format_signed(extra, 1);
            row.differs = std::abs(extra) >= last_digit;
            row.fits = path.end_air + extra >= 0;
            if (row.differs) row.note = note_on(extra, row.fits);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace beamfork
