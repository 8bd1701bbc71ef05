#include "trace/forked_ray.hpp"

#include <algorithm>
#include <iterator>

#include "trace/corner_reader.hpp"

namespace beamfork {

std::size_t dividing_surface(const Train& train) {
    const auto& left = train.path(Eye::left).surfaces;
    const auto& right = train.path(Eye::right).surfaces;
    const auto is_same = [](const PlacedSurface& a, const PlacedSurface& b) {
        return a.kind == b.kind && a.part == b.part && a.world_from_surface == b.world_from_surface;
    };
    const auto found = std::mismatch(left.begin(), left.end(), right.begin(), right.end(), is_same);
    return static_cast<std::size_t>(found.first - left.begin());
}

namespace {

// Of the corners of a whole ray, the first that lies behind the dividing face.
auto first_behind(std::vector<RayCorner>& corners, std::size_t dividing) {
    return std::find_if(corners.begin(), corners.end(), [dividing](const RayCorner& corner) {
        return corner.surface && *corner.surface > dividing;
    });
}

bool needs_reference(const RayBlock& block, std::size_t lane, LaneEnd end) {
    return is_vague(block, lane) || end.fate == RayFate::missed;
}

}  // namespace

ForkedTracer::ForkedTracer(const Train& train, std::size_t wavelength)
    : paths_{&train.path(Eye::left), &train.path(Eye::right)},
      wavelength_(wavelength),
      dividing_(dividing_surface(train)),
      straight_{straightened(*paths_[0], wavelength), straightened(*paths_[1], wavelength)},
      trace_block_(instruction_sets().front().trace) {
    if (!straight_[0] || !straight_[1]) return;
    const auto& left = straight_[0]->sections;
    const auto& right = straight_[1]->sections;
    const auto parting = std::mismatch(left.begin(), left.end(), right.begin(), right.end());
    shared_sections_ = static_cast<std::size_t>(parting.first - left.begin());
}

TracedRay ForkedTracer::by_reference(std::size_t eye, const Ray& ray) const {
    return trace_with_corners(*paths_[eye], ray, wavelength_);
}

ForkedRay ForkedTracer::forked(TracedRay left) const {
    ForkedRay ray;
    const auto behind = first_behind(left.corners, dividing_);
    ray.common.assign(left.corners.begin(), behind);
    left.corners.erase(left.corners.begin(), behind);
    ray.arms[0] = std::move(left);
    return ray;
}

TracedRay ForkedTracer::arm_of(TracedRay whole) const {
    whole.corners.erase(whole.corners.begin(), first_behind(whole.corners, dividing_));
    return whole;
}

std::vector<ForkedRay> ForkedTracer::follow(const RayBundle& bundle) const {
    std::vector<ForkedRay> rays;
    rays.reserve(bundle.size());
    if (straight_[0] && straight_[1]) {
        for (std::size_t first = 0; first < bundle.size(); first += RayBlock::capacity)
            follow_block(bundle, first, rays);
        return rays;
    }
    for (std::size_t i = 0; i < bundle.size(); ++i) {
        rays.push_back(forked(by_reference(0, bundle.ray(i))));
        rays.back().arms[1] = arm_of(by_reference(1, bundle.ray(i)));
    }
    return rays;
}

void ForkedTracer::follow_block(const RayBundle& bundle,
                                std::size_t first,
                                std::vector<ForkedRay>& rays) const {
    const std::span<const StraightSection> to_left = straight_[0]->sections;
    const std::span<const StraightSection> to_right = straight_[1]->sections;
    RayBlock left;
    const std::size_t count = load_block(left, bundle, first, straight_[0]->first_index);
    CornerReader left_reader(*paths_[0], *straight_[0], wavelength_, left.count);
    CornerReader right_reader(*paths_[1], *straight_[1], wavelength_, left.count);
    trace_block_(to_left.first(shared_sections_), left, &left_reader.trail());
    RayBlock right = left;
    trace_block_(to_left.subspan(shared_sections_), left, &left_reader.trail());
    trace_block_(to_right.subspan(shared_sections_), right, &right_reader.trail());
    for (std::size_t lane = 0; lane < count; ++lane) {
        const Ray ray = bundle.ray(first + lane);
        const LaneEnd left_end = end_in(left, lane, paths_[0]->surfaces.size() - 1);
        const LaneEnd right_end = end_in(right, lane, paths_[1]->surfaces.size() - 1);
        ForkedRay fork = forked(needs_reference(left, lane, left_end)
                                    ? by_reference(0, ray)
                                    : left_reader.read(lane, left_end, start_of(ray)));
        if (needs_reference(right, lane, right_end)) {
            fork.arms[1] = arm_of(by_reference(1, ray));
        } else if (right_end.surface < dividing_) {  // ended before it came to either arm
            fork.arms[1] = fork.arms[0];
        } else {
            fork.arms[1] =
                arm_of(right_reader.read(lane, right_end, fork.common.back(), dividing_));
        }
        rays.push_back(std::move(fork));
    }
}

}  // namespace beamfork
