#include "scene/sheet/sheet_svg.hpp"

#include <algorithm>
#include <cmath>

#include "base/contract.hpp"
#include "base/letters.hpp"
#include "base/shown.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Hundredths of a unit; a number that is not finite would spoil the page.
std::string coordinate(double value) {
    if (!std::isfinite(value)) return "0";
    std::string text = format_number(std::clamp(value, -1e6, 1e6), 2);
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string pair_of(SheetSvg::Spot spot) { return coordinate(spot.x) + ',' + coordinate(spot.y); }

}  // namespace

std::string xml_text(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    for (const char c : shown(text)) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        case '\'': out += "&#39;"; break;
        default: out += c;
        }
    }
    return out;
}

double about_width(std::string_view text, double size) {
    return 0.55 * size * static_cast<double>(letter_count(text));
}

SheetSvg::SheetSvg(double width, double height, std::string_view key, std::string_view title)
    : key_(key) {
    head_ = fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" "
                        "role=\"img\" aria-labelledby=\"{}-title\">\n<title id=\"{}-title\">{}"
                        "</title>\n",
                        coordinate(width), coordinate(height), key, key, xml_text(title));
}

void SheetSvg::line(Spot from, Spot to, std::string_view css) {
    body_ +=
        fmt::format("<line class=\"{}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>\n", css,
                    coordinate(from.x), coordinate(from.y), coordinate(to.x), coordinate(to.y));
}

void SheetSvg::path(const Spots& spots, std::string_view css, bool is_closed) {
    if (spots.size() < 2) return;
    body_ += fmt::format("<{} class=\"{}\" points=\"", is_closed ? "polygon" : "polyline", css);
    for (std::size_t i = 0; i < spots.size(); ++i)
        body_ += (i == 0 ? "" : " ") + pair_of(spots[i]);
    body_ += "\"/>\n";
}

void SheetSvg::rect(Spot corner, Spot size, std::string_view css) {
    const Spot low = glm::min(corner, corner + size);
    const Spot extent = glm::abs(size);
    body_ += fmt::format("<rect class=\"{}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>\n", css,
                         coordinate(low.x), coordinate(low.y), coordinate(extent.x),
                         coordinate(extent.y));
}

void SheetSvg::circle(Spot centre, double radius, std::string_view css) {
    body_ += fmt::format("<circle class=\"{}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n", css,
                         coordinate(centre.x), coordinate(centre.y), coordinate(radius));
}

void SheetSvg::words(Spot at,
                     std::string_view text,
                     std::string_view css,
                     std::string_view anchor) {
    body_ += fmt::format("<text class=\"{}\" x=\"{}\" y=\"{}\" text-anchor=\"{}\">{}</text>\n", css,
                         coordinate(at.x), coordinate(at.y), anchor, xml_text(text));
}

void SheetSvg::open_clip(Spot corner, Spot size) {
    const std::string id = fmt::format("{}-clip-{}", key_, ++clips_);
    const Spot low = glm::min(corner, corner + size);
    const Spot extent = glm::abs(size);
    body_ += fmt::format("<clipPath id=\"{}\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>"
                         "</clipPath>\n<g clip-path=\"url(#{})\">\n",
                         id, coordinate(low.x), coordinate(low.y), coordinate(extent.x),
                         coordinate(extent.y), id);
    ++open_;
}

void SheetSvg::open_group(std::string_view css) {
    body_ += fmt::format("<g class=\"{}\">\n", css);
    ++open_;
}

void SheetSvg::close() {
    BEAMFORK_EXPECTS(open_ > 0);
    body_ += "</g>\n";
    --open_;
}

void SheetSvg::diamond(Spot centre, double radius, std::string_view css) {
    path({centre - Spot(radius, 0), centre - Spot(0, radius), centre + Spot(radius, 0),
          centre + Spot(0, radius)},
         css, true);
}

void SheetSvg::cross(Spot centre, double radius, std::string_view css) {
    line(centre - Spot(radius), centre + Spot(radius), css);
    line(centre + Spot(-radius, radius), centre + Spot(radius, -radius), css);
}

void SheetSvg::arrow(Spot from, Spot to, std::string_view css) {
    const double length = glm::distance(from, to);
    if (length < 1e-6) return;
    line(from, to, css);
    const Spot along = (to - from) / length;
    const Spot across(-along.y, along.x);
    const double barb = std::min(5.0, length / 2);
    for (const double side : {0.5, -0.5})
        line(to, to + barb * (side * across - along), css);
}

std::string SheetSvg::text() const {
    BEAMFORK_EXPECTS(open_ == 0);
    return head_ + body_ + "</svg>\n";
}

}  // namespace beamfork
