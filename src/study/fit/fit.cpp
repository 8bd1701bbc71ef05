#include "study/fit/fit.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/balance.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/mount.hpp"
#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"

namespace beamfork {

namespace {

constexpr double gravity = 9.80665;  // m/s2, standard gravity (CGPM 1901)

// --- masses -------------------------------------------------------------------------------------------

struct Lump {
    double volume = 0;
    Point centre{0.0};  // in the body's frame
};

Lump lump_of(const TubeBody& tube) {
    const double area =
        tube.outer_radius * tube.outer_radius - tube.inner_radius * tube.inner_radius;
    return {std::numbers::pi * area * tube.length, {0, 0, tube.length / 2}};
}
Lump lump_of(const RingBody&) { return {}; }  // has no thickness

// Sum over outward tetrahedra from the origin (divergence theorem).
Lump lump_of(const GlassBody& glass) {
    Lump lump;
    const auto corner = [&](int i) { return glass.corners[static_cast<std::size_t>(i)]; };
    for (const auto& face : glass.faces) {
        for (std::size_t i = 2; i < face.size(); ++i) {
            const Point a = corner(face[0]);
            const Point b = corner(face[i - 1]);
            const Point c = corner(face[i]);
            const double volume = glm::dot(a, glm::cross(b, c)) / 6;
            lump.volume += volume;
            lump.centre += volume * (a + b + c) / 4.0;
        }
    }
    if (lump.volume > 0) lump.centre /= lump.volume;
    return lump;
}

double area_of(const std::vector<glm::dvec2>& outline) {
    double twice = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2& a = outline[i];
        const glm::dvec2& b = outline[(i + 1) % outline.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return std::abs(twice) / 2;
}
Lump lump_of(const MirrorBody& mirror) {
    return {area_of(mirror.outline) * mirror.thickness, {0, 0, mirror.thickness / 2}};
}
Lump lump_of(const LensBody& lens) {
    return {std::numbers::pi * lens.radius * lens.radius * lens.edge_thickness, {0, 0, 0}};
}
Lump lump_of(const DishBody& dish) {
    const double area = dish.radius * dish.radius - dish.hole_radius * dish.hole_radius;
    return {std::numbers::pi * area * dish.thickness, {0, 0, dish.thickness / 2}};
}
Lump lump_of(const PlateBody& plate) {
    const double hole = std::numbers::pi * plate.hole_radius * plate.hole_radius;
    return {std::max(0.0, area_of(plate.outline) - hole) * plate.thickness,
            {0, 0, plate.thickness / 2}};
}

NewtonMetres moment_of(Grams mass, Millimetres lever) {
    return newton_millimetres(to_kilograms(mass).value * gravity * lever.value);
}

Load load_of(const Setup& setup, const Train& train) {
    Load load;
    Point moment{0.0};
    for (const std::size_t part : parts_in_light(setup, train.choice)) {
        const Role role = role_of(setup.parts[part]);
        if (role <= Role::focuser) continue;
        const auto mount = mount_of(setup.parts[part].body);
        if (!mount) continue;
        if (!mount->mass) {
            load.unstated.push_back(part);
            continue;
        }
        const Grams mass = *mount->mass * (role == Role::eyepiece ? 2 : 1);
        load.mass += mass;
        moment += mass.value * centre_of_mass(train, part);
    }
    const std::size_t focuser = parts_with_role(setup, Role::focuser).front();
    load.rated = part_as<Focuser>(setup, focuser).rated_load;
    if (load.mass <= Grams{}) return load;
    load.centre = moment / load.mass.value;
    const auto placed = std::find_if(train.placed.begin(), train.placed.end(),
                                     [&](const PlacedPart& one) { return one.part == focuser; });
    BEAMFORK_EXPECTS(placed != train.placed.end());
    const Point from_clamp = placed->world_from_part.point_in(load.centre);
    load.lever = {from_clamp.z};
    load.sideways = {from_clamp.x};
    load.bending = moment_of(load.mass, load.lever);
    load.twisting = moment_of(load.mass, abs(load.sideways));
    return load;
}

std::optional<BalanceShift> balance_shift(const Setup& setup, const Load& load) {
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const auto balance = balance_of(setup.parts[telescope].body);
    if (!balance || !balance->tube_mass || !balance->balance_point || load.mass <= Grams{})
        return std::nullopt;
    BalanceShift result;
    result.lever = Millimetres{load.centre.z} - *balance->balance_point;
    result.shift = load.mass.value * result.lever / (load.mass + *balance->tube_mass).value;
    if (balance->counterweight)
        result.counterweight = counterweight_for(load.mass, result.lever, *balance->counterweight);
    return result;
}

// --- eyes -----------------------------------------------------------------------------------------------

EyepieceSpacing spacing_of(const Setup& setup, const Train& train) {
    const auto& observer = part_as<Observer>(setup, train.choice.observer);
    const auto& eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    const auto& head = part_as<SplitterHead>(setup, parts_with_role(setup, Role::splitter).front());
    EyepieceSpacing spacing;
    spacing.pupil_distance = observer.pupil_distance;
    spacing.narrowest = head.narrowest();
    spacing.widest = head.widest();
    spacing.is_in_range = head.reaches(observer.pupil_distance);
    const Pose& left = train.paths[0].world_from_field_stop;
    // Across both axes: seats moved differently do not widen it.
    const Point apart = left.point_in(train.paths[1].world_from_field_stop.origin);
    spacing.axis_distance = {std::hypot(apart.x, apart.y)};
    spacing.gap = spacing.axis_distance - eyepiece.outer_diameter;
    spacing.widest_housing = spacing.axis_distance - nose_wants;
    return spacing;
}

}  // namespace

Point centre_of_mass(const Train& train, std::size_t part) {
    double volume = 0;
    Point sum{0.0};
    Point fallback{0.0};
    double count = 0;
    for (const PlacedPart& placed : train.placed) {
        if (placed.part != part) continue;
        fallback += placed.world_from_part.origin;
        ++count;
        for (const Body& body : placed.bodies) {
            const Lump lump =
                std::visit([](const auto& shape) { return lump_of(shape); }, body.shape);
            const Pose world_from_body = placed.world_from_part * body.part_from_body;
            volume += lump.volume;
            sum += lump.volume * world_from_body.point_out(lump.centre);
        }
    }
    BEAMFORK_EXPECTS(count > 0);
    return volume > 0 ? sum / volume : fallback / count;
}

SeenField seen_field(Millimetres eye_relief,
                     Millimetres eye_needs,
                     Millimetres eye_pupil,
                     Millimetres exit_pupil,
                     Degrees field) {
    SeenField seen;
    seen.eye_relief = eye_relief;
    seen.eye_needs = eye_needs;
    seen.too_far = std::max(Millimetres{}, eye_needs - eye_relief);
    if (seen.too_far <= Millimetres{}) return seen;
    const double half_field = to_radians(field).value / 2;
    const auto share = [&](Millimetres aside) {
        const double angle = std::atan2(std::max(0.0, aside.value), seen.too_far.value);
        return std::clamp(angle / half_field, 0.0, 1.0);
    };
    seen.half_light_share = share(eye_pupil / 2);
    seen.full_light_share = share((eye_pupil - exit_pupil) / 2);
    return seen;
}

Grams counterweight_for(Grams mass, Millimetres lever, Millimetres arm) {
    return mass * abs(lever).value / arm.value;
}

Fit fit(const Setup& setup, const Train& train, const Magnification& magnification) {
    const auto& observer = part_as<Observer>(setup, train.choice.observer);
    const auto& eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    const bool keeps_spectacles = observer.spectacles == Spectacles::kept_on;
    Fit result;
    result.spacing = spacing_of(setup, train);
    result.seen = seen_field(eyepiece.eye_relief,
                             keeps_spectacles ? observer.spectacle_distance : Millimetres{0},
                             observer.eye_pupil, magnification.exit_pupil, eyepiece.apparent_field);
    result.tightest = tightest(train);
    result.zenith = zenith_room(setup, train);
    result.eyes = eye_height(setup, train);
    result.load = load_of(setup, train);
    result.balance = balance_shift(setup, result.load);
    result.joints = joints(setup, train.choice);
    return result;
}

}  // namespace beamfork
