// A line drawing as SVG text, for pages: shapes with classes, so that the page's style sheet gives them ink, dashes
// and a night variant. Well-formed XML whatever the words hold.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <glm/glm.hpp>

namespace beamfork {

/// Text with the characters that mean something to XML replaced, and those that it forbids or nobody sees as base/shown.hpp
/// shows them.
std::string xml_text(std::string_view text);

class SheetSvg {
public:
    using Spot = glm::dvec2;  ///< x to the right, y DOWN, in the drawing's own units
    using Spots = std::vector<Spot>;

    /// `title` is read out where a drawing cannot be seen. `key` makes its ids differ from other drawings'.
    SheetSvg(double width, double height, std::string_view key, std::string_view title);

    void line(Spot from, Spot to, std::string_view css);
    void path(const Spots& spots, std::string_view css, bool is_closed = false);
    void rect(Spot corner, Spot size, std::string_view css);
    void circle(Spot centre, double radius, std::string_view css);
    /// `anchor`: "start", "middle" or "end" of the words at that spot; y is their base line.
    void words(Spot at, std::string_view text, std::string_view css, std::string_view anchor);
    /// What is drawn until close() is cut off outside of that rectangle.
    void open_clip(Spot corner, Spot size);
    void open_group(std::string_view css);
    void close();
    /// A diamond, a cross or a ring about a spot: signs as in the 3D picture.
    void diamond(Spot centre, double radius, std::string_view css);
    void cross(Spot centre, double radius, std::string_view css);
    /// A line with its one head at `to`.
    void arrow(Spot from, Spot to, std::string_view css);

    /// The whole element; everything opened must be closed.
    [[nodiscard]] std::string text() const;

private:
    std::string body_;
    std::string head_;
    std::string key_;
    int clips_ = 0;
    int open_ = 0;
};

/// About how wide words are at that letter size: for leaving room, not for measuring. Mean advance of a sans serif
/// typeface, 0.55 of its size (common practice, no source).
double about_width(std::string_view text, double size);

}  // namespace beamfork
