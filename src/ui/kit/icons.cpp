#include "ui/kit/icons.hpp"

#include <cmath>
#include <initializer_list>
#include <numbers>

namespace beamfork {

namespace {

// A pen on a square whose half side is 1.
struct Pen {
    ImDrawList& list;
    ImVec2 centre;
    float half;
    ImU32 ink;
    float width;

    [[nodiscard]] ImVec2 at(float x, float y) const {
        return {centre.x + x * half, centre.y + y * half};
    }
    void stroke(std::initializer_list<ImVec2> points) const {
        for (const ImVec2 point : points)
            list.PathLineTo(at(point.x, point.y));
        list.PathStroke(ink, 0, width);
    }
    void arc(float radius, float from_turn, float to_turn) const {
        constexpr float turn = 2 * std::numbers::pi_v<float>;
        list.PathArcTo(centre, radius * half, from_turn * turn, to_turn * turn, 24);
        list.PathStroke(ink, 0, width);
    }
    void head(ImVec2 a, ImVec2 b, ImVec2 c) const {
        list.AddTriangleFilled(at(a.x, a.y), at(b.x, b.y), at(c.x, c.y), ink);
    }
};

void draw_turn(const Pen& pen, float side) {
    pen.stroke({{side * -0.5F, -0.3F}, {side * 0.25F, -0.3F}});
    pen.list.PathLineTo(pen.at(side * 0.25F, -0.3F));
    for (int i = 0; i <= 12; ++i) {
        const float angle = std::numbers::pi_v<float> * (static_cast<float>(i) / 12 - 0.5F);
        pen.list.PathLineTo(
            pen.at(side * (0.25F + 0.5F * std::cos(angle)), 0.2F + 0.5F * std::sin(angle)));
    }
    pen.list.PathLineTo(pen.at(side * -0.35F, 0.7F));
    pen.list.PathStroke(pen.ink, 0, pen.width);
    pen.head({side * -0.95F, -0.3F}, {side * -0.35F, -0.75F}, {side * -0.35F, 0.15F});
}

void draw_book(const Pen& pen) {
    pen.stroke({{0, -0.5F}, {0, 0.75F}});
    for (const float side : {-1.0F, 1.0F})
        pen.stroke({{0, -0.5F}, {side * 0.85F, -0.7F}, {side * 0.85F, 0.5F}, {0, 0.75F}});
}

}  // namespace

void draw_icon(ImDrawList& list, Icon icon, ImVec2 centre, float size, ImU32 ink) {
    const Pen pen{list, centre, size / 2, ink, std::max(1.2F, size * 0.11F)};
    switch (icon) {
    case Icon::undo: draw_turn(pen, 1); break;
    case Icon::redo: draw_turn(pen, -1); break;
    case Icon::up: pen.stroke({{-0.6F, 0.3F}, {0, -0.35F}, {0.6F, 0.3F}}); break;
    case Icon::down:
    case Icon::fold: pen.stroke({{-0.6F, -0.3F}, {0, 0.35F}, {0.6F, -0.3F}}); break;
    case Icon::unfold: pen.stroke({{-0.3F, -0.6F}, {0.35F, 0}, {-0.3F, 0.6F}}); break;
    case Icon::add:
        pen.stroke({{-0.7F, 0}, {0.7F, 0}});
        pen.stroke({{0, -0.7F}, {0, 0.7F}});
        break;
    case Icon::remove:
        pen.stroke({{-0.75F, -0.5F}, {0.75F, -0.5F}});
        pen.stroke({{-0.25F, -0.55F}, {-0.25F, -0.8F}, {0.25F, -0.8F}, {0.25F, -0.55F}});
        pen.stroke({{-0.55F, -0.5F}, {-0.45F, 0.8F}, {0.45F, 0.8F}, {0.55F, -0.5F}});
        break;
    case Icon::duplicate:
        list.AddRect(pen.at(-0.75F, -0.75F), pen.at(0.3F, 0.3F), ink, 0, 0, pen.width);
        pen.stroke(
            {{0.5F, -0.25F}, {0.75F, -0.25F}, {0.75F, 0.75F}, {-0.25F, 0.75F}, {-0.25F, 0.5F}});
        break;
    case Icon::reset:
        pen.arc(0.62F, -0.15F, 0.62F);
        pen.head({0.1F, -0.62F}, {0.95F, -0.75F}, {0.62F, 0.05F});
        break;
    case Icon::close:
        pen.stroke({{-0.55F, -0.55F}, {0.55F, 0.55F}});
        pen.stroke({{0.55F, -0.55F}, {-0.55F, 0.55F}});
        break;
    case Icon::caution:
        list.AddTriangle(pen.at(0, -0.8F), pen.at(0.9F, 0.75F), pen.at(-0.9F, 0.75F), ink,
                         pen.width);
        pen.stroke({{0, -0.25F}, {0, 0.25F}});
        list.AddCircleFilled(pen.at(0, 0.5F), pen.width * 0.6F, ink);
        break;
    case Icon::widen:
        pen.stroke({{-0.35F, -0.5F}, {-0.85F, 0}, {-0.35F, 0.5F}});
        pen.stroke({{0.35F, -0.5F}, {0.85F, 0}, {0.35F, 0.5F}});
        pen.stroke({{-0.8F, 0}, {0.8F, 0}});
        break;
    case Icon::narrow:
        pen.stroke({{-0.85F, -0.5F}, {-0.35F, 0}, {-0.85F, 0.5F}});
        pen.stroke({{0.85F, -0.5F}, {0.35F, 0}, {0.85F, 0.5F}});
        pen.stroke({{0, -0.8F}, {0, 0.8F}});
        break;
    case Icon::book: draw_book(pen); break;
    case Icon::more:
        for (const float x : {-0.7F, 0.0F, 0.7F})
            list.AddCircleFilled(pen.at(x, 0), pen.width * 0.85F, ink);
        break;
    }
}

void draw_sign(ImDrawList& list, FindingSign sign, ImVec2 centre, float size, ImU32 ink) {
    const Pen pen{list, centre, size / 2, ink, std::max(1.5F, size * 0.17F)};
    switch (sign) {
    case FindingSign::cross:
        pen.stroke({{-0.65F, -0.65F}, {0.65F, 0.65F}});
        pen.stroke({{0.65F, -0.65F}, {-0.65F, 0.65F}});
        break;
    case FindingSign::triangle: pen.head({0, -0.8F}, {0.9F, 0.7F}, {-0.9F, 0.7F}); break;
    case FindingSign::dot: list.AddCircleFilled(centre, size * 0.22F, ink); break;
    case FindingSign::tick: pen.stroke({{-0.7F, 0.05F}, {-0.2F, 0.55F}, {0.7F, -0.5F}}); break;
    }
}

}  // namespace beamfork
