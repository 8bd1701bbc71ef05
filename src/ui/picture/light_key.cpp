#include "ui/picture/light_key.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "scene/picture/light_arrival.hpp"
#include "scene/picture/pupil_paint.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A line of the key: words, in front of them a lamp where one is told of.
struct KeyLine {
    std::string words;
    bool is_title = false;
    std::optional<ColourRole> lamp{};
    float glow = 0;  ///< of the lamp, 0 .. 1
};

struct Key {
    std::vector<KeyLine> lines;
    bool has_disc = false;
};

std::array<KeyLine, 2> eye_lines(const LightArrival& arrival, const ViewOptions& options) {
    const ArrivalWords words = arrival_words(arrival, options.light_speed_mm_s);
    const auto glow = [&](std::size_t side) {
        return glow_at(arrival.at_stop_mm.at(side), options.light_front_mm);
    };
    return {KeyLine{"to the left eye " + words.left, false, ColourRole::left_arm, glow(0)},
            KeyLine{"to the right eye " + words.right, false, ColourRole::right_arm, glow(1)}};
}

Key key_of(const LightKeyLook& look) {
    Key key;
    if (look.options.apart > 0) {
        key.lines = {{"Pulled apart", true}, {"Light is drawn only while the parts are together."}};
        return key;
    }
    if (!look.options.light) return key;
    if (look.options.paint_pupil) {
        key.has_disc = true;
        key.lines = {{"Painted by where it came in", true}, {"The objective, seen from behind"}};
    }
    if (!look.options.light_moves) return key;
    const ArrivalWords words = arrival_words(look.frame.arrival, look.options.light_speed_mm_s);
    key.lines.push_back({words.pace, true});
    if (!look.frame.arrival.is_known) return key;
    key.lines.push_back({"Optical path from the splitter"});
    for (KeyLine& line : eye_lines(look.frame.arrival, look.options))
        key.lines.push_back(std::move(line));
    key.lines.push_back({words.verdict});
    return key;
}

ImU32 ink_of_key(const ViewOptions& options, bool is_dim) {
    if (options.on_light_ground()) return IM_COL32(24, 32, 42, 255);
    return colour(is_dim ? Tone::text_dim : Tone::text);
}

float disc_size() { return 4.5F * ImGui::GetTextLineHeight(); }

ImU32 zone_colour(PupilPlace place) {
    const std::uint32_t hex = pupil_zone(place).srgb_hex;
    return IM_COL32(hex >> 16U & 255U, hex >> 8U & 255U, hex & 255U, 255);
}

// A quarter of the ring about the middle zone, from its right end turning to the top.
void draw_quarter(ImDrawList& list, ImVec2 middle, float radius, PupilPlace place) {
    constexpr float quarter = 1.5707963F;
    const float centre = place == PupilPlace::right    ? 0
                         : place == PupilPlace::bottom ? quarter
                         : place == PupilPlace::left   ? 2 * quarter
                                                       : 3 * quarter;
    list.PathClear();
    list.PathLineTo(middle);
    list.PathArcTo(middle, radius, centre - quarter / 2, centre + quarter / 2, 24);
    list.PathFillConvex(zone_colour(place));
}

void draw_disc(ImDrawList& list, ImVec2 low) {
    const float radius = 0.5F * disc_size();
    const ImVec2 middle{low.x + radius, low.y + radius};
    for (const PupilPlace place :
         {PupilPlace::top, PupilPlace::right, PupilPlace::left, PupilPlace::bottom})
        draw_quarter(list, middle, radius, place);
    list.AddCircleFilled(middle, middle_zone_radius * radius, zone_colour(PupilPlace::middle), 48);
    const float gap = std::max(1.0F, grid(0.35F));
    list.AddCircle(middle, middle_zone_radius * radius, colour(Tone::ground), 48, gap);
    list.AddCircle(middle, radius, colour(Tone::text_dim), 64, gap);
}

ImU32 lamp_colour(ColourRole role, float glow) {
    const std::uint32_t hex = srgb_hex(role);
    const float share = 0.18F + 0.82F * glow;
    const auto channel = [&](unsigned shift) {
        return static_cast<int>(static_cast<float>(hex >> shift & 255U) * share);
    };
    return IM_COL32(channel(16), channel(8), channel(0), 255);
}

void draw_line(
    ImDrawList& list, ImVec2 at, const KeyLine& line, const ViewOptions& options, float room) {
    const float height = ImGui::GetTextLineHeight();
    if (line.lamp) {
        const float radius = 0.32F * height;
        const ImVec2 middle{at.x + radius, at.y + height / 2};
        list.AddCircleFilled(middle, radius, lamp_colour(*line.lamp, line.glow), 24);
        list.AddCircle(middle, radius, ink_of_key(options, true), 24, 1);
        at.x += height;
        room -= height;
    }
    text_at(list, at, shortened(line.words, room), ink_of_key(options, false),
            line.is_title ? TextFace::bold : TextFace::regular);
}

float width_of(const KeyLine& line) {
    return text_width(line.words, line.is_title ? TextFace::bold : TextFace::regular)
           + (line.lamp ? ImGui::GetTextLineHeight() : 0);
}

// Room ahead of the second topic's title.
float between_topics(const Key& key) {
    const auto titles = std::count_if(key.lines.begin(), key.lines.end(),
                                      [](const KeyLine& line) { return line.is_title; });
    return titles > 1 ? grid(2) : 0;
}

// A ring about each field stop that opens and fades when a packet has come.
void draw_arrivals(ImDrawList& list, ImVec2 origin, Viewport viewport, const LightKeyLook& look) {
    const ViewOptions& options = look.options;
    const bool is_told =
        options.light && options.light_moves && options.apart == 0 && look.frame.arrival.is_known;
    if (!is_told) return;
    for (std::size_t side = 0; side < 2; ++side) {
        const float glow = glow_at(look.frame.arrival.at_stop_mm.at(side), options.light_front_mm);
        const auto at = project(look.camera, look.frame.arrival.stop.at(side), viewport);
        if (!at || glow < 0.03F) continue;
        const std::uint32_t hex =
            srgb_hex(side == 0 ? ColourRole::left_arm : ColourRole::right_arm);
        list.AddCircle(
            {origin.x + at->x, origin.y + at->y}, grid(3) + grid(7) * (1 - glow),
            IM_COL32(hex >> 16U & 255U, hex >> 8U & 255U, hex & 255U, static_cast<int>(255 * glow)),
            48, std::max(1.5F, grid(0.6F)));
    }
}

}  // namespace

std::optional<PixelBox>
draw_light_key(ImDrawList& list, ImVec2 origin, Viewport viewport, const LightKeyLook& look) {
    draw_arrivals(list, origin, viewport, look);
    const Key key = key_of(look);
    if (key.lines.empty()) return std::nullopt;
    const float line = ImGui::GetTextLineHeight() + grid(0.75F);
    const float edge = grid(2);
    const float beside = key.has_disc ? disc_size() + grid(2.5F) : 0;
    float words = 0;
    for (const KeyLine& one : key.lines)
        words = std::max(words, width_of(one));
    words = std::min(words, std::max(0.0F, viewport.width - beside - 4 * edge));
    const float height = std::max(line * static_cast<float>(key.lines.size()) + between_topics(key),
                                  key.has_disc ? disc_size() : 0.0F);
    const PixelBox box{{edge, edge}, {edge + beside + words + 2 * edge, edge + height + 2 * edge}};
    const ImVec2 low{origin.x + box.low.x, origin.y + box.low.y};
    list.AddRectFilled(low, {origin.x + box.high.x, origin.y + box.high.y},
                       look.options.on_light_ground() ? IM_COL32(255, 255, 255, 225)
                                                      : colour(Tone::ground, 0.8F),
                       grid(1.5F));
    if (key.has_disc) draw_disc(list, {low.x + edge, low.y + edge});
    ImVec2 at{low.x + edge + beside, low.y + edge};
    for (std::size_t i = 0; i < key.lines.size(); ++i) {
        if (i > 0 && key.lines[i].is_title) at.y += between_topics(key);
        draw_line(list, at, key.lines[i], look.options, words);
        at.y += line;
    }
    return box;
}

}  // namespace beamfork
