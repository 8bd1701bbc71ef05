#include "scene/light/light_at_stops_rows.hpp"

#include <algorithm>

#include "scene/kit/result_row.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double band_that_shows = 0.001;  // a band thinner than this cannot be seen

std::vector<StopShare>
stop_shares(const Setup& setup, const EyePath& path, const EyeClipping& clipping) {
    std::vector<StopShare> shares;
    for (std::size_t ring = 0; ring < clipping.rings.size(); ++ring) {
        for (const EndShare& end : clipping.rings[ring].ends) {
            const std::string name = end_name(setup, path, end);
            auto found = std::find_if(shares.begin(), shares.end(),
                                      [&](const StopShare& share) { return share.name == name; });
            if (found == shares.end()) {
                shares.push_back({name, path.surfaces.at(end.surface).part, end.is_leak,
                                  std::vector<double>(clipping.rings.size(), 0.0), 0});
                found = shares.end() - 1;
            }
            found->share[ring] += end.share;
            found->largest = std::max(found->largest, found->share[ring]);
        }
    }
    std::erase_if(shares, [](const StopShare& share) { return share.largest < band_that_shows; });
    std::stable_sort(shares.begin(), shares.end(),
                     [](const StopShare& a, const StopShare& b) { return a.largest > b.largest; });
    return shares;
}

std::vector<ValueRow> eye_values(const Report& report, Eye eye) {
    const std::size_t side = eye == Eye::left ? 0 : 1;
    const ResultInfo& lit = info_of(ResultId::fully_lit);
    const ResultInfo& edge = info_of(ResultId::edge_light);
    const ResultInfo& aperture = info_of(ResultId::working_aperture);
    std::vector<ValueRow> rows{
        result_row(lit, lit.of_eye(report, side)),
        result_row(edge, edge.of_eye(report, side)),
        result_row(aperture, aperture.of_eye(report, side), aperture.fine_decimals),
    };
    rows[0].help +=
        fmt::format(" The field stop is {:.1f} mm wide.", report.clipping[side].field_stop.value);
    return rows;
}

std::string light_sentence(const Report& report) {
    const auto darker = [](const EyeClipping& a, const EyeClipping& b) {
        return a.edge_relative < b.edge_relative;
    };
    const EyeClipping& worse = std::min(report.clipping[0], report.clipping[1], darker);
    const double aperture = 2 * report.train.objective_radius;
    if (worse.working_aperture.value < 0.99 * aperture) {
        return fmt::format(
            "Only {:.0f} of {:.0f} mm aperture work on axis; the edge of the field keeps {:.0f} %.",
            worse.working_aperture.value, aperture, 100 * worse.edge_relative);
    }
    if (worse.edge_relative < 0.995) {
        return fmt::format(
            "The whole aperture works on axis; the edge of the field keeps {:.0f} % of the light.",
            100 * worse.edge_relative);
    }
    return "All of the objective's light arrives everywhere in the field.";
}

EyeLightRows eye_rows(const Setup& setup, const Report& report, Eye eye) {
    const EyeClipping& clipping = report.clipping_of(eye);
    EyeLightRows rows;
    rows.eye = eye;
    rows.name = title_of(eye);
    rows.role = eye == Eye::left ? ColourRole::left_arm : ColourRole::right_arm;
    for (const LitRing& ring : clipping.rings) {
        rows.relative.push_back(ring.relative);
        rows.lowest.push_back(ring.lowest);
    }
    rows.shares = stop_shares(setup, report.train.path(eye), clipping);
    rows.values = eye_values(report, eye);
    return rows;
}

}  // namespace

LightRows light_at_stops_rows(const Setup& setup, const Report& report) {
    LightRows rows;
    for (const LitRing& ring : report.clipping[0].rings) {
        rows.fractions.push_back(ring.field_fraction);
        rows.diameters.push_back(ring.field_fraction * report.clipping[0].field_stop.value);
    }
    for (const Eye eye : both_eyes)
        rows.eyes.push_back(eye_rows(setup, report, eye));
    rows.sentence = light_sentence(report);
    return rows;
}

}  // namespace beamfork
