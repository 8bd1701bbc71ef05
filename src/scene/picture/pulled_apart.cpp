#include "scene/picture/pulled_apart.hpp"

#include <algorithm>
#include <limits>

#include "scene/picture/fingerprint.hpp"
#include "scene/picture/picture_input.hpp"

namespace beamfork {

namespace {

constexpr double between_parts_mm = 45;  // between two parts that were joined
constexpr double widest_joint_mm = 260;  // that one joint opens

// How far a part's bodies reach along a direction, from a point.
struct Extent {
    double low = 0;
    double high = 0;
};

Extent extent_of(const Frame& bodies, std::size_t part, const Point& from, const Direction& along) {
    Extent reach{std::numeric_limits<double>::max(), std::numeric_limits<double>::lowest()};
    for (const Mesh& mesh : bodies.meshes) {
        if (mesh.part != static_cast<int>(part)) continue;
        for (const MeshVertex& vertex : mesh.vertices) {
            const double at = glm::dot(Point(vertex.position) - from, along);
            reach = {std::min(reach.low, at), std::max(reach.high, at)};
        }
    }
    return reach.low > reach.high ? Extent{} : reach;
}

// By how much the joint between two neighbours opens: what the one has put into the other comes out of it.
double opening_between(const Frame& bodies, const PlacedPart& before, const PlacedPart& behind) {
    const Pose& joint = before.world_from_exit;
    const double beyond = extent_of(bodies, before.part, joint.origin, joint.z()).high;
    const double back = extent_of(bodies, behind.part, joint.origin, joint.z()).low;
    return std::clamp(between_parts_mm + std::max(0.0, beyond) + std::max(0.0, -back),
                      between_parts_mm, widest_joint_mm);
}

bool is_common(const Setup& setup, const PlacedPart& placed) {
    return role_of(setup.parts[placed.part]) < Role::splitter;
}

// The placed part that the light comes from, by eye; null in front of the telescope.
class LightChain {
public:
    explicit LightChain(const Train& train) : train_(train) {}
    [[nodiscard]] const std::size_t* before(Eye eye) const {
        const auto& last = last_[side_of(eye)];
        return last ? &*last : nullptr;
    }
    void append(std::size_t i, bool for_both) {
        const bool is_left = train_.placed[i].eye == Eye::left;
        if (is_left || for_both) last_[0] = i;
        if (!is_left || for_both) last_[1] = i;
    }

private:
    const Train& train_;
    std::array<std::optional<std::size_t>, 2> last_;
};

struct PulledJoint {
    std::size_t before;
    std::size_t behind;
};

std::vector<PulledJoint> joints_of(const Setup& setup, const Train& train) {
    std::vector<PulledJoint> joints;
    LightChain chain(train);
    for (std::size_t i = 0; i < train.placed.size(); ++i) {
        if (const std::size_t* before = chain.before(train.placed[i].eye))
            joints.push_back({*before, i});
        chain.append(i, is_common(setup, train.placed[i]));
    }
    return joints;
}

Direction
place_of(const Train& train, const std::vector<Direction>& places, std::size_t part, Eye eye) {
    Direction found{0.0};
    for (std::size_t i = 0; i < train.placed.size(); ++i) {
        if (train.placed[i].part != part) continue;
        found = places[i];
        if (train.placed[i].eye == eye) break;  // a part ahead of the split is placed once
    }
    return found;
}

// All of a train that has a place, moved with its part.
Train moved(const Train& train, const std::vector<Direction>& places) {
    Train apart = train;
    for (std::size_t i = 0; i < apart.placed.size(); ++i) {
        apart.placed[i].world_from_part.origin += places[i];
        apart.placed[i].world_from_exit.origin += places[i];
    }
    for (EyePath& path : apart.paths) {
        for (PlacedSurface& surface : path.surfaces)
            surface.world_from_surface.origin += place_of(train, places, surface.part, path.eye);
        path.world_from_field_stop.origin +=
            place_of(train, places, path.surfaces.back().part, path.eye);
    }
    return apart;
}

void add_joining_lines(Frame& frame, const Setup& setup, const Train& apart) {
    for (const PulledJoint& joint : joints_of(setup, apart)) {
        frame.lines.push_back({glm::vec3(apart.placed[joint.before].world_from_exit.origin),
                               glm::vec3(apart.placed[joint.behind].world_from_part.origin),
                               ColourRole::dimension, 1.5F, true, false});
    }
}

// The share of the closed train's light that is still seen.
float light_left(float amount) { return std::max(0.0F, 1 - amount / light_fades_until); }

void add_fading_light(Frame& frame, const PictureInput& together, float left) {
    if (left <= 0) return;
    Frame lit;
    add_light(lit, together);
    for (LightRibbon& ribbon : lit.light)
        ribbon.strength *= left;
    frame.light = std::move(lit.light);
    frame.ray_count = lit.ray_count;
    frame.arrival = lit.arrival;
}

void add_fading_stops(Frame& frame, const PictureInput& apart, float left) {
    add_field_stops(frame, apart);
    if (left <= 0) frame.discs.clear();
    for (ImageDisc& disc : frame.discs) {
        for (float& light : disc.light)
            light *= left;
    }
}

}  // namespace

std::vector<Direction> pulled_places(const Setup& setup, const Train& train) {
    Report bare;
    bare.train = train;
    PictureEffort coarse;
    coarse.round_segments = 16;
    Frame bodies;
    add_bodies(bodies, {setup, bare, coarse});
    std::vector<Direction> places(train.placed.size(), Direction{0.0});
    for (const PulledJoint& joint : joints_of(setup, train)) {
        const PlacedPart& before = train.placed[joint.before];
        places[joint.behind] = places[joint.before]
                               + opening_between(bodies, before, train.placed[joint.behind])
                                     * before.world_from_exit.z();
    }
    Direction at_head{0.0};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const PlacedPart& placed = train.placed[i];
        if (role_of(setup.parts[placed.part]) == Role::splitter && placed.eye == Eye::left)
            at_head = places[i];
    }
    for (Direction& place : places)
        place -= at_head;
    return places;
}

Frame pulled_apart(const Setup& setup,
                   const Report& report,
                   float amount,
                   const PictureEffort& effort) {
    if (amount <= 0) return build_frame(setup, report, effort);
    std::vector<Direction> places = pulled_places(setup, report.train);
    for (Direction& place : places)
        place *= double{amount};
    Report apart = report;
    apart.train = moved(report.train, places);
    const PictureInput input{setup, apart, effort};
    Frame frame;
    add_bodies(frame, input);
    add_splitting_face(frame, input);
    add_openings(frame, input);
    add_fading_light(frame, {setup, report, effort}, light_left(amount));
    add_fading_stops(frame, input, light_left(amount));
    add_part_labels(frame, input);
    add_eyes(frame, input);
    add_joining_lines(frame, setup, apart.train);
    finish_frame(frame, input);
    return frame;
}

float apart_after(float done) {
    const float t = std::clamp(done, 0.0F, 1.0F);
    return t * t * (3 - 2 * t);
}

}  // namespace beamfork
