#include "document/tour_lit.hpp"
#include "train/setup.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/tour/tour_texts.hpp"

#include <fmt/format.h>

namespace beamfork {

void draw_tour_lights(const TourUi& ui, const TourStep& step) {
    const std::vector<std::size_t> choices = parts_in_light(ui.setup(), ui.setup().chosen);
    const std::vector<bool> lit = lit_parts(step.lit, ui.setup());
    dim_text(step.lit.empty() ? "Lit: everything" : "Lit, while all else fades");
    const float right = ImGui::GetCursorScreenPos().x + ImGui::GetContentRegionAvail().x;
    for (const std::size_t part : choices) {
        bool is_lit = lit[part];
        const std::string& words = ui.setup().parts[part].name;
        const float wide = ImGui::GetFrameHeight() + grid(4) + text_width(words);
        if (part != choices.front() && ImGui::GetItemRectMax().x + wide < right) ImGui::SameLine();
        const std::string id = fmt::format("{}##tours/lit/{}", words, part);
        const bool is_pressed = ImGui::Checkbox(id.c_str(), &is_lit);
        constexpr const char* help =
            "Stands out in this step. With no part ticked, or with all, everything does.";
        ui.describe(fmt::format("tours/lit/{}", part), words, help);
        if (!is_pressed) continue;
        // From everything one goes to this part alone: to untick all others one by one would be a chore.
        const std::vector<std::string> now =
            step.lit.empty() ? std::vector{lit_word_of(ui.setup().parts[part])}
                             : with_part_lit(step.lit, ui.setup(), choices, part, is_lit);
        change_step(ui, "Change what is lit", [&](TourStep& here) { here.lit = now; });
    }
}

}  // namespace beamfork
