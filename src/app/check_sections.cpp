#include "app/check_sections.hpp"

#include <vector>

#include "app/fit_section.hpp"
#include "app/sight_view_section.hpp"

namespace beamfork {

std::span<const CheckSection> check_sections() {
    static const std::vector<CheckSection> sections{
        {"ways_to_focus", ways_to_focus_json, nullptr, ways_to_focus_text},
        {"image", nullptr, image_quality_eye_json, image_quality_text},
        {.key = "reach", .setup_json = reach_table_json, .text = reach_table_text},
        {"fit", fit_json, nullptr, fit_text},
        {"throughput", nullptr, throughput_json, nullptr},
        {"brightness", brightness_json, nullptr, brightness_text},
        {"alignment", alignment_json, nullptr, alignment_text},
        {.key = "uncertainty", .json = uncertainty_json, .text = uncertainty_text},
        {.key = "other_uses", .json = other_uses_json, .text = other_uses_text},
        {"orientation", nullptr, orientation_json, nullptr},
        {"sight_view", sight_view_json, sight_view_eye_json, sight_view_text},
    };
    return sections;
}

}  // namespace beamfork
