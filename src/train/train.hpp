// A setup placed in space: for each eye, every surface in the order light meets it from the objective to
// the field stop, in world coordinates, with the media around it; and the straight list of axial steps
// from which focus is computed paraxially.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "base/units.hpp"
#include "parts/layout.hpp"
#include "train/lens_room.hpp"
#include "train/setup.hpp"
#include "train/wavelengths.hpp"

namespace beamfork {

struct PlacedSurface {
    std::string name;
    std::size_t part = 0;  ///< index into Setup::parts
    SurfaceKind kind = SurfaceKind::stop;
    Pose world_from_surface;
    Aperture aperture = Unbounded{};
    PerWavelength index_before{1, 1, 1};
    PerWavelength index_after{1, 1, 1};
    PerWavelength focal_length{};  ///< objective and thin lens, mm
    double object_distance = 0;    ///< thin lens: to the image it re-images, positive behind it, mm
    bool is_roof = false;  ///< this and its neighbour with the same mark are met in either order
    double axis_position = 0;  ///< along the unfolded axis from the objective, mm of geometric path
    Conic shape{};             ///< mirror: a plane unless said otherwise
    PhaseProfile profile{};    ///< phase_plate
    Coating coating{};         ///< how much light goes on from here
};

/// A stretch of the unfolded axis inside one medium, ending at a surface or at a part's exit. `length` is
/// negative where a part reaches back into the one before it.
struct AxialStep {
    std::size_t part = 0;
    double length = 0;  ///< mm, geometric
    PerWavelength index{1, 1, 1};
    double lens_focal_length = 0;  ///< of a thin lens at its end; 0: none
    Point from{0.0};
    Point to{0.0};
    [[nodiscard]] double reduced(std::size_t wavelength = primary_wavelength) const {
        return length / index[wavelength];
    }
};

struct EyePath {
    Eye eye = Eye::left;
    std::vector<PlacedSurface> surfaces;  ///< from the telescope's first opening to the field stop
    std::vector<AxialStep> steps;         ///< from the drawtube's rear face to the field stop
    Pose world_from_field_stop;
    double object_distance = 0;  ///< of the target from the objective, mm; infinite for the sky
    double wanted_image = 0;     ///< where this eye wants the image behind its own field stop, mm
    double seat_shift = 0;  ///< of the eyepiece for this eye's correction, mm, positive outward
    double seat_shift_wanted = 0;  ///< before the seat's travel limited it
};

/// Where one part stands and what of it can be seen.
struct PlacedPart {
    std::size_t part = 0;
    Eye eye = Eye::left;  ///< parts ahead of the split are placed once, as left
    Pose world_from_part;
    Pose world_from_exit;
    std::vector<Body> bodies;
};

/// What a part takes from the light path, as derived from its faces, and as its maker states it. Reduced
/// (air-equivalent) mm at the primary wavelength.
struct LightPath {
    std::size_t part = 0;
    double derived_left = 0;
    double derived_right = 0;
    std::optional<double> stated;
    double beyond_stated =
        0;               ///< how much longer it is now than at the setting for which it is stated
    double glass = 0;    ///< mm of glass in it, left arm
    double end_air = 0;  ///< air that may give way to a shorter stated path
    UnstatedPlaces unstated{};  ///< of its glass
    /// At the setting for which a light path is stated: a sliding head at the middle of its range.
    [[nodiscard]] double derived_as_stated() const { return derived_left - beyond_stated; }
    [[nodiscard]] double counted_as_stated() const { return stated.value_or(derived_as_stated()); }
    [[nodiscard]] double counted() const { return counted_as_stated() + beyond_stated; }
};

struct Train {
    Choice choice;
    Millimetres drawtube{0};
    Millimetres primary{0};  ///< of a telescope that focuses by it: moved towards the sky
    double object_distance =
        0;  ///< of the target from the objective's rim, mm; infinite for the sky
    double objective_focal_length = 0;  ///< of the telescope at this focus
    double objective_radius = 0;        ///< of the lens or mirror that gathers the light
    double obstruction_radius = 0;      ///< of what stands in the middle of the light; 0: nothing
    double pupil_plane = 0;   ///< z of the objective's rim, where the light's pupil is sampled
    double light_enters = 0;  ///< z of the telescope's first opening
    double back_focus = 0;    ///< image of the target behind the rear face racked in, mm
    double focus_offset = 0;  ///< where the observer wants the image: behind the field stops' plane
                              ///< with both seats at their middle, mean of both eyes, mm
    double arm_difference = 0;     ///< light path of the left eye's arm and barrel filter less the
                                   ///< right's, reduced mm
    std::array<EyePath, 2> paths;  ///< left, right
    std::vector<PlacedPart> placed;
    std::vector<LightPath> light_paths;  ///< of the parts behind the focuser, in order
    std::vector<LensRoom> lens_rooms;    ///< of the lenses behind the telescope, in order

    /// Of that part's glass; everything is stated ahead of the drawtube.
    [[nodiscard]] UnstatedPlaces unstated(std::size_t part) const;
    [[nodiscard]] const EyePath& path(Eye eye) const { return paths[side_of(eye)]; }
    /// Where the image falls behind that eye's field stop, wherever its seat stands, with the drawtube at the place
    /// that serves the mean of both eyes, mm. The longer arm's falls the nearer.
    [[nodiscard]] double served_image(Eye eye) const {
        const double later = eye == Eye::left ? -arm_difference / 2 : arm_difference / 2;
        return focus_offset + later - path(eye).seat_shift;
    }
};

/// Places all parts for this choice with the drawtube at this extension, and the primary mirror of a telescope
/// that focuses by it moved by `primary` towards the sky (other telescopes take no notice). Each seat takes its half of
/// what the eyes and the arms differ by, and both move by `seats` outward beside that, as far as they travel. Errors: an
/// impossible order, an unknown glass, a target nearer than twice the focal length.
Result<Train> build_train(const Setup& setup,
                          const Choice& choice,
                          Millimetres drawtube,
                          Millimetres primary = Millimetres{0},
                          Millimetres seats = Millimetres{0});

/// The same train of nothing but its axes, their steps and light paths: no surfaces, nothing placed. All that
/// focus is solved from, for a fraction of the work.
Result<Train> build_axes(const Setup& setup,
                         const Choice& choice,
                         Millimetres drawtube,
                         Millimetres primary = Millimetres{0});

/// F^2 / (u - F): how much farther out a target at distance u focuses than the sky (Newton).
Millimetres near_target_shift(Millimetres focal_length, Millimetres distance);

}  // namespace beamfork
