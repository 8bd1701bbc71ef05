// What a part puts into the light and what of it can be seen: surfaces in the order in which light
// meets them for one eye, the frame in which the next part begins, and bodies for the picture.
// All poses are in the part's own frame (geometry/pose.hpp), all lengths in mm.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/units.hpp"
#include "geometry/aperture.hpp"
#include "geometry/conic.hpp"
#include "geometry/phase_profile.hpp"
#include "geometry/pose.hpp"
#include "glass/coating.hpp"
#include "parts/eye.hpp"

namespace beamfork {

enum class SurfaceKind {
    stop,         ///< an opening; light goes straight on
    obstruction,  ///< stands in the light: what meets its `aperture` ends, what passes it goes straight on
    refraction,        ///< a polished face into `medium_after`
    mirror,            ///< a coated face: reflects at any angle; may be curved (`shape`)
    total_reflection,  ///< a bare glass face: reflects only beyond the critical angle, else light leaks
    objective,         ///< an ideal lens that obeys the sine condition, `focal_length` long
    thin_lens,         ///< an ideal thin lens of `focal_length` (negative: diverging)
    phase_plate        ///< an ideal thin plate that adds `profile` to the path
};

/// Light goes straight on through it.
constexpr bool is_opening(SurfaceKind kind) {
    return kind == SurfaceKind::stop || kind == SurfaceKind::obstruction;
}

/// A plane at z = 0 of its frame, or a curved mirror with its vertex there, whose origin lies on the part's
/// optical axis and whose z points along the incoming light. Light outside `aperture` ends here.
struct Surface {
    std::string name;  ///< as told to the user: "entry collar", "hypotenuse"
    SurfaceKind kind = SurfaceKind::stop;
    Pose part_from_surface;
    Aperture aperture = Unbounded{};
    std::string medium_after{};  ///< refraction: a glass name, or empty for air
    double focal_length = 0;     ///< objective and thin_lens
    double blue_shift = 0;       ///< objective: focus at the F line minus focus at the e line
    double red_shift = 0;        ///< objective: focus at the C line minus focus at the e line
    Conic shape{};               ///< mirror: a plane unless said otherwise
    PhaseProfile profile{};      ///< phase_plate
    Coating coating{};           ///< how much light goes on from here
    bool is_roof = false;  ///< this and its neighbour with the same mark are met in either order
};

/// A hollow cylinder along z from z = 0 of its frame.
struct TubeBody {
    double length = 1;
    double inner_radius = 1;
    double outer_radius = 1;
};
/// A flat ring in the plane z = 0.
struct RingBody {
    double inner_radius = 1;
    double outer_radius = 1;
};
/// A block of glass with plane faces; each face lists corner numbers counter-clockwise from outside.
struct GlassBody {
    std::vector<Point> corners;
    std::vector<std::vector<int>> faces;
};
/// A thin mirror with its reflecting side at z = 0, its back at z = thickness.
struct MirrorBody {
    std::vector<glm::dvec2> outline;
    double thickness = 1;
};
/// A round lens in the plane z = 0; `bulge` > 0 is thicker in the middle, < 0 thinner. A bowl's rim lies `bowl` before
/// its middle, towards -z.
struct LensBody {
    double radius = 1;
    double edge_thickness = 1;
    double bulge = 0;
    double bowl = 0;
};
/// A flat plate of metal from z = 0 to z = thickness, of a housing that would hide its glass if it were whole.
/// `outline` is convex, counter-clockwise seen against z, and goes round the origin; a round hole about the
/// origin lets light through when `hole_radius` > 0.
struct PlateBody {
    std::vector<glm::dvec2> outline;
    double thickness = 2;
    double hole_radius = 0;
};

/// A round curved mirror with its vertex at the origin; its reflecting side looks towards -z, its flat back
/// lies at z = thickness. A hole about the axis when `hole_radius` > 0.
struct DishBody {
    double radius = 1;
    double hole_radius = 0;
    Conic shape;
    double thickness = 5;
};

using BodyShape =
    std::variant<TubeBody, RingBody, GlassBody, MirrorBody, LensBody, PlateBody, DishBody>;

struct Body {
    BodyShape shape;
    Pose part_from_body;
};

/// Which places of a part's glass follow from no stated length of its own: they are derived, or the usual ones.
struct UnstatedPlaces {
    bool first_glass = false;  ///< behind the entry face
    bool last_glass = false;   ///< before the exit
    double spare = 0;  ///< mm by which the first glass may stand farther in than it is laid out
    [[nodiscard]] bool any() const { return first_glass || last_glass; }
};

struct PartLayout {
    std::vector<Surface> surfaces;
    Pose part_from_exit;  ///< where the next part's entry face sits
    double end_air = 0;   ///< air before the exit that may give way to a stated light path
    double beyond_stated =
        0;  ///< air in it now beyond the setting for which a light path is stated
    UnstatedPlaces unstated{};
    std::vector<Body> bodies;  ///< of this eye's arm; shared bodies come with the left eye only
    double pupil_plane = 0;    ///< telescope: z of the rim of what gathers the light
    double light_enters = 0;   ///< telescope: z of its first opening, at most 0
};

/// What a part must know of the rest to lay itself out for one eye.
struct LayoutContext {
    Eye eye = Eye::left;
    Millimetres drawtube{0};         ///< extension of the drawtube from racked in
    Millimetres pupil_distance{63};  ///< of the observer: sets the splitter head
    Millimetres seat_shift{0};       ///< of this eye's eyepiece, positive away from the telescope
    Millimetres primary{
        0};  ///< of a telescope that focuses by it: moved towards the sky from its middle
    std::optional<Millimetres>
        lens_at{};  ///< behind the entry face, where glass keeps its lens from its stated place
    bool shows_bodies = true;  ///< else only light matters, and bodies may be left out

    [[nodiscard]] bool shows_shared_bodies() const { return shows_bodies && eye == Eye::left; }
};

}  // namespace beamfork
