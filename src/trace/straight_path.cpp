#include "trace/straight_path.hpp"

#include <cmath>

#include "trace/straight_plane.hpp"

namespace beamfork {

Isometry operator*(const Isometry& outer, const Isometry& inner) {
    return {outer.turn * inner.turn, outer.turn * inner.shift + outer.shift};
}

Isometry inverse(const Isometry& isometry) {
    const glm::dmat3 back = glm::transpose(isometry.turn);
    return {back, -(back * isometry.shift)};
}

Isometry mirror_image(const Point& at, const Direction& normal) {
    return {glm::dmat3{1.0} - 2.0 * glm::outerProduct(normal, normal),
            2 * glm::dot(at, normal) * normal};
}

double end_code(std::size_t surface, int fate) {
    return static_cast<double>(fates_per_surface * surface) + fate;
}

namespace {

// Unfolded axes come out of sines and cosines of 45 degrees: exact to a few units of the last place.
constexpr double straight_to = 1e-13;

ElementFrame element_frame(const StraightFrame& frame) {
    ElementFrame element;
    element.origin = frame.origin;
    element.is_upright = glm::length(frame.axes[2] - Direction{0, 0, 1}) < straight_to;
    element.axes = frame.axes;
    return element;
}

class Straightener {
public:
    Straightener(const EyePath& path, std::size_t wavelength)
        : path_(path), wavelength_(wavelength) {}

    std::optional<StraightPath> run() {
        if (!is_simple()) return std::nullopt;
        const auto& surfaces = path_.surfaces;
        result_.first_index = index_ = surfaces.front().index_before[wavelength_];
        start_section();
        for (std::size_t i = 0; i + 1 < surfaces.size(); ++i) {
            result_.straight_from_world.push_back(straight_);
            if (surfaces[i].is_roof) {
                if (i + 2 >= surfaces.size()) return std::nullopt;
                add_roof(i);
                ++i;
            } else {
                add(i);
            }
        }
        result_.straight_from_world.push_back(straight_);
        const std::size_t last = surfaces.size() - 1;
        const StraightFrame frame = frame_of(straight_, surfaces[last].world_from_surface);
        bend(
            LastPlane{plane_of(surfaces[last], frame, last, index_), frame.axes[0], frame.axes[1]});
        result_.sections.pop_back();
        result_.last_index = index_;
        return std::move(result_);
    }

private:
    [[nodiscard]] bool is_simple() const {
        if (path_.surfaces.empty() || !path_.surfaces.back().shape.is_plane()
            || path_.surfaces.back().is_roof)
            return false;
        double index = path_.surfaces.front().index_before[wavelength_];
        for (const PlacedSurface& surface : path_.surfaces) {
            const bool is_mirror = surface.kind == SurfaceKind::mirror
                                   || surface.kind == SurfaceKind::total_reflection;
            if (!surface.shape.is_plane() && (!is_mirror || surface.is_roof)) return false;
            if (surface.is_roof && !is_mirror) return false;
            if (surface.index_before[wavelength_] != index) return false;
            if (surface.kind == SurfaceKind::refraction) index = surface.index_after[wavelength_];
        }
        return true;
    }

    void start_section() { result_.sections.push_back({index_, {}, LastPlane{}}); }

    void bend(Bend bend) {
        result_.sections.back().bend = std::move(bend);
        start_section();
    }

    void add(std::size_t i) {
        const PlacedSurface& surface = path_.surfaces[i];
        const StraightFrame frame = frame_of(straight_, surface.world_from_surface);
        StraightPlane plane = plane_of(surface, frame, i, index_);
        switch (surface.kind) {
        case SurfaceKind::stop:
        case SurfaceKind::obstruction: pass(std::move(plane)); return;
        case SurfaceKind::refraction: refract(surface, std::move(plane)); return;
        case SurfaceKind::mirror:
        case SurfaceKind::total_reflection:
            if (surface.shape.is_plane()) {
                pass(std::move(plane));
            } else {
                bend(CurvedMirror{in_own_frame(surface, i), element_frame(frame),
                                  surface.shape.curvature, 1 + surface.shape.constant});
            }
            straight_ = mirror_image(frame.origin, frame.axes[2]) * straight_;
            return;
        case SurfaceKind::objective: bend(objective(surface, plane, frame)); return;
        case SurfaceKind::thin_lens: bend(thin_lens(surface, plane, frame)); return;
        case SurfaceKind::phase_plate:
            bend(IdealPlate{std::move(plane), element_frame(frame), surface.profile});
            return;
        }
    }

    void pass(StraightPlane plane) { result_.sections.back().passed.push_back(std::move(plane)); }

    void refract(const PlacedSurface& surface, StraightPlane plane) {
        const double after = surface.index_after[wavelength_];
        const double more = after * after - index_ * index_;
        index_ = after;
        bend(PlaneRefraction{std::move(plane), more});
    }

    // The edge of a curved mirror is asked about where light meets it, in the mirror's own axes.
    [[nodiscard]] StraightPlane in_own_frame(const PlacedSurface& surface, std::size_t i) const {
        return plane_of(surface, {}, i, index_);
    }

    [[nodiscard]] IdealObjective objective(const PlacedSurface& surface,
                                           const StraightPlane& plane,
                                           const StraightFrame& frame) const {
        const double f = surface.focal_length[wavelength_];
        const double u = path_.object_distance;
        IdealObjective bend{plane, element_frame(frame), std::isinf(u), index_, f, f, 0};
        if (!bend.is_far) {
            bend.object = u;
            bend.image = u * f / (u - f);
        }
        return bend;
    }

    [[nodiscard]] IdealThinLens thin_lens(const PlacedSurface& surface,
                                          const StraightPlane& plane,
                                          const StraightFrame& frame) const {
        const double s = surface.object_distance;
        const double f = surface.focal_length[wavelength_];
        const double factor = 1 + s / f;
        return {plane, element_frame(frame), index_, 1 / f, s, s / factor, 1 / factor - 1};
    }

    void add_roof(std::size_t i) {
        const PlacedSurface& a = path_.surfaces[i];
        const PlacedSurface& b = path_.surfaces[i + 1];
        const auto meet = [&](Isometry& straight, const PlacedSurface& face, std::size_t index) {
            const StraightFrame frame = frame_of(straight, face.world_from_surface);
            straight = mirror_image(frame.origin, frame.axes[2]) * straight;
            return plane_of(face, frame, index, index_);
        };
        RoofFaces roof;
        Isometry usual = straight_;
        roof.first = meet(usual, a, i);
        result_.straight_from_world.push_back(usual);
        roof.second = meet(usual, b, i + 1);
        Isometry other = straight_;
        roof.second_first = meet(other, b, i + 1);
        roof.first_second = meet(other, a, i);
        roof.correction = usual * inverse(other);
        straight_ = usual;
        bend(std::move(roof));
    }

    const EyePath& path_;
    std::size_t wavelength_;
    StraightPath result_;
    Isometry straight_;  ///< from the world, at the present place
    double index_ = 1;
};

}  // namespace

std::optional<StraightPath>
straightened(const EyePath& path, std::size_t wavelength, PlateForm plates) {
    auto straight = Straightener(path, wavelength).run();
    if (straight && plates == PlateForm::where_exact) stack_plates(*straight);
    return straight;
}

}  // namespace beamfork
