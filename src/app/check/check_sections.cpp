#include "app/check/check_sections.hpp"

#include <vector>

#include "app/check/fit_section.hpp"
#include "app/check/sight_view_section.hpp"

namespace beamfork {

std::span<const CheckSection> check_sections() {
    static const std::vector<CheckSection> sections{
        {.study = "focus_budget", .text = focus_budget_text},
        {.study = "magnification", .text = magnification_text},
        {.study = "light_at_stops", .text = light_at_stops_text, .line = light_at_stops_line},
        {.key = "ways_to_focus",
         .study = "ways_to_focus",
         .json = ways_to_focus_json,
         .text = ways_to_focus_text,
         .line = ways_to_focus_line},
        {.key = "reach",
         .study = "reach_table",
         .setup_json = reach_table_json,
         .text = reach_table_text,
         .line = reach_table_line},
        {.key = "uncertainty",
         .study = "uncertainty",
         .json = uncertainty_json,
         .text = uncertainty_text,
         .line = uncertainty_line},
        {.key = "sensitivities",
         .study = "tune",
         .json = tune_json,
         .text = tune_text,
         .line = tune_line},
        {.key = "other_uses",
         .study = "uncertainty",
         .json = other_uses_json,
         .text = other_uses_text},
        {.key = "image",
         .study = "image_quality",
         .eye_json = image_quality_eye_json,
         .text = image_quality_text,
         .line = image_quality_line},
        {.key = "coma_correctors",
         .study = "image_quality",
         .json = coma_correction_json,
         .text = coma_correction_text},
        {.key = "throughput", .eye_json = throughput_json},
        {.key = "brightness",
         .study = "brightness",
         .json = brightness_json,
         .text = brightness_text,
         .line = brightness_line},
        {.key = "alignment",
         .study = "alignment",
         .json = alignment_json,
         .text = alignment_text,
         .line = alignment_line},
        {.key = "orientation", .eye_json = orientation_json},
        {.key = "fit", .study = "fit", .json = fit_json, .text = fit_text, .line = fit_line},
        {.key = "sight_view",
         .study = "sight_view",
         .json = sight_view_json,
         .eye_json = sight_view_eye_json,
         .text = sight_view_text,
         .line = sight_view_line},
    };
    return sections;
}

}  // namespace beamfork
