#include "ui/kit/theme.hpp"
#include "ui/picture/viewport.hpp"

namespace beamfork {

namespace {

void light_slider(const PictureUi& ui,
                  const char* name,
                  const char* label,
                  float& value,
                  glm::vec2 range,
                  const char* format,
                  const std::string& help) {
    ImGui::SetNextItemWidth(grid(40));
    ImGui::SliderFloat(label, &value, range.x, range.y, format, ImGuiSliderFlags_AlwaysClamp);
    ui.describe(name, label, help);
}

}  // namespace

void draw_light_choices(const PictureUi& ui) {
    ViewOptions& view = ui.options;
    const auto tick = [&](const char* name, const char* label, bool& value,
                          const std::string& help) {
        ImGui::Checkbox(label, &value);
        ui.describe(name, label, help);
    };
    tick("view/paint", "Paint the objective", view.paint_pupil,
         "Each ray in the colour of where it met the objective: one sees which part of it is lost, "
         "and where. Key "
             + ui.keys_text("view/paint"));
    tick("view/motion", "Light in motion", view.light_moves,
         "Packets of light run along the rays, slowed, and slower in glass; they are divided and "
         "come "
         "to both eyes. Key "
             + ui.keys_text("view/motion"));
    if (view.light_moves) {
        tick("view/hold_light", "Hold it", view.light_is_held,
             "The packets stand still. Key " + ui.keys_text("view/hold_light"));
        light_slider(ui, "view/speed", "Pace, mm a second", view.light_speed_mm_s, {20, 400},
                     "%.0f", "Of optical path: length times the index of refraction.");
    }
    const float before = view.apart;
    light_slider(
        ui, "view/apart", "Pull apart", view.apart, {0, 1}, "%.2f",
        "The parts move apart along the axis, each to be seen alone; light is drawn only while "
        "they are together. Key "
            + ui.keys_text("view/apart"));
    if (view.apart != before) ui.state.apart_move.reset();
}

}  // namespace beamfork
