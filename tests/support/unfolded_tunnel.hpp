// The second way: the whole train unfolded onto one straight axis. Every prism is a tunnel, a block of glass between
// two square openings; a fold is an opening that leans at 45 degrees; nothing ever turns. Worked out from the parts'
// own dimensions, without their faces' poses and without the program's tracer.
//
// In the tunnel's frame the axis is z, and x and y keep the directions they have at the objective: behind an odd
// number of folds the parts' own frames appear mirrored, which `across` carries along.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/coma_corrector.hpp"
#include "parts/erecting_diagonal.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/prisms.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "support/setups.hpp"

#include <Eigen/Dense>

namespace test_tunnel {

using namespace beamfork;

enum class PlaneKind { opening, face, bare_fold, lens };

struct TunnelPlane {
    std::size_t part = 0;
    std::string name;
    PlaneKind kind = PlaneKind::opening;
    double z = 0;                                                 ///< where the axis meets it
    Eigen::Matrix2d across = Eigen::Matrix2d::Identity();         ///< columns: its own x and y
    double radius = std::numeric_limits<double>::infinity();      ///< of a round opening
    double half_width = std::numeric_limits<double>::infinity();  ///< of a square one
    bool leans = false;       ///< z rises with its own y by 45 degrees
    double index_after = 0;   ///< face
    double focal_length = 0;  ///< lens
};

struct Tunnel {
    double focal_length = 0;
    double objective_radius = 0;
    double object_distance = std::numeric_limits<double>::infinity();
    std::vector<TunnelPlane>
        planes;             ///< behind the objective, in order; the field stop is the last
    double back_focus = 0;  ///< focus behind the objective, of this target
};

/// How a ray ended: the plane, or no plane when the field stop was reached; there, in the eyepiece's own x and y.
struct TunnelEnd {
    enum class Fate { reached, clipped, leaked } fate = Fate::reached;
    std::size_t plane = 0;
    Eigen::Vector2d at{0, 0};
    double path = 0;
};

class TunnelBuilder {
public:
    TunnelBuilder(const Setup& setup, Eye eye, double drawtube)
        : setup_(setup), eye_(eye), drawtube_(drawtube) {
        const auto& target = part_as<Target>(setup, setup.chosen.target);
        if (target.distance) tunnel_.object_distance = target.distance->value * 1000;
        for (part_ = 0; part_ < setup.parts.size(); ++part_) {
            if (role_of(setup.parts[part_]) < Role::eyepiece) add_part();
        }
        part_ = setup.chosen.eyepiece;
        add_part();
        const auto end = tunnel_.planes.end() - 1;  // the field stop stays last
        std::stable_sort(tunnel_.planes.begin(), end,
                         [](const auto& a, const auto& b) { return a.z < b.z; });
    }
    [[nodiscard]] Tunnel take() const { return tunnel_; }

private:
    void add_part() {
        add_one_of<Refractor, Newtonian, CassegrainMovingMirror, Focuser, Spacer, FilterPlate,
                   MirrorDiagonal, PrismDiagonal, ErectingDiagonal90, ErectingDiagonal45, Shifter,
                   ComaCorrector, SplitterHead, EyepiecePair>(setup_.parts[part_].body);
    }
    template <class... Kind>
    void add_one_of(const PartBody& body) {
        const bool is_known = ((body.is<Kind>() && (add(body.get<Kind>()), true)) || ...);
        if (!is_known) throw std::logic_error("the tunnel does not know this kind");
    }

    TunnelPlane& plane(std::string name, PlaneKind kind, double z) {
        tunnel_.planes.push_back({part_, std::move(name), kind, z, across_});
        return tunnel_.planes.back();
    }
    void round(std::string name, double z, double diameter) {
        plane(std::move(name), PlaneKind::opening, z).radius = diameter / 2;
    }
    TunnelPlane& square(std::string name, PlaneKind kind, double z, double width) {
        TunnelPlane& added = plane(std::move(name), kind, z);
        added.half_width = width / 2;
        return added;
    }
    void square_face(std::string name, double z, double width, double index_after) {
        square(std::move(name), PlaneKind::face, z, width).index_after = index_after;
    }
    void fold(std::string name, double z, double width, FaceCoating coating) {
        const auto kind = coating == FaceCoating::bare ? PlaneKind::bare_fold : PlaneKind::opening;
        square(std::move(name), kind, z, width).leans = true;
    }
    void roll(double degrees) {
        across_ = across_ * Eigen::Rotation2Dd(degrees * std::acos(-1.0) / 180).toRotationMatrix();
    }
    void mirror_frame() { across_.col(1) = -across_.col(1); }
    static double index(const std::string& glass) {
        return refractive_index(standard_catalogue().find(glass).value(), spectral_line::e).value();
    }
    // A stated light path lengthens or shortens the air at the part's end.
    void end_at(double z, double derived, std::optional<Millimetres> stated) {
        z_ = z + (stated ? stated->value - derived : 0);
    }

    void add(const Refractor& telescope) {
        tunnel_.focal_length = telescope.focal_length.value;
        tunnel_.objective_radius = telescope.aperture.value / 2;
        const double F = tunnel_.focal_length;
        const double u = tunnel_.object_distance;
        tunnel_.back_focus = std::isinf(u) ? F : u * F / (u - F);
        if (telescope.baffle_diameter) {
            round("tube baffle", telescope.baffle_position.value, telescope.baffle_diameter->value);
        }
        z_ = F - telescope.back_focus.value;
    }
    void add(const Newtonian&) { throw std::logic_error("the tunnel begins with a lens"); }
    void add(const CassegrainMovingMirror&) {
        throw std::logic_error("the tunnel begins with a lens");
    }
    void add(const Focuser& focuser) {
        z_ += drawtube_;
        round("drawtube front end", z_ - focuser.drawtube_length.value,
              focuser.drawtube_diameter.value);
        round("drawtube rear opening", z_, focuser.drawtube_diameter.value);
    }
    void add(const Spacer& spacer) {
        round("front opening", z_, spacer.clear_diameter.value);
        z_ += spacer.length.value;
        round("rear opening", z_, spacer.clear_diameter.value);
    }
    void add(const FilterPlate& filter) {
        const double middle = z_ + filter.ring_length.value / 2;
        for (const double side : {-0.5, 0.5}) {
            TunnelPlane& face = plane(side < 0 ? "filter entry face" : "filter exit face",
                                      PlaneKind::face, middle + side * filter.thickness.value);
            face.radius = filter.clear_diameter.value / 2;
            face.index_after = side < 0 ? index(filter.glass) : 1;
        }
        z_ += filter.ring_length.value;
    }
    void add(const MirrorDiagonal& diagonal) {
        round("front opening", z_, diagonal.clear_diameter.value);
        roll(diagonal.turned.value);
        const double fold_at = z_ + diagonal.entry_leg.value;
        fold("mirror", fold_at, diagonal.clear_diameter.value, FaceCoating::mirrored);
        mirror_frame();
        const double derived = diagonal.entry_leg.value + diagonal.exit_leg.value;
        const double end = z_ + derived;
        round("rear opening", end, diagonal.clear_diameter.value);
        end_at(end, derived, diagonal.stated_light_path);
    }
    void add(const PrismDiagonal& diagonal) {
        round("front opening", z_, diagonal.clear_diameter.value);
        roll(diagonal.turned.value);
        const double width = diagonal.prism_width.value;
        const double n = index(diagonal.glass);
        const double middle = z_ + diagonal.entry_leg.value;
        square_face("prism entry face", middle - width / 2, width, n);
        fold("prism hypotenuse", middle, width, diagonal.hypotenuse);
        mirror_frame();
        square_face("prism exit face", middle + width / 2, width, 1);
        const double length = diagonal.entry_leg.value + diagonal.exit_leg.value;
        round("rear opening", z_ + length, diagonal.clear_diameter.value);
        end_at(z_ + length, length - width + width / n, diagonal.stated_light_path);
    }
    template <int turn>
    void add(const ErectingDiagonal<turn>&) {
        throw std::logic_error("a roof prism unfolds to no tunnel of square openings");
    }
    void add(const Shifter& shifter) {
        TunnelPlane& lens = plane("shifter lens", PlaneKind::lens, z_ + shifter.lens_offset.value);
        lens.radius = shifter.clear_diameter.value / 2;
        const double M = shifter.stated_factor;
        lens.focal_length = shifter.given == ShifterGiven::focal_length
                                ? shifter.focal_length.value
                                : -shifter.stated_gain.value * M / ((M - 1) * (M - 1));
        z_ += shifter.length.value;
    }
    void add(const ComaCorrector& corrector) {
        TunnelPlane& lens =
            plane("corrector lens", PlaneKind::lens, z_ + corrector.lens_offset.value);
        lens.radius = corrector.clear_diameter.value / 2;
        const double path = corrector.stated_light_path.value_or(corrector.length).value;
        const double image = corrector.spacing.value + path - corrector.lens_offset.value;
        lens.focal_length = image / (1 - corrector.stated_factor);
        end_at(z_ + corrector.length.value, corrector.length.value, corrector.stated_light_path);
    }
    // The glass of the right arm behind the cube's entry; `gap` of air stands before its last prism.
    double add_right_arm(const SplitterHead& head, double cube, double gap) {
        const double A = head.prism_width.value;
        const double h = head.arm_offset.value;
        const double n = index(head.glass);
        if (head.mechanism == Mechanism::hinged) {
            const double glass = cube + A + gap;
            square_face("rhomboid entry face", glass, A, n);
            fold("rhomboid first face", glass + A / 2, A, head.reflecting_faces);
            fold("rhomboid second face", glass + A / 2 + h, A, head.reflecting_faces);
            square_face("rhomboid exit face", glass + A + h, A, 1);
            return glass + A + h;
        }
        square("inner prism entry face", PlaneKind::opening, cube + A, A);
        fold("inner prism hypotenuse", cube + 3 * A / 2, A, head.reflecting_faces);
        square_face("inner prism exit face", cube + 2 * A, A, 1);
        const double glass = cube + 2 * A + gap;
        square_face("outer prism entry face", glass, A, n);
        fold("outer prism hypotenuse", glass + A / 2, A, head.reflecting_faces);
        square_face("outer prism exit face", glass + A, A, 1);
        return glass + A;
    }
    void add(const SplitterHead& head) {
        const double A = head.prism_width.value;
        const double h = head.arm_offset.value;
        const double n = index(head.glass);
        const bool slides = head.mechanism == Mechanism::sliding;
        const double distance =
            part_as<Observer>(setup_, setup_.chosen.observer).pupil_distance.value;
        const double drop = std::acos(std::min(1.0, distance / (2 * h))) * 180 / std::acos(-1.0);
        const double hinge =
            slides ? 0 : std::clamp(drop, head.hinge_low.value, head.hinge_high.value);
        const double slide = head.slide ? head.slide->value : h - A;
        const double reach = slides ? std::clamp(distance / 2, h - slide, h) : h;
        round("nose", z_ - head.nose_length.value, head.entry_clear.value);
        round("entry collar", z_, head.entry_clear.value);
        const Eigen::Matrix2d upright = across_;
        roll(90 + hinge);  // the left arm's y: to the left and down; the cube turns with it
        // What a stated path leaves for air is shared as 14 to 30 between cube and seat, where neither is stated.
        const double stated_reach = slides ? h - slide / 2 : h;
        const double block = head.compensator ? head.compensator->value : slides ? A : h;
        const double left_over =
            head.stated_light_path
                ? head.stated_light_path->value - (stated_reach - A) - (2 * A + block) / n
                : 44;
        const double share = head.stated_light_path ? left_over / 44 : 1;
        const double entry_air = head.entry_air ? head.entry_air->value
                                 : head.seat_height && head.stated_light_path
                                     ? left_over - head.seat_height->value
                                     : 14 * share;
        const double seat = head.seat_height         ? head.seat_height->value
                            : head.stated_light_path ? left_over - entry_air
                                                     : 30;
        double glass = z_ + entry_air;
        square_face("cube entry face", glass, A, n);
        fold("cube interface", glass + A / 2, A, FaceCoating::mirrored);
        const bool is_left = eye_ == Eye::left;
        if (is_left || !slides)
            square_face(is_left ? "cube side face" : "cube exit face", glass + A, A, 1);
        if (is_left) {
            glass += A + (reach - A);
            square_face("arm prism entry face", glass, A, n);
            fold("arm prism hypotenuse", glass + A / 2, A, head.reflecting_faces);
            if (block > 0) square("compensator entry face", PlaneKind::opening, glass + A, A);
            square_face(block > 0 ? "compensator exit face" : "arm prism exit face",
                        glass + A + block, A, 1);
            glass += A + block;
        } else {
            across_ = upright;
            roll(-90 - hinge);
            glass = add_right_arm(head, glass, reach - A);
        }
        across_ = upright;  // two folds: nothing is mirrored
        round("exit opening", glass, head.exit_clear.value);
        const double end = glass + seat;
        // The head is stated as one: its air space is what the left arm, with its block, needs; sliding arms
        // are stated in the middle of their range.
        const double air = entry_air + (stated_reach - A) + seat;
        end_at(end, air + (2 * A + block) / n, head.stated_light_path);
    }
    void add(const EyepiecePair& eyepiece) {
        round("barrel", z_ - eyepiece.barrel_length.value, eyepiece.barrel_clear.value);
        z_ -= eyepiece.field_stop_depth.value;
        round("field stop", z_, eyepiece.field_stop.value);
    }
    void add(const Observer&) { throw std::logic_error("an observer does not stand in the light"); }
    void add(const Target&) { throw std::logic_error("a target does not stand in the light"); }

    const Setup& setup_;
    Eye eye_;
    double drawtube_;
    std::size_t part_ = 0;
    double z_ = 0;
    Eigen::Matrix2d across_ = Eigen::Matrix2d::Identity();
    Tunnel tunnel_;
};

/// For an observer whose eyes need no correction.
inline Tunnel unfold(const Setup& setup, Eye eye, double drawtube) {
    return TunnelBuilder(setup, eye, drawtube).take();
}

/// The ray that meets the objective at `pupil` (mm) from a field point of this slope, at the e line. Its path counts
/// from the wavefront 10 mm ahead of the objective's middle, or from a near target. Behind a lens it is not kept.
inline TunnelEnd
trace(const Tunnel& tunnel, const Eigen::Vector2d& field, const Eigen::Vector2d& pupil) {
    TunnelEnd end;
    const double v = tunnel.back_focus;
    const Eigen::Vector3d image(v * field.x(), v * field.y(), v);
    Eigen::Vector3d p(pupil.x(), pupil.y(), v - std::sqrt(v * v - pupil.squaredNorm()));
    Eigen::Vector3d d = (image - p).normalized();
    const double stretch = std::sqrt(1 + field.squaredNorm());
    const double before =
        std::isinf(tunnel.object_distance) ? 10 : tunnel.object_distance * stretch;
    end.path = before + image.norm() - (image - p).norm();
    double n = 1;
    for (end.plane = 0; end.plane < tunnel.planes.size(); ++end.plane) {
        const TunnelPlane& plane = tunnel.planes[end.plane];
        Eigen::Vector3d normal(0, 0, 1);
        if (plane.leans)
            normal = Eigen::Vector3d(-plane.across(0, 1), -plane.across(1, 1), 1) / std::sqrt(2.0);
        const double distance = normal.dot(Eigen::Vector3d(0, 0, plane.z) - p) / normal.dot(d);
        p += distance * d;
        end.path += n * distance;
        const Eigen::Vector2d own = plane.across.transpose() * p.head<2>();
        end.at = own;
        if (end.plane + 1 == tunnel.planes.size()) return end;
        const bool passes =
            own.norm() <= plane.radius && own.cwiseAbs().maxCoeff() <= plane.half_width;
        if (!passes) {
            end.fate = TunnelEnd::Fate::clipped;
            return end;
        }
        const double cosine = normal.dot(d);
        if (plane.kind == PlaneKind::bare_fold && n * n * (1 - cosine * cosine) < 1) {
            end.fate = TunnelEnd::Fate::leaked;
            return end;
        }
        if (plane.kind == PlaneKind::face) {
            d.head<2>() *= n / plane.index_after;
            d.z() = std::sqrt(1 - d.head<2>().squaredNorm());
            n = plane.index_after;
        }
        if (plane.kind == PlaneKind::lens) {
            const Eigen::Vector2d slope = d.head<2>() / d.z() - p.head<2>() / plane.focal_length;
            d = Eigen::Vector3d(slope.x(), slope.y(), 1).normalized();
        }
    }
    return end;
}

/// Where the image of the middle of the field falls behind the field stop: height and reduced angle of a paraxial ray.
inline double paraxial_image_behind_stop(const Tunnel& tunnel) {
    double height = 1;
    double angle = -1 / tunnel.back_focus;
    double z = 0;
    double n = 1;
    for (const TunnelPlane& plane : tunnel.planes) {
        height += angle * (plane.z - z) / n;
        z = plane.z;
        if (plane.kind == PlaneKind::lens) angle -= height / plane.focal_length;
        if (plane.kind == PlaneKind::face) n = plane.index_after;
    }
    return -height / angle;
}

}  // namespace test_tunnel
