#include "ui/image/image_quality_panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "scene/image/image_quality_rows.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::array colour_roles{ColourRole::left_arm, ColourRole::good, ColourRole::clipped};
constexpr std::array point_ids{"axis", "edge"};
constexpr std::array point_words{"axis", "edge"};

std::string id_of(const EyeImageRows& eye, std::string_view what) {
    return fmt::format("image_quality/{}/{}", name_of(eye.eye), what);
}

// Blue, green and red rays differ by shape as well: upright cross, dot, leaning cross.
void draw_ray(ImDrawList& list, ImVec2 at, std::size_t wavelength) {
    const float r = grid(0.55F);
    const float width = std::max(1.0F, grid(0.3F));
    const ImU32 ink = colour(colour_roles.at(wavelength), 0.85F);
    if (wavelength == primary_wavelength) {
        list.AddCircleFilled(at, r * 0.75F, ink);
    } else if (wavelength == 0) {
        list.AddLine({at.x - r, at.y}, {at.x + r, at.y}, ink, width);
        list.AddLine({at.x, at.y - r}, {at.x, at.y + r}, ink, width);
    } else {
        list.AddLine({at.x - r, at.y - r}, {at.x + r, at.y + r}, ink, width);
        list.AddLine({at.x - r, at.y + r}, {at.x + r, at.y - r}, ink, width);
    }
}

// Half the width of all spot squares, µm: no spot is cut, the Airy ring is never tiny alone.
double spot_reach(const ImageRows& rows) {
    double reach = 1.6 * rows.airy_radius;
    for (const EyeImageRows& eye : rows.eyes) {
        for (const ImagePointRows& point : eye.points)
            reach = std::max(reach, 1.08 * point.widest);
    }
    return reach;
}

void draw_spot(const Ui& ui,
               const ImageRows& rows,
               const EyeImageRows& eye,
               std::size_t which,
               const Area& area) {
    const ImagePointRows& point = eye.points.at(which);
    const std::string id = id_of(eye, point_ids.at(which));
    ImGui::SetCursorScreenPos(area.corner());
    ImGui::InvisibleButton(id.c_str(), area.size());
    const std::string help = fmt::format(
        "{}: where the rays of one star land at best focus. + blue 486 nm, • green 546 nm, × red "
        "656 nm. The ring is the Airy disc, {:.1f} µm in radius: a spot inside it is as sharp as "
        "the "
        "aperture allows.",
        point.name, rows.airy_radius);
    ui.describe(id, point.name, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float side = area.width;
    const ImVec2 middle{area.left + side / 2, area.top + side / 2};
    const ImVec2 high{area.left + side, area.top + side};
    list.AddRectFilled(area.corner(), high, colour(Tone::ground), grid(0.5F));
    const float scale = side / 2 / static_cast<float>(spot_reach(rows));
    list.PushClipRect(area.corner(), high, true);
    // Red first: the few weighty green dots stay on top.
    for (const std::size_t w : std::array<std::size_t, 3>{2, 0, 1}) {
        for (const glm::dvec2& at : point.spots.at(w)) {
            draw_ray(list,
                     {middle.x + static_cast<float>(at.x) * scale,
                      middle.y - static_cast<float>(at.y) * scale},
                     w);
        }
    }
    list.PopClipRect();
    list.AddCircle(middle, static_cast<float>(rows.airy_radius) * scale, colour(Tone::text), 0,
                   std::max(1.0F, grid(0.4F)));
    std::string word = fmt::format("{} {}", name_of(eye.eye), point_words.at(which));
    if (text_width("right edge") > side)  // the colour and the order still tell the eye
        word = fmt::format("{} {}", eye.eye == Eye::left ? "L" : "R", point_words.at(which));
    text_at(list, {middle.x - text_width(word) / 2, high.y + grid(0.5F)}, word,
            text_colour(eye.role));
}

void draw_curve(
    ImDrawList& list, const Area& plot, const std::vector<double>& share, ImU32 ink, bool dashed) {
    const auto at = [&](std::size_t i) {
        const auto x = static_cast<float>(i) / static_cast<float>(share.size() - 1);
        return ImVec2{plot.left + plot.width * x,
                      plot.bottom()
                          - plot.height * static_cast<float>(std::clamp(share[i], 0.0, 1.0))};
    };
    for (std::size_t i = 0; i + 1 < share.size(); ++i) {
        if (dashed) {
            dashed_line(list, at(i), at(i + 1), ink, std::max(1.0F, grid(0.3F)));
        } else {
            list.AddLine(at(i), at(i + 1), ink, grid(0.5F));
        }
    }
}

// How much light lies within a circle: perfect image, on axis and at the edge.
void draw_energy(const Ui& ui, const ImageRows& rows, const EyeImageRows& eye, const Area& area) {
    const std::string id = id_of(eye, "energy");
    ImGui::SetCursorScreenPos(area.corner());
    ImGui::InvisibleButton(id.c_str(), area.size());
    constexpr const char* help =
        "Share of a star's light inside a circle, against the circle's radius, by summing waves "
        "over all rays. Grey: a perfect image. Solid: on axis. Dashed: at the edge of the field. "
        "The upright line is the Airy disc's radius.";
    ui.describe(id, "Light within a circle", help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    const Area plot{area.left, area.top, area.width, area.height - line - grid(0.5F)};
    list.AddRectFilled(plot.corner(), {plot.right(), plot.bottom()}, colour(Tone::ground),
                       grid(0.5F));
    const double reach = rows.radii.back();
    const float disc = plot.left + plot.width * static_cast<float>(rows.airy_radius / reach);
    list.AddLine({disc, plot.top}, {disc, plot.bottom()}, colour(Tone::text_dim, 0.5F));
    draw_curve(list, plot, rows.perfect_energy, colour(Tone::text_dim), false);
    if (eye.points[1].is_formed)
        draw_curve(list, plot, eye.points[1].energy, colour(eye.role), true);
    if (eye.points[0].is_formed)
        draw_curve(list, plot, eye.points[0].energy, colour(eye.role), false);
    text_ending_at(list, {plot.right() - grid(1), plot.bottom() - line},
                   shortened("light in a circle", plot.right() - disc - grid(2)),
                   colour(Tone::text_dim));
    text_at(list, {plot.left, plot.bottom() + grid(0.5F)}, "0", colour(Tone::text_dim));
    text_ending_at(list, {plot.right(), plot.bottom() + grid(0.5F)},
                   format_number(reach, 0) + " µm", colour(Tone::text_dim));
}

void draw_values(const Ui& ui, const ImageRows& rows) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float width = ImGui::GetContentRegionAvail().x;
    const float unit_room = text_width("mm") + grid(1);
    const float column = std::min(grid(17), (width - unit_room) / 6);
    const float line = ImGui::GetTextLineHeight() + grid(0.5F);
    const auto end_of = [&](float left, std::size_t place) {
        return left + width - unit_room - static_cast<float>(3 - place) * column;
    };
    const ImVec2 head = ImGui::GetCursorScreenPos();
    for (std::size_t place = 0; place < 4; ++place) {
        text_ending_at(list, {end_of(head.x, place), head.y}, point_words.at(place % 2),
                       text_colour(rows.eyes.at(place / 2).role));
    }
    text_at(list, head, "Left and right eye", colour(Tone::text_dim));
    ImGui::Dummy({1, line});
    const auto& first = rows.eyes[0].points[0].values;
    for (std::size_t i = 0; i < first.size(); ++i) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const std::string id = "image_quality/value/" + std::to_string(i);
        ImGui::InvisibleButton(id.c_str(), {width, line});
        ui.describe(id, first[i].label, first[i].help);
        for (std::size_t place = 0; place < 4; ++place) {
            const EyeImageRows& eye = rows.eyes.at(place / 2);
            text_ending_at(list, {end_of(low.x, place), low.y},
                           typeset(eye.points.at(place % 2).values.at(i).value),
                           text_colour(eye.role), TextFace::bold);
        }
        text_at(list, {low.x + width - unit_room + grid(1), low.y}, first[i].unit,
                colour(Tone::text_dim));
        text_at(list, low, shortened(first[i].label, end_of(low.x, 0) - column - low.x + grid(3)),
                colour(Tone::text_dim));
    }
}

constexpr float wide_panel = 140;  // grid steps from which the table stands beside the plots

// Four spots in a row; the light curves beside them where there is room, else below.
void draw_plots(const Ui& ui, const ImageRows& rows, float width, bool is_wide) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float line = ImGui::GetTextLineHeight();
    const float gap = grid(1.5F);
    const float side = std::min(grid(34), is_wide ? width / 7 : (width - 3 * gap) / 4);
    float left = low.x;
    for (const EyeImageRows& eye : rows.eyes) {
        for (std::size_t which = 0; which < 2; ++which, left += side + gap)
            draw_spot(ui, rows, eye, which, {left, low.y, side, side + line + grid(0.5F)});
    }
    float top = low.y;
    float height = side + line + grid(0.5F);
    if (!is_wide) {
        left = low.x;
        top += side + line + grid(2);
        height = grid(16) + line;
    }
    const float curve = (low.x + width - left - gap) / 2;
    for (const EyeImageRows& eye : rows.eyes) {
        draw_energy(ui, rows, eye, {left, top, curve, height});
        left += curve + gap;
    }
    ImGui::SetCursorScreenPos({low.x, top + height + grid(1)});
    dim_text("Rays at best focus: + blue, • green, × red; ring: Airy disc.");
}

}  // namespace

void draw_image_quality_panel(const Ui& ui) {
    const ImageRows rows = image_quality_rows(*ui.report);
    wrapped_text(rows.sentence, colour(Tone::text));
    ui.note("image_quality/sentence", rows.sentence);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, grid(0.5F)});
    const float width = ImGui::GetContentRegionAvail().x;
    const bool is_wide = width > grid(wide_panel);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float plots = is_wide ? std::floor(width * 0.62F) : width;
    draw_plots(ui, rows, plots, is_wide);
    if (is_wide) {
        ImGui::SetCursorScreenPos({low.x + plots + grid(4), low.y});
        ImGui::BeginChild("image_quality/table",
                          {width - plots - grid(4), ImGui::GetContentRegionAvail().y},
                          ImGuiChildFlags_None, ImGuiWindowFlags_NavFlattened);
        draw_values(ui, rows);
        ImGui::EndChild();
    } else {
        draw_values(ui, rows);
    }
    ImGui::PopStyleVar();
}

}  // namespace beamfork
