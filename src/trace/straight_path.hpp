// One eye's path at one wavelength, straightened for the fast tracer: mirrored at each of its mirrors, so that light
// runs straight on through them and a plane mirror is but an opening, and cut into sections that end where light is bent.
//
// Straightening is exact: every later surface keeps its own pose, mirrored as a whole. Lengths in mm. Directions of
// light have the length n of the medium they run in, so that Snell's law leaves their part along a face alone and
// a stretch of t such vectors is t n^2 of optical path.
#pragma once

#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "trace/tracer_form.hpp"
#include "train/train.hpp"

namespace beamfork {

/// A turn with or without a mirroring, then a shift: straight = turn * real + shift.
struct Isometry {
    glm::dmat3 turn{1.0};
    glm::dvec3 shift{0.0};
    [[nodiscard]] Point point(const Point& p) const { return turn * p + shift; }
    [[nodiscard]] Point point_back(const Point& p) const { return (p - shift) * turn; }
    [[nodiscard]] Direction direction(const Direction& d) const { return turn * d; }
    [[nodiscard]] Direction direction_back(const Direction& d) const { return d * turn; }
    bool operator==(const Isometry&) const = default;
};
Isometry operator*(const Isometry& outer, const Isometry& inner);
Isometry inverse(const Isometry& isometry);
/// Mirrors in the plane through `at` with that unit normal.
Isometry mirror_image(const Point& at, const Direction& normal);

enum class EdgeShape : std::uint8_t { none, circle, ellipse, rectangle, polygon };

/// One side of a convex polygon: inside where along.p >= from.
struct EdgeSide {
    Direction along{0.0};
    double from = 0;
    bool operator==(const EdgeSide&) const = default;
};

/// A surface that light meets at a plane, straightened.
struct StraightPlane {
    Direction normal{0, 0, 1};
    double offset = 0;  ///< the plane is normal.p = offset
    Point centre{0.0};
    EdgeShape edge = EdgeShape::none;
    bool is_obstruction = false;  ///< light ends inside the edge, not outside
    double radius_squared = 0;    ///< circle
    /// Ellipse and rectangle: u.p - from_u and v.p - from_v are 1 at the edge, on the axes.
    Direction u{1, 0, 0};
    Direction v{0, 1, 0};
    double from_u = 0;
    double from_v = 0;
    std::vector<EdgeSide> sides;
    bool reflects_totally = false;  ///< a bare face: light leaks where it meets it too steeply
    double steepest = 0;  ///< n^2 - 1: it leaks where its part along the normal has a larger square
    std::size_t surface = 0;  ///< index into EyePath::surfaces
    double code = 0;          ///< of the ends there, see end_code
    bool operator==(const StraightPlane&) const = default;
};

/// How a ray's end is told by one number, in the order in which ends are met: three for each surface.
constexpr std::uint32_t fates_per_surface = 3;
double end_code(std::size_t surface, int fate);
constexpr int code_missed = 0;
constexpr int code_clipped = 1;
constexpr int code_leaked = 2;

/// Axes of an element of revolution in the straightened path: its z and any x and y square to it.
struct ElementFrame {
    bool is_upright = true;  ///< axes are the path's own: only the origin counts
    glm::dmat3 axes{1.0};    ///< columns
    Point origin{0.0};
    bool operator==(const ElementFrame&) const = default;
};

struct PlaneRefraction {
    StraightPlane plane;
    double more = 0;  ///< n_after^2 - n_before^2
    bool operator==(const PlaneRefraction&) const = default;
};

struct IdealObjective {
    StraightPlane plane;
    ElementFrame frame;
    bool is_far = true;
    double index = 1;  ///< of the medium about it
    double image = 1;  ///< distance to the image, mm
    double focal_length = 1;
    double object = 0;  ///< distance of a near target
    bool operator==(const IdealObjective&) const = default;
};

struct IdealThinLens {
    StraightPlane plane;
    ElementFrame frame;
    double index = 1;
    double power = 0;       ///< 1 / focal length
    double object = 0;      ///< distance to the image it re-images, positive behind it
    double image = 0;       ///< of the image it makes
    double chief_gain = 0;  ///< object / image - 1, turned: what the chief ray's path changes by
    bool operator==(const IdealThinLens&) const = default;
};

struct IdealPlate {
    StraightPlane plane;
    ElementFrame frame;
    PhaseProfile profile;
    bool operator==(const IdealPlate&) const = default;
};

struct CurvedMirror {
    StraightPlane plane;  ///< of its vertex; its edge is in the element's frame
    ElementFrame frame;
    double curvature = 0;
    double stretch = 1;  ///< 1 + conic constant
    bool operator==(const CurvedMirror&) const = default;
};

/// The two faces of a roof, met in either order.
struct RoofFaces {
    StraightPlane first, second;  ///< met in the order of the path
    /// Met the other way round: the second face first, then the first.
    StraightPlane second_first, first_second;
    Isometry correction;  ///< brings light that went the other way into the straightened path
    bool operator==(const RoofFaces&) const = default;
};

/// One plane of a stack of plates.
struct PlateStep {
    StraightPlane plane;
    std::size_t medium = 0;   ///< in front of it, index into PlateStack::indices
    bool is_square = true;    ///< to the axis; else a mirror or the like, which stands at a tilt
    double square_plane = 0;  ///< z of itself; tilted: of the square plane before it
    double advance = 0;       ///< square: along the axis from the square plane before it
    double from_square = 0;   ///< tilted: its offset from where the axis meets that square plane
    bool may_leak = false;    ///< a refracting face into a medium thinner than all before
    /// n_after^2: light leaks whose part across the axis has a larger square.
    double across_most = 0;
    bool operator==(const PlateStep&) const = default;
};

/// Faces that are all square to the axis, with whatever stands between them: light keeps its part across the axis, so
/// that one root for each medium serves all faces.
struct PlateStack {
    std::vector<double> indices;  ///< different media, at most `most_media`
    std::vector<double> lengths;  ///< along the axis in each medium, from the first square plane on
    std::vector<PlateStep> steps;
    double first_plane = 0;  ///< z of the first square plane
    double last_plane = 0;
    std::size_t medium_before = 0;
    std::size_t medium_after = 0;
    static constexpr std::size_t most_media = 4;
    bool operator==(const PlateStack&) const = default;
};

/// The plane at which rays are counted.
struct LastPlane {
    StraightPlane plane;
    Direction x{1, 0, 0};
    Direction y{0, 1, 0};
    bool operator==(const LastPlane&) const = default;
};

using Bend = std::variant<PlaneRefraction,
                          IdealObjective,
                          IdealThinLens,
                          IdealPlate,
                          CurvedMirror,
                          RoofFaces,
                          PlateStack,
                          LastPlane>;

/// What light passes straight on, and what bends it then.
struct StraightSection {
    double index = 1;  ///< of its medium
    std::vector<StraightPlane> passed;
    Bend bend;
    bool operator==(const StraightSection&) const = default;
};

struct StraightPath {
    std::vector<StraightSection> sections;
    double first_index = 1;
    double last_index = 1;
    std::vector<Isometry> straight_from_world;  ///< as light comes to each surface
};

/// Gathers refracting faces square to the z axis, where two or more follow on each other, into stacks of plates.
void stack_plates(StraightPath& path);

/// Nothing for a path that the fast form does not describe: one that ends within a roof or at a curved surface, has a
/// curved face that is no mirror, or media that do not follow on each other. `plates` can forbid stacks of plates, to
/// hold the two forms against each other.
std::optional<StraightPath> straightened(const EyePath& path,
                                         std::size_t wavelength,
                                         PlateForm plates = PlateForm::where_exact);

}  // namespace beamfork
