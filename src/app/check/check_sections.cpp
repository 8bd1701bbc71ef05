#include "app/check/check_sections.hpp"

#include <vector>

#include "app/check/fit_section.hpp"
#include "app/check/sight_view_section.hpp"

namespace beamfork {

std::span<const CheckSection> check_sections() {
    static const std::vector<CheckSection> sections{
        {.key = "ways_to_focus", .json = ways_to_focus_json, .text = ways_to_focus_text},
        {.key = "reach", .setup_json = reach_table_json, .text = reach_table_text},
        {.key = "uncertainty", .json = uncertainty_json, .text = uncertainty_text},
        {.key = "sensitivities", .json = tune_json, .text = tune_text},
        {.key = "other_uses", .json = other_uses_json, .text = other_uses_text},
        {.key = "image", .eye_json = image_quality_eye_json, .text = image_quality_text},
        {.key = "coma_correctors", .json = coma_correction_json, .text = coma_correction_text},
        {.key = "throughput", .eye_json = throughput_json},
        {.key = "brightness", .json = brightness_json, .text = brightness_text},
        {.key = "alignment", .json = alignment_json, .text = alignment_text},
        {.key = "orientation", .eye_json = orientation_json},
        {.key = "fit", .json = fit_json, .text = fit_text},
        {.key = "sight_view",
         .json = sight_view_json,
         .eye_json = sight_view_eye_json,
         .text = sight_view_text},
    };
    return sections;
}

}  // namespace beamfork
