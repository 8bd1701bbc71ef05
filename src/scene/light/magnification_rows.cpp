#include "scene/light/magnification_rows.hpp"

#include "base/text.hpp"

namespace beamfork {

std::vector<ValueRow> magnification_rows(const Report& report) {
    const Magnification& m = report.magnification;
    std::vector<ValueRow> rows{
        {"Magnification", format_number(m.magnification, 0), "×",
         "Effective focal length divided by the eyepiece's focal length (W. J. Smith, Modern "
         "Optical Engineering, "
         "4th ed., sec. 13.1)."},
        {"True field", format_number(m.true_field.value, 2), "°",
         "Width of sky that is seen: twice the arc tangent of half the field stop over the "
         "effective focal length."},
        {"Exit pupil", format_number(m.exit_pupil.value, 2), "mm",
         "Aperture divided by magnification: the width of the beam that enters each eye (Smith, "
         "Eq. 13.5)."},
        {"Shifter factor", format_number(m.shifter_factor, 2), "×",
         "What shifters and correctors really do at their real distance d from the field stop: 1 + "
         "d over the focal length, "
         "whatever the label says (thin-lens equation)."},
        {"Effective focal length", format_number(m.effective_focal_length.value, 0), "mm",
         "The telescope's focal length at this focus times the real factor of the lenses behind "
         "it."},
        {"Focal ratio", format_number(m.focal_ratio, 1), "f/",
         "Effective focal length divided by aperture: how slim the cone is that arrives at the "
         "field stop."},
    };
    if (const auto& primary = report.budget.primary) {
        rows.push_back({"Gained per mm of path", format_number(primary->focal_length_per_mm, 1),
                        "mm",
                        "What each mm of back focus more adds to this telescope's focal length, "
                        "because its main mirror moves to focus: the main mirror's focal length "
                        "over the secondary's."});
        rows.push_back({"Focal length gained",
                        format_signed(primary->focal_length - primary->stated_focal_length, 0),
                        "mm",
                        "Focal length at this focus less the stated one, for the back focus taken "
                        "beyond the stated one (two-mirror formula f1 (1 + b / |f2|), W. J. Smith, "
                        "Modern Optical Engineering)."});
    }
    return rows;
}

}  // namespace beamfork
