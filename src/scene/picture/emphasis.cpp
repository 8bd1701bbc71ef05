#include "scene/picture/emphasis.hpp"

#include <algorithm>

#include "document/tour_lit.hpp"

namespace beamfork {

Emphasis emphasis_on(std::span<const std::string> lit, const Setup& setup) {
    Emphasis emphasis;
    if (lit.empty()) return emphasis;
    for (const bool is_lit : lit_parts(lit, setup))
        emphasis.faded.push_back(is_lit ? 0.0F : 1.0F);
    return emphasis;
}

Emphasis blend(const Emphasis& a, const Emphasis& b, float t) {
    Emphasis between;
    between.faded.resize(std::max(a.faded.size(), b.faded.size()));
    for (std::size_t i = 0; i < between.faded.size(); ++i) {
        const int part = static_cast<int>(i);
        between.faded[i] = a.fade_of(part) + t * (b.fade_of(part) - a.fade_of(part));
    }
    between.results = a.results + t * (b.results - a.results);
    return between;
}

}  // namespace beamfork
