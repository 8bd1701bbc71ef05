#include "trace/pupil_edges.hpp"

#include <cmath>

namespace beamfork {

namespace {

// A plane's edges are told in the straightened path's own axes, or in those of a curved element.
struct EdgeFrame {
    glm::dmat3 axes{1.0};
    Point origin{0.0};
    [[nodiscard]] Gauge place(const Direction& along, double from) const {
        const Direction turned = axes * along;
        return {Gauge::Of::place, turned, from + glm::dot(turned, origin)};
    }
};

class EdgeCollector {
public:
    std::optional<PupilEdges> run(const StraightPath& path) {
        for (const StraightSection& section : path.sections) {
            for (const StraightPlane& plane : section.passed)
                add(plane);
            std::visit([&](const auto& bend) { add_bend(bend); }, section.bend);
        }
        if (!is_described_) return std::nullopt;
        return std::move(found_);
    }

private:
    void add_bend(const PlaneRefraction& face) {
        add(face.plane);
        if (face.more >= 0) return;
        PupilEdge leak = edge(face.plane, PupilBound::Shape::half);
        leak.is_leak = true;
        leak.u = {Gauge::Of::more_than, face.plane.normal, std::sqrt(-face.more)};
        found_.edges.push_back(leak);
    }
    void add_bend(const IdealObjective& lens) { add(lens.plane); }
    void add_bend(const IdealThinLens& lens) { add(lens.plane); }
    void add_bend(const IdealPlate& plate) { add(plate.plane); }
    void add_bend(const CurvedMirror& mirror) {
        add(mirror.plane, {mirror.frame.axes, mirror.frame.origin});
    }
    void add_bend(const RoofFaces& roof) {
        roof_ = found_.roofs.size();
        found_.roofs.push_back(roof);
        for (const auto& [plane, hit] :
             {std::pair{&roof.first, RoofHit::first}, std::pair{&roof.second, RoofHit::second},
              std::pair{&roof.second_first, RoofHit::second_first},
              std::pair{&roof.first_second, RoofHit::first_second}}) {
            hit_ = hit;
            add(*plane);
        }
        roof_.reset();
    }
    void add_bend(const PlateStack& /*stack*/) { is_described_ = false; }
    void add_bend(const LastPlane& /*last*/) {}  // where light is counted: nothing ends there

    void add(const StraightPlane& plane, const EdgeFrame& frame = {}) {
        switch (plane.edge) {
        case EdgeShape::circle: add_circle(plane, frame); break;
        case EdgeShape::ellipse: add_round(plane, frame); break;
        case EdgeShape::rectangle: add_rectangle(plane, frame); break;
        case EdgeShape::polygon: add_polygon(plane, frame); break;
        case EdgeShape::none:
            if (plane.is_obstruction) is_described_ = false;
            break;
        }
        if (!plane.reflects_totally) return;
        PupilEdge leak = edge(plane, PupilBound::Shape::half);
        leak.is_leak = true;
        leak.u = {Gauge::Of::no_more_than, frame.axes * plane.normal,
                  std::sqrt(std::max(plane.steepest, 0.0))};
        found_.edges.push_back(leak);
    }

    [[nodiscard]] PupilEdge edge(const StraightPlane& plane, PupilBound::Shape shape) const {
        PupilEdge made;
        made.surface = plane.surface;
        made.shape = shape;
        made.roof = roof_;
        made.hit = hit_;
        return made;
    }

    void add_circle(StraightPlane plane, const EdgeFrame& frame) {
        const Pose facing =
            pose_facing(plane.centre, plane.normal,
                        std::abs(plane.normal.x) < 0.7 ? Direction{1, 0, 0} : Direction{0, 1, 0});
        const double radius = std::sqrt(plane.radius_squared);
        plane.u = facing.x() / radius;
        plane.v = facing.y() / radius;
        plane.from_u = glm::dot(plane.u, plane.centre);
        plane.from_v = glm::dot(plane.v, plane.centre);
        add_round(plane, frame);
    }
    void add_round(const StraightPlane& plane, const EdgeFrame& frame) {
        PupilEdge round =
            edge(plane, plane.is_obstruction ? PupilBound::Shape::block : PupilBound::Shape::disc);
        round.u = frame.place(plane.u, plane.from_u);
        round.v = frame.place(plane.v, plane.from_v);
        found_.edges.push_back(round);
    }
    // Light ends where along . place < from.
    void add_side(const StraightPlane& plane, const Gauge& side) {
        PupilEdge half = edge(plane, PupilBound::Shape::half);
        half.u = side;
        found_.edges.push_back(half);
    }
    void add_rectangle(const StraightPlane& plane, const EdgeFrame& frame) {
        if (plane.is_obstruction) is_described_ = false;
        for (const double sign : {1.0, -1.0}) {
            add_side(plane, frame.place(sign * plane.u, sign * plane.from_u - 1));
            add_side(plane, frame.place(sign * plane.v, sign * plane.from_v - 1));
        }
    }
    void add_polygon(const StraightPlane& plane, const EdgeFrame& frame) {
        if (plane.is_obstruction) is_described_ = false;
        for (const EdgeSide& side : plane.sides) {
            if (!runs_along_ridge(side)) add_side(plane, frame.place(side.along, side.from));
        }
    }
    // Where the faces of a roof end at each other no light is lost, but the order in which they are met changes.
    [[nodiscard]] bool runs_along_ridge(const EdgeSide& side) const {
        if (!roof_) return false;
        const RoofFaces& roof = found_.roofs[*roof_];
        const Direction& a = roof.first.normal;
        const Direction& b = roof.second.normal;
        const Direction ridge = glm::cross(a, b);
        const Point on_ridge =
            (roof.first.offset * glm::cross(b, ridge) + roof.second.offset * glm::cross(ridge, a))
            / glm::dot(ridge, ridge);
        constexpr double close = 1e-6;  // mm, of a side as long as `along`
        const double length = glm::length(side.along);
        return std::abs(glm::dot(side.along, glm::normalize(ridge))) < close * length
               && std::abs(glm::dot(side.along, on_ridge) - side.from) < close * length;
    }

    PupilEdges found_;
    bool is_described_ = true;
    std::optional<std::size_t> roof_;
    RoofHit hit_ = RoofHit::first;
};

}  // namespace

std::optional<PupilEdges> pupil_edges(const StraightPath& path) {
    return EdgeCollector().run(path);
}

}  // namespace beamfork
