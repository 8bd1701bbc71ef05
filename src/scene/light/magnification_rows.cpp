#include "scene/light/magnification_rows.hpp"

#include "base/text.hpp"
#include "scene/kit/result_row.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

std::vector<ValueRow> magnification_rows(const Report& report) {
    std::vector<ValueRow> rows;
    for (const ResultId id :
         {ResultId::magnification, ResultId::true_field, ResultId::exit_pupil,
          ResultId::shifter_factor, ResultId::effective_focal_length, ResultId::focal_ratio}) {
        const ResultInfo& result = info_of(id);
        rows.push_back(result_row(result, result.value(report)));
    }
    if (const auto& primary = report.budget.primary) {
        rows.push_back({"Gained per mm of path", format_number(primary->focal_length_per_mm, 1),
                        "mm",
                        "What each mm of back focus more adds to this telescope's focal length, "
                        "because its main mirror moves to focus: the main mirror's focal length "
                        "over the secondary's."});
        rows.push_back(
            {"Focal length gained",
             format_signed((primary->focal_length - primary->stated_focal_length).value, 0), "mm",
             "Focal length at this focus less the stated one, for the back focus taken "
             "beyond the stated one (two-mirror formula f1 (1 + b / |f2|), W. J. Smith, "
             "Modern Optical Engineering)."});
    }
    return rows;
}

}  // namespace beamfork
