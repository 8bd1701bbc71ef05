#include "app/check/sight_view_section.hpp"

#include "scene/sight_view/sight_view_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

Json sight_view_json(const Setup& setup, const Report& report) {
    const Sights sights = sights_of(setup, report, SightDetail::numbers);
    Json out;
    out["misalignment_arcmin"] = misalignment_arcmin(sights[0], sights[1]);
    out["one_eye_faintest_magnitude"] = sights[2].limiting;
    return out;
}

Json sight_view_eye_json(const Setup& setup, const Report& report, std::size_t side) {
    const EyeSight sight = eye_sight(setup, report, both_eyes[side], SightDetail::numbers);
    Json out;
    out["image"] = orientation_words(sight);
    out["traced_magnification"] = sight.magnification();
    out["faintest_magnitude"] = sight.limiting;
    out["surface_brightness"] = sight.surface;
    return out;
}

std::string sight_view_line(const Setup& setup, const Report& report) {
    const EyeSight sight = eye_sight(setup, report, Eye::left, SightDetail::numbers);
    return fmt::format("{}; stars to magnitude {:.1f}; areas {:.0f} % as bright as by eye",
                       orientation_words(sight), sight.limiting, 100 * sight.surface);
}

std::string sight_view_text(const Setup& setup, const Report& report) {
    const Sights sights = sights_of(setup, report, SightDetail::numbers);
    std::string out = "WHAT EACH EYE SEES\n";
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
        const EyeSight& sight = sights[side];
        out += fmt::format("  {}: image {}, stars to magnitude {:.1f}, surfaces at {:.1f} % of "
                           "the naked eye's.\n",
                           title_of(both_eyes.at(side)), orientation_words(sight), sight.limiting,
                           100 * sight.surface);
    }
    return out
           + fmt::format("  Left against right {:.1f} arcminutes at the eyes; one eye without the "
                         "head: stars to magnitude {:.1f}.\n",
                         misalignment_arcmin(sights[0], sights[1]), sights[2].limiting);
}

}  // namespace beamfork
