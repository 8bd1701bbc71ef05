#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/unfolded_path/unfolded_path_picture.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t named_jaws = 3;

std::string without_part(const std::string& name) {
    const auto colon = name.find(": ");
    return colon == std::string::npos ? name : name.substr(colon + 2);
}

void add_focus_words(std::vector<PathWord>& words,
                     const PathCanvas& canvas,
                     const UnfoldedPathRows& rows) {
    const bool agree = rows.eyes[0].focus.text == rows.eyes[1].focus.text;
    for (const EyeTrack& track : rows.eyes) {
        if (!shows(canvas.eyes, track.eye)) continue;
        const FocusMark& focus = track.focus;
        const bool is_told = agree || canvas.eyes != UnfoldedEyes::both;
        const std::string text =
            is_told ? focus.text : fmt::format("{}: {}", name_of(track.eye), focus.text);
        const ImU32 ink = text_colour(focus.is_in_focus ? ColourRole::good : ColourRole::shortfall);
        const float top = canvas.area.top + (focus.is_in_focus ? 0 : grid(1));
        words.push_back({text, text, ink, {canvas.x((focus.real + focus.wanted) / 2), top}});
        if (agree) return;
    }
}

}  // namespace

std::vector<PathWord> path_words(const PathCanvas& canvas, const UnfoldedPathRows& rows) {
    std::vector<PathWord> words;
    add_focus_words(words, canvas, rows);
    std::vector<Eye> eyes(both_eyes.begin(), both_eyes.end());
    std::erase_if(eyes, [&](Eye eye) { return !shows(canvas.eyes, eye); });
    for (const auto& [eye, jaw] : worst_jaws(rows, eyes, named_jaws)) {
        const std::string taken =
            fmt::format(" {}{:.0f} %", jaw.loss.is_leak ? "leaks " : "−", 100 * jaw.loss.share);
        const double edge = canvas.eyes == UnfoldedEyes::right ? jaw.below.y : jaw.above.y;
        words.push_back({jaw.name + taken, without_part(jaw.name) + taken,
                         text_colour(ColourRole::clipped),
                         canvas.at(jaw.above.x, drawn_sign(eye) * edge)});
    }
    std::erase_if(words, [&](const PathWord& word) {
        return word.to.x < canvas.area.left || word.to.x > canvas.area.right();
    });
    return words;
}

namespace {

std::vector<LaneWord> lane_of(const std::vector<PathWord>& words, const Area& lane) {
    std::vector<LaneWord> widths;
    for (const PathWord& word : words)
        widths.push_back({word.to.x - lane.left, text_width(word.text)});
    return widths;
}

void shorten_to_fit(std::vector<PathWord>& words, const Area& lane, float gap) {
    const auto fits = [&] {
        double sum = -gap;
        for (const LaneWord& word : lane_of(words, lane))
            sum += word.width + gap;
        return sum <= lane.width;
    };
    for (auto word = words.rbegin(); word != words.rend() && !fits(); ++word)
        word->text = word->brief;
    while (words.size() > 1 && !fits())
        words.pop_back();
}

}  // namespace

void draw_path_words(const PathCanvas& canvas, std::vector<PathWord> words, const Area& lane) {
    const float gap = grid(3);
    shorten_to_fit(words, lane, gap);
    std::stable_sort(words.begin(), words.end(),
                     [](const PathWord& a, const PathWord& b) { return a.to.x < b.to.x; });
    const auto places = lane_places(lane_of(words, lane), lane.width, gap);
    const float line = ImGui::GetTextLineHeight();
    const float top = lane.bottom() - line - grid(1);
    for (std::size_t i = 0; i < words.size(); ++i) {
        const PathWord& word = words[i];
        const float left = lane.left + static_cast<float>(places[i]);
        const float width = std::min(text_width(word.text), lane.width);
        text_at(canvas.list, {left, top}, shortened(word.text, lane.width), word.ink);
        const float under = std::clamp(word.to.x, left + grid(1), left + width - grid(1));
        const float picture = std::min(canvas.area.top, word.to.y);
        const float thin = std::max(1.0F, grid(0.25F));
        canvas.list.AddLine({under, top + line}, {word.to.x, picture}, word.ink, thin);
        canvas.list.AddLine({word.to.x, picture}, word.to, word.ink, thin);
    }
}

namespace {

void draw_travel_bar(const PathCanvas& canvas, const DrawtubeZone& zone, const Area& lane) {
    ImDrawList& list = canvas.list;
    const float thick = grid(1.25F);
    const float low = canvas.x(zone.racked_in);
    const float high = canvas.x(zone.racked_out);
    const float middle = lane.top + thick / 2 + grid(0.5F);
    list.AddRectFilled({low, middle - thick / 2}, {high, middle + thick / 2},
                       colour(Tone::raised_hot), grid(0.5F));
    list.AddRect({low, middle - thick / 2}, {high, middle + thick / 2},
                 colour(Tone::text_dim, 0.7F), grid(0.5F));
    const float at = canvas.x(zone.present);
    list.AddRectFilled({at - grid(0.5F), middle - grid(1.5F)},
                       {at + grid(0.5F), middle + grid(1.5F)}, colour(Tone::text));
    if (!zone.shows_wanted) return;
    const float wanted = canvas.x(zone.wanted);
    dashed_line(list, {at, middle}, {wanted, middle}, colour(zone.role),
                std::max(1.0F, grid(0.3F)));
    const float r = grid(1.25F);
    list.AddQuadFilled({wanted - r, middle}, {wanted, middle - r}, {wanted + r, middle},
                       {wanted, middle + r}, colour(zone.role));
}

}  // namespace

void draw_path_scale(const PathCanvas& canvas, const UnfoldedPathRows& rows, const Area& lane) {
    ImDrawList& list = canvas.list;
    list.PushClipRect(lane.corner(), {lane.right(), lane.bottom()}, true);
    const double step = tick_step(canvas.view, text_width("−1000") + grid(3));
    const double first = std::ceil((canvas.view.left - rows.zero) / step);
    const float top = lane.top + grid(2.25F);
    const float line = ImGui::GetTextLineHeight();
    for (double i = first; canvas.x(rows.zero + i * step) < lane.right(); ++i) {
        const float x = canvas.x(rows.zero + i * step);
        list.AddLine({x, top}, {x, top + grid(1.25F)}, colour(Tone::text_dim), 1);
        std::string number = typeset(format_number(i * step, step < 1 ? 1 : 0));
        if (i == 0) number += " mm";
        const float half = text_width(number) / 2;
        if (x - half < lane.left || x + half > lane.right()) continue;
        text_at(list, {x - half, lane.bottom() - line}, number, colour(Tone::text_dim));
    }
    draw_travel_bar(canvas, rows.drawtube, lane);
    list.PopClipRect();
}

}  // namespace beamfork
