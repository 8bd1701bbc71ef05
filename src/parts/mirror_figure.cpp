#include "parts/mirror_figure.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

std::vector<std::string> mirror_figure_words() {
    return {"unknown",
            "spheres and corrector plate",
            "coma-free secondary and corrector plate",
            "spheres and meniscus",
            "paraboloid and hyperboloid",
            "coma-free pair of hyperboloids"};
}

FieldInfo mirror_figure_info() {
    FieldInfo info;
    info.key = "mirror_figure";
    info.label = "Figure of the mirrors";
    info.help =
        "How they are ground: it decides what focusing away from the stated back focus costs in "
        "sharpness; a clear plate or bowl of glass in front means spheres, and while it is unknown "
        "nothing is judged by it.";
    return info;
}

std::vector<MirrorFigure> known_mirror_figures() {
    return {MirrorFigure::spheres_with_plate, MirrorFigure::coma_free_with_plate,
            MirrorFigure::spheres_with_meniscus, MirrorFigure::paraboloid_hyperboloid,
            MirrorFigure::coma_free_hyperboloids};
}

bool has_front_plate(MirrorFigure figure) {
    return figure == MirrorFigure::spheres_with_plate
           || figure == MirrorFigure::coma_free_with_plate
           || figure == MirrorFigure::spheres_with_meniscus;
}

namespace {

// Light sent backwards from the design focus.
struct BackwardRay {
    Point at{0.0};
    Direction along{0, 0, -1};
    double path = 0;
};

void go(BackwardRay& ray, double t) {
    ray.at += t * ray.along;
    ray.path += t;
}

// Values that contradict each other may have no meeting point: the vertex plane then stands for it.
void reflect(BackwardRay& ray, double vertex, const Conic& conic) {
    go(ray, (vertex - ray.at.z) / ray.along.z);
    const Point local = ray.at - Point{0, 0, vertex};
    go(ray, distance_to(conic, local, ray.along).value_or(0));
    ray.along = mirrored(ray.along, normal_at(conic, ray.at - Point{0, 0, vertex}));
}

// In the plate's plane, of light that leaves the focus at that sine of the angle with the axis.
BackwardRay at_plate(const MirrorDesign& design, const MirrorShapes& shapes, double sine) {
    BackwardRay ray{{0, 0, design.focus_at}, {0, sine, -std::sqrt(1 - sine * sine)}, 0};
    reflect(ray, -design.mirror_distance, shapes.secondary);
    reflect(ray, 0, shapes.primary);
    go(ray, (design.plate_at - ray.at.z) / ray.along.z);
    return ray;
}

double rim_sine(const MirrorDesign& design) { return design.aperture / 2 / design.focal_length; }

double magnification(const MirrorDesign& design) {
    return design.focal_length / design.primary_focal_length;
}

// ((m + 1) / (m - 1))^2: less it, the conic constant of a mirror whose image is perfect at that magnification.
double perfect_constant(double m) { return std::pow((m + 1) / (m - 1), 2); }

// The secondary's conic constant for which light at 0.7 of the aperture keeps Abbe's sine condition, height = F sin U,
// as light near the axis does: without it a plate that cures the axis leaves coma. Almost linear: a few secant steps.
double coma_free_constant(const MirrorDesign& design, MirrorShapes shapes) {
    const double sine = std::sqrt(0.5) * rim_sine(design);
    const auto off = [&](double constant) {
        shapes.secondary.constant = constant;
        return at_plate(design, shapes, sine).at.y - design.focal_length * sine;
    };
    double before = 0;
    double now = -1;
    double off_before = off(before);
    for (int step = 0; step < 6; ++step) {
        const double off_now = off(now);
        const double change = off_now - off_before;
        if (std::abs(change) < 1e-11) break;  // mm: rounding
        const double next = now - off_now * (now - before) / change;
        before = now;
        off_before = off_now;
        now = next;
    }
    return now;
}

// Through the exact path at as many zones as it has terms: divided differences, multiplied out.
PhaseProfile perfect_plate(const MirrorDesign& design, const MirrorShapes& shapes) {
    constexpr std::array<double, PhaseProfile::count> zones{0.4, 0.6, 0.77, 0.91, 1.03};
    const double middle = at_plate(design, shapes, 0).path;
    std::array<double, PhaseProfile::count> q{};
    std::array<double, PhaseProfile::count> value{};
    for (std::size_t i = 0; i < zones.size(); ++i) {
        const BackwardRay ray = at_plate(design, shapes, zones[i] * rim_sine(design));
        q[i] = ray.at.y * ray.at.y;
        value[i] = (middle - ray.path) / (q[i] * q[i]);
    }
    for (std::size_t order = 1; order < q.size(); ++order) {
        for (std::size_t i = q.size() - 1; i >= order; --i)
            value[i] = (value[i] - value[i - 1]) / (q[i] - q[i - order]);
    }
    PhaseProfile plate;
    for (std::size_t i = q.size(); i-- > 0;) {  // plate = plate * (Q - q_i) + value_i
        for (std::size_t power = q.size() - 1; power > 0; --power)
            plate.terms[power] = plate.terms[power - 1] - q[i] * plate.terms[power];
        plate.terms[0] = value[i] - q[i] * plate.terms[0];
    }
    return plate;
}

// Third order (D. J. Schroeder, Astronomical Optics, 2nd ed., ch. 6, two-mirror telescopes; from memory), beta the way
// from the main mirror's vertex to the focus over its focal length.
void make_coma_free_pair(const MirrorDesign& design, MirrorShapes& shapes) {
    const double m = magnification(design);
    const double beta = design.focus_at / design.primary_focal_length;
    shapes.primary.constant = -1 - 2 * (1 + beta) / (m * m * (m - beta));
    shapes.secondary.constant =
        -perfect_constant(m) - 2 * m * (m + 1) / ((m - beta) * std::pow(m - 1, 3));
}

}  // namespace

MirrorShapes mirror_shapes(const MirrorDesign& design, MirrorFigure figure) {
    MirrorShapes shapes;
    shapes.primary.curvature = -1 / (2 * design.primary_focal_length);
    shapes.secondary.curvature = -1 / (2 * design.secondary_focal_length);
    switch (figure) {
    case MirrorFigure::unknown:
    case MirrorFigure::paraboloid_hyperboloid:
        shapes.primary.constant = -1;
        shapes.secondary.constant = -perfect_constant(magnification(design));
        break;
    case MirrorFigure::coma_free_hyperboloids: make_coma_free_pair(design, shapes); break;
    case MirrorFigure::coma_free_with_plate:
        shapes.secondary.constant = coma_free_constant(design, shapes);
        break;
    case MirrorFigure::spheres_with_plate:
    case MirrorFigure::spheres_with_meniscus: break;
    }
    if (has_front_plate(figure)) shapes.plate = perfect_plate(design, shapes);
    return shapes;
}

double spherical_of_mirrors(const MirrorDesign& design,
                            const MirrorShapes& shapes,
                            double moved,
                            double distance) {
    const double f1 = design.primary_focal_length;
    const double f2 = design.secondary_focal_length;
    const auto both = [&](double primary_moved, double target) {
        const double image = std::isinf(target) ? f1 : f1 * target / (target - f1);
        const double primary_m = std::isinf(target) ? 0 : -image / target;
        const double object = image - design.mirror_distance + primary_moved;
        const double y = design.aperture / 2 * object / image;
        const double rim = design.aperture / 2;
        return std::pow(y, 4) / (4 * std::pow(2 * f2, 3))
                   * (shapes.secondary.constant + perfect_constant(f2 / (f2 - object)))
               - std::pow(rim, 4) / (4 * std::pow(2 * f1, 3))
                     * (shapes.primary.constant + perfect_constant(primary_m));
    };
    const double at_design = both(0, std::numeric_limits<double>::infinity());
    return both(moved, distance) - at_design;
}

}  // namespace beamfork
