#include "scene/magnification_rows.hpp"

#include "base/text.hpp"

namespace beamfork {

std::vector<ValueRow> magnification_rows(const Report& report) {
    const Magnification& m = report.magnification;
    return {
        {"Magnification", format_number(m.magnification, 0), "×",
         "Effective focal length divided by the eyepiece's focal length (W. J. Smith, Modern "
         "Optical Engineering, "
         "4th ed., sec. 13.1)."},
        {"True field", format_number(m.true_field.value, 2), "°",
         "Width of sky that is seen: twice the arc tangent of half the field stop over the "
         "effective focal length."},
        {"Exit pupil", format_number(m.exit_pupil, 2), "mm",
         "Aperture divided by magnification: the width of the beam that enters each eye (Smith, "
         "Eq. 13.5)."},
        {"Shifter factor", format_number(m.shifter_factor, 2), "×",
         "What the shifter really does at its real distance d from the field stop: 1 + d over its "
         "focal length, "
         "whatever its label says (thin-lens equation)."},
        {"Effective focal length", format_number(m.effective_focal_length, 0), "mm",
         "The telescope's focal length times the shifter's real factor."},
        {"Focal ratio", format_number(m.focal_ratio, 1), "f/",
         "Effective focal length divided by aperture: how slim the cone is that arrives at the "
         "field stop."},
    };
}

}  // namespace beamfork
