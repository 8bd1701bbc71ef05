#include "study/two_eyes/alignment_bench.hpp"

#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "parts/prism_errors.hpp"

namespace beamfork {

bool same_hand(const ArmImage& left, const ArmImage& right) {
    return (glm::determinant(left.stop_from_slope) > 0)
           == (glm::determinant(right.stop_from_slope) > 0);
}

namespace {

constexpr double arcminutes_per_radian = 1 / to_radians(Arcminutes{1}).value;

// Only what turns light, and the field stop: enough for chief rays.
EyePath skeleton(const EyePath& path) {
    EyePath bare = without_stops(path);
    const PlacedSurface last = bare.surfaces.back();
    std::erase_if(bare.surfaces,
                  [](const PlacedSurface& surface) { return is_opening(surface.kind); });
    bare.surfaces.push_back(last);
    return bare;
}

ArmImage arm_image(const Train& train, const EyePath& path) {
    const ChiefMap map = chief_map(train, path);
    return {map.axis, map.place_from_slope};
}

Misalignment compare(const ArmImage& left, const ArmImage& right, Millimetres focal_length) {
    const auto apparent = [&](double at) {
        return Arcminutes{std::atan(at / focal_length.value) * arcminutes_per_radian};
    };
    Misalignment seen;
    seen.inward = apparent(left.middle.x) - apparent(right.middle.x);
    seen.left_up = apparent(left.middle.y) - apparent(right.middle.y);
    if (!same_hand(left, right)) return seen;
    const glm::dmat2 turn = left.stop_from_slope * glm::inverse(right.stop_from_slope);
    seen.rotation =
        to_degrees(Radians{std::atan2(turn[0][1] - turn[1][0], turn[0][0] + turn[1][1])});
    seen.size = 100 * (std::sqrt(std::abs(glm::determinant(turn))) - 1);
    return seen;
}

Pose world_from_part(const Train& train, std::size_t part, Eye eye) {
    const auto found =
        std::find_if(train.placed.begin(), train.placed.end(), [&](const PlacedPart& placed) {
            return placed.part == part && placed.eye == eye;
        });
    BEAMFORK_EXPECTS(found != train.placed.end());
    return found->world_from_part;
}

}  // namespace

AlignmentBench::AlignmentBench(const Setup& setup, const Train& train) : train_(train) {
    const auto& observer = part_as<Observer>(setup, train.choice.observer);
    for (std::size_t side = 0; side < 2; ++side) {
        const EyePath& path = train.paths[side];
        bare_[side] = skeleton(path);
        images_[side] = arm_image(train, bare_[side]);
        contexts_[side] = {.eye = both_eyes[side],
                           .drawtube = train.drawtube,
                           .pupil_distance = observer.pupil_distance,
                           .seat_shift = Millimetres{path.seat_shift},
                           .shows_bodies = false};
    }
    focal_length_ = part_as<EyepiecePair>(setup, train.choice.eyepiece).focal_length;
}

Misalignment AlignmentBench::seen() const { return compare(images_[0], images_[1], focal_length_); }

Misalignment
AlignmentBench::seen_with(std::size_t part, const PartBody& body, std::span<const Eye> eyes) const {
    auto arms = images_;
    for (const Eye eye : eyes) {
        const std::size_t side = side_of(eye);
        EyePath path = bare_[side];
        put(path, part, layout_of(body, contexts_[side]), eye);
        arms[side] = arm_image(train_, path);
    }
    return compare(arms[0], arms[1], focal_length_);
}

void AlignmentBench::put(EyePath& path, std::size_t part, const PartLayout& layout, Eye eye) const {
    const Pose frame = world_from_part(train_, part, eye);
    if (part == train_.choice.eyepiece) {
        path.world_from_field_stop = frame * layout.part_from_exit;
        path.surfaces.back().world_from_surface = path.world_from_field_stop;
        return;
    }
    auto next = path.surfaces.begin();
    for (const Surface& surface : layout.surfaces) {
        if (is_opening(surface.kind)) continue;
        next = std::find_if(next, path.surfaces.end(),
                            [&](const PlacedSurface& placed) { return placed.part == part; });
        BEAMFORK_EXPECTS(next != path.surfaces.end());
        next->world_from_surface = frame * surface.part_from_surface;
        ++next;
    }
}

}  // namespace beamfork
