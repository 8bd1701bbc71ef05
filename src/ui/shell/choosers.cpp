#include "ui/kit/choosers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "document/edit.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/shell/top_bar.hpp"

namespace beamfork {

namespace {

struct Chooser {
    const char* caption;
    const char* name;
    Role role;
    std::size_t Choice::*chosen;
    const char* help;
};

constexpr std::array choosers{
    Chooser{"Eyepieces", "choose/eyepiece", Role::eyepiece, &Choice::eyepiece,
            "The eyepiece pair that is looked through."},
    Chooser{"Observer", "choose/observer", Role::observer, &Choice::observer, "Who looks."},
    Chooser{"Target", "choose/target", Role::target, &Choice::target, "What is looked at."},
};

void draw_chooser(const ShellUi& ui, const Chooser& chooser, float width, bool with_caption) {
    if (with_caption) {
        ImGui::AlignTextToFramePadding();
        dim_text(chooser.caption);
        ImGui::SameLine(0, grid(1.5F));
        width -= text_width(chooser.caption) + grid(1.5F);
    }
    const std::size_t now = ui.setup().chosen.*chooser.chosen;
    const bool exists = now < ui.setup().parts.size();
    const std::string id = std::string("##") + chooser.name;
    const bool is_open =
        begin_chooser(id.c_str(), exists ? ui.setup().parts[now].name : "–", width);
    ui.describe(chooser.name, chooser.caption, chooser.help);
    if (!is_open) return;
    for (const std::size_t index : parts_with_role(ui.setup(), chooser.role)) {
        ImGui::PushID(static_cast<int>(index));
        if (chooser_entry(ui.setup().parts[index].name, index == now) && index != now) {
            ui.edit(ChoosePart{index});
        }
        ImGui::PopID();
        const std::string& item_help = kind_of(ui.setup().parts[index].body).help;
        ui.describe(std::string(chooser.name) + "/" + std::to_string(index),
                    ui.setup().parts[index].name, item_help);
    }
    ImGui::EndCombo();
}

}  // namespace

float choosers_width(float room) {
    return std::clamp(room * 0.72F, std::min(room, grid(60)), grid(220));
}

void draw_choosers(const ShellUi& ui, float width) {
    float captions = 0;
    for (const Chooser& chooser : choosers)
        captions += text_width(chooser.caption) + grid(1.5F);
    const bool with_captions = width - captions > grid(66);
    const float gap = grid(3);
    const float boxes = width - (with_captions ? captions : 0) - 2 * gap;
    // Eyepieces have the longest names.
    constexpr std::array<float, 3> shares{0.42F, 0.3F, 0.28F};
    for (std::size_t i = 0; i < choosers.size(); ++i) {
        if (i > 0) ImGui::SameLine(0, gap);
        const float caption = with_captions ? text_width(choosers[i].caption) + grid(1.5F) : 0;
        draw_chooser(ui, choosers[i], std::floor(boxes * shares[i]) + caption, with_captions);
    }
}

}  // namespace beamfork
