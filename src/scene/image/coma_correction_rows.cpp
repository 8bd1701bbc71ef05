#include "scene/image/coma_correction_rows.hpp"

#include "base/text.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

std::vector<ValueRow> coma_correction_rows(const Report& report, std::size_t part) {
    std::vector<ValueRow> rows;
    for (const ComaCorrection& one : report.coma_corrections) {
        if (one.part != part) continue;
        const double beyond = one.beyond().value;
        rows.push_back({"Shoulder to image now", format_number(one.spacing.value, 1), "mm",
                        "Light path from its shoulder to where the eye wants the image, through "
                        "all that stands behind it; glass counts t / n."});
        rows.push_back({"Shoulder to image wanted",
                        format_number((one.wanted - one.window).value, 1) + " to "
                            + format_number((one.wanted + one.window).value, 1),
                        "mm", "The window that the corrector is made for."});
        rows.push_back({"Outside the window by", beyond == 0 ? "0.0" : format_signed(beyond, 1),
                        "mm",
                        "That spacing less the wanted one, beyond the window: + too far from the "
                        "image, − too near to it."});
        rows.push_back(
            {"Coma it takes away", format_number(100 * one.share(), 0), "%",
             "Of the main mirror's coma, 3 θ / (16 N²) (W. J. Smith, Modern Optical Engineering, "
             "4th ed.): all of it inside the window; beyond it, 3 x / d less, for x mm outside and "
             "d from the lens to the image (an assumption: as the cube of the beam's width "
             "there)."});
    }
    return rows;
}

}  // namespace beamfork
