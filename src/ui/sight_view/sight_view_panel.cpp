#include "ui/sight_view/sight_view_panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "scene/sight_view/sight_view_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/field_numbers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

constexpr std::array<std::string_view, 6> subject_words{
    "Moon", "Stars", "Planet", "Moon's edge", "Double star", "Board by day"};
constexpr std::array<std::string_view, 6> subject_helps{
    "The Moon, with craters of our own making: sharp in focus, a blur of the right size out of it.",
    "A field of stars of our own making, as crowded as the sky at large.",
    "A planet's disc with bands, of the diameter stated.",
    "The edge of the Moon with craters of our own making.",
    "Two stars at the distance and the difference in brightness stated.",
    "A board with a printed scale: the numbers tell whether the image is upright or mirrored."};
constexpr std::array<std::string_view, 3> layout_words{"Left and right", "Merged", "One and two"};
constexpr std::array<std::string_view, 3> layout_helps{
    "What each eye sees, side by side at the same scale.",
    "The mean of both eyes' pictures: where they disagree, you see double.",
    "One eye at the telescope without a head, beside both eyes with this train, at the same scale "
    "and exposure."};

struct NumberWords {
    const char* name;
    const char* label;
    const char* unit;
    const char* help;
};

void draw_number(
    const SightUi& ui, const NumberWords& words, double& value, double low, double high) {
    const auto& [name, label, unit, help] = words;
    ImGui::AlignTextToFramePadding();
    dim_text(label);
    ImGui::SameLine(grid(30));
    ImGui::SetNextItemWidth(std::max(grid(12), ImGui::GetContentRegionAvail().x - grid(14)));
    const std::string id = std::string("##") + name;
    ImGui::SliderScalar(id.c_str(), ImGuiDataType_Double, &value, &low, &high, "%.1f",
                        ImGuiSliderFlags_Logarithmic | ImGuiSliderFlags_AlwaysClamp);
    ui.describe(name, label, help);
    ImGui::SameLine(0, grid(1));
    dim_text(unit);
}

void draw_scene_numbers(const SightUi& ui) {
    SightScene& scene = ui.state.request.scene;
    if (scene.subject == SightSubject::planet) {
        draw_number(ui,
                    {"sight/planet", "Disc", "″", "Diameter of the planet's disc in arcseconds."},
                    scene.planet_arcsec, 2, 70);
    }
    if (scene.subject == SightSubject::double_star) {
        draw_number(
            ui, {"sight/separation", "Apart", "″", "Distance between the two stars in arcseconds."},
            scene.separation_arcsec, 0.3, 120);
        draw_number(ui,
                    {"sight/difference", "Companion fainter by", "mag",
                     "Difference in brightness in magnitudes."},
                    scene.magnitude_difference, 0.1, 8);
    }
    if (scene.subject == SightSubject::stars || scene.subject == SightSubject::moon
        || scene.subject == SightSubject::lunar_edge) {
        if (text_button(ui, "sight/another", "Another one",
                        "Scatters the stars or craters anew; the same number gives the same sky."))
            ++scene.seed;
        ImGui::SameLine(0, grid(2));
        ImGui::AlignTextToFramePadding();
        dim_text("No. " + std::to_string(scene.seed));
    }
}

void draw_controls(const SightUi& ui) {
    SightRequest& asked = ui.state.request;
    const auto subject = static_cast<std::size_t>(asked.scene.subject);
    const bool is_open =
        begin_chooser("##sight/subject", std::string(subject_words[subject]), grid(36));
    ui.describe("sight/subject", "Subject", "What is looked at.");
    if (is_open) {
        for (std::size_t i = 0; i < subject_words.size(); ++i) {
            if (chooser_entry(std::string(subject_words[i]), i == subject)) {
                asked.scene.subject = static_cast<SightSubject>(i);
                ui.state.fits = true;
            }
            ui.describe("sight/subject/" + std::to_string(i), subject_words[i], subject_helps[i]);
        }
        ImGui::EndCombo();
    }
    asked.layout = static_cast<SightLayout>(segments(ui, "sight/layout", layout_words, layout_helps,
                                                     static_cast<std::size_t>(asked.layout), true));
    draw_scene_numbers(ui);
    const double before = asked.closer;
    draw_number(ui,
                {"sight/closer", "Closer by", "×",
                 "1 shows the whole field; 10 the middle tenth of it, ten times larger."},
                asked.closer, 1, 200);
    if (asked.closer != before) ui.state.fits = false;
    if (text_button(ui, "sight/fit", "Fit", "Goes as close as suits what is looked at.",
                    !ui.state.fits))
        ui.state.fits = true;
    ImGui::SameLine(0, grid(1));
    if (text_button(ui, "sight/whole", "Whole field", "Shows all that the field stop lets through.",
                    asked.closer != 1)) {
        asked.closer = 1;
        ui.state.fits = false;
    }
}

void draw_rows(const SightUi& ui, const Sights& sights) {
    std::size_t number = 0;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const ValueRow& row : sight_view_rows(sights, ui.state.request)) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const std::string id = "sight/row/" + std::to_string(number++);
        ImGui::InvisibleButton(id.c_str(), {width, ImGui::GetTextLineHeight() + grid(0.5F)});
        ui.describe(id, row.label, row.help);
        const float unit = low.x + width - grid(7);
        const float end = row.unit.empty() ? low.x + width : unit;
        const std::string value = typeset(row.value);
        text_at(list, low,
                shortened(row.label, end - low.x - text_width(value, TextFace::bold) - grid(2)),
                colour(Tone::text_dim));
        text_ending_at(list, {end, low.y}, value, colour(Tone::text), TextFace::bold);
        if (!row.unit.empty())
            text_at(list, {unit + grid(1), low.y}, row.unit, colour(Tone::text_dim));
    }
}

ImU32 ink_of(SightLayout layout, std::size_t picture) {
    if (layout != SightLayout::left_and_right) return colour(Tone::text);
    return text_colour(picture == 0 ? ColourRole::left_arm : ColourRole::right_arm);
}

// The pictures side by side, each with its name below it.
void draw_pictures(const SightUi& ui, float side) {
    const SightRequest& asked = ui.state.request;
    const auto names = picture_names(asked.layout);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto count = static_cast<float>(names.size());
    const bool is_current = ui.view.texture != ImTextureID{}
                            && picture_names(ui.view.shown.layout).size() == names.size();
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto place = static_cast<float>(i);
        const ImVec2 corner{low.x + place * (side + grid(2)), low.y};
        const ImVec2 end{corner.x + side, corner.y + side};
        list.AddRectFilled(corner, end, IM_COL32_BLACK);
        if (is_current)
            list.AddImage(ui.view.texture, corner, end, {place / count, 0},
                          {(place + 1) / count, 1});
        const float ring =
            side / 2 / static_cast<float>(field_margin) * static_cast<float>(asked.closer);
        list.PushClipRect(corner, end, true);
        list.AddCircle({corner.x + side / 2, corner.y + side / 2}, ring, ink_of(asked.layout, i),
                       96, grid(0.25F));
        list.PopClipRect();
        text_at(list, {corner.x, end.y + grid(0.5F)}, shortened(names[i], side),
                ink_of(asked.layout, i), TextFace::bold);
    }
    ImGui::InvisibleButton("sight/pictures", {count * (side + grid(2)), side + grid(6)});
    constexpr const char* help =
        "Computed from traced rays: size and orientation by the chief rays, dimming by the light "
        "that openings clip, blur by the spread of red (656 nm), green (546 nm) and blue "
        "(486 nm) with the telescope's diffraction, and out of focus where focus is not reached.";
    ui.describe("sight/pictures", names.front(), help);
}

// Whether it is in focus, and what this pair gives.
void draw_summary(const SightUi& ui) {
    if (ui.report == nullptr) return;
    const SightSummary told = sight_summary(*ui.report);
    wrapped_text(typeset(told.focus),
                 text_colour(told.is_sharp ? ColourRole::good : ColourRole::shortfall));
    wrapped_text(typeset(told.gives), colour(Tone::text_dim));
}

// Choices and numbers, beside each other where there is room.
void draw_words(const SightUi& ui) {
    const bool side_by_side = ImGui::GetContentRegionAvail().x > grid(140);
    if (side_by_side && ImGui::BeginTable("##sight", 2, ImGuiTableFlags_SizingStretchSame)) {
        ImGui::TableNextColumn();
        draw_controls(ui);
        ImGui::TableNextColumn();
        if (ui.view.sights != nullptr) draw_rows(ui, *ui.view.sights);
        ImGui::EndTable();
        return;
    }
    draw_controls(ui);
    if (ui.view.sights != nullptr) draw_rows(ui, *ui.view.sights);
}

}  // namespace

void draw_sight_view_panel(const SightUi& ui) {
    SightRequest& asked = ui.state.request;
    if (ui.view.sights != nullptr && ui.state.fits) asked = fitted(asked, *ui.view.sights);
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const auto count = static_cast<float>(picture_names(asked.layout).size());
    const bool side_by_side = room.x > grid(130);
    const float wide = side_by_side ? room.x - grid(84) : room.x;
    const float high = side_by_side ? room.y : std::max(room.y, grid(60));
    const float side =
        std::floor(std::max(grid(24), std::min(wide / count - grid(2), high - grid(7))));
    asked.pixels = std::clamp(static_cast<int>(side / 16) * 16, 96, 320);
    draw_pictures(ui, side);
    if (side_by_side) ImGui::SameLine(0, grid(2));
    ImGui::BeginGroup();
    draw_summary(ui);
    draw_words(ui);
    ImGui::EndGroup();
    ui.asks = asked;
}

}  // namespace beamfork
