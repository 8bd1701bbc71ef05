#include "ui/kit/scale_bar.hpp"

#include <cmath>

#include "base/contract.hpp"
#include "base/text.hpp"
#include "base/units.hpp"

namespace beamfork {

ScaleBar scale_bar(double mm_per_pixel, float longest_px) {
    BEAMFORK_EXPECTS(mm_per_pixel > 0 && longest_px > 0);
    const double longest = mm_per_pixel * longest_px;
    const double decade = std::pow(10.0, std::floor(std::log10(longest)));
    double length = decade;
    for (const double factor : {2.0, 5.0}) {
        if (factor * decade <= longest) length = factor * decade;
    }
    const Millimetres bar{length};
    const std::string text =
        length >= 1000 ? format_exact(to_metres(bar).value) + " m" : format_exact(length) + " mm";
    return {length, static_cast<float>(length / mm_per_pixel), text};
}

}  // namespace beamfork
