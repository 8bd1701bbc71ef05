#include "study/comparison/comparison.hpp"

#include <cmath>

#include "study/findings/report.hpp"
#include "study/results/results.hpp"

namespace beamfork {

namespace {

std::optional<Side> better_of(const ResultInfo& result, double here, double there) {
    const Better better = result.better;
    if (better == Better::matter_of_taste) return std::nullopt;
    if (better == Better::enough && here >= thin_margin.value && there >= thin_margin.value)
        return std::nullopt;
    return (here > there) == (better != Better::less) ? Side::here : Side::there;
}

double surface_brightness(const Report& report) {
    const auto& eyes = report.brightness.eyes;
    return (eyes[0].surface_brightness + eyes[1].surface_brightness) / 2;
}

}  // namespace

std::vector<ComparedResult> compare_reports(const Report& here, const Report& there) {
    std::vector<ComparedResult> compared;
    for (const ResultInfo& result : all_results()) {
        if (result.notable == 0) continue;
        ComparedResult one{&result, result.value(here), result.value(there)};
        one.differs = std::abs(one.here - one.there) >= result.notable;
        if (one.differs) one.better = better_of(result, one.here, one.there);
        compared.push_back(one);
    }
    return compared;
}

std::optional<ExtendedLight> extended_light(const Report& here, const Report& there) {
    const double first = surface_brightness(here);
    const double second = surface_brightness(there);
    if (first <= 0 || second <= 0) return std::nullopt;
    return ExtendedLight{first, second, magnitudes(second / first)};
}

}  // namespace beamfork
