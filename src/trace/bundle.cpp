#include "trace/bundle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "trace/bundle_kernel.hpp"
#include "trace/corner_reader.hpp"
#include "trace/ray_block.hpp"

namespace beamfork {

namespace {

// Each takes a struct apart whole, so that a column that is forgotten does not compile.
void resize(RayBundle& bundle, std::size_t count) {
    auto& [x, y, z, dx, dy, dz, path] = bundle;
    for (auto* column : {&x, &y, &z, &dx, &dy, &dz, &path})
        column->resize(count);
}

void resize(BundleEnds& ends, std::size_t count) {
    auto& [fate, surface, x, y, z, dx, dy, dz, path] = ends;
    fate.resize(count);
    surface.resize(count);
    for (auto* column : {&x, &y, &z, &dx, &dy, &dz, &path})
        column->resize(count);
}

}  // namespace

void RayBundle::resize(std::size_t count) { beamfork::resize(*this, count); }

void RayBundle::add(const Ray& ray) {
    resize(size() + 1);
    set(size() - 1, ray);
}

Ray RayBundle::ray(std::size_t i) const {
    return {{x[i], y[i], z[i]}, {dx[i], dy[i], dz[i]}, path[i]};
}

namespace {

// Mostly in air, where copying alone is several times quicker.
void drain(const RayBlock::Column& from,
           std::vector<double>& to,
           std::size_t first,
           std::size_t count,
           double scale) {
    double* begin = to.data() + first;
    if (scale == 1) {
        std::copy_n(from.data(), count, begin);
    } else {
        std::transform(from.data(), from.data() + count, begin,
                       [scale](double value) { return value * scale; });
    }
}

std::shared_ptr<const StraightPath> shared(std::optional<StraightPath> path) {
    return path ? std::make_shared<const StraightPath>(*std::move(path)) : nullptr;
}

}  // namespace

BundleTracer::BundleTracer(const EyePath& path, std::size_t wavelength, TracerForm form)
    : path_(path),
      wavelength_(wavelength),
      straight_(shared(straightened(path, wavelength, form.plates))),
      trace_block_(instruction_sets().at(form.instruction_set).trace) {}

BundleEnds BundleTracer::trace(const RayBundle& bundle) const {
    BundleEnds ends;
    trace(bundle, ends);
    return ends;
}

void BundleTracer::trace(const RayBundle& bundle, BundleEnds& ends) const {
    resize(ends, bundle.size());
    if (straight_) {
        for (std::size_t first = 0; first < bundle.size(); first += RayBlock::capacity)
            trace_fast(bundle, first, ends);
    } else {
        for (std::size_t i = 0; i < bundle.size(); ++i)
            trace_by_reference(bundle, i, ends);
    }
}

void BundleTracer::trace_fast(const RayBundle& bundle, std::size_t first, BundleEnds& ends) const {
    RayBlock block;  // left unset: a block is filled to its count
    const std::size_t count = load_block(block, bundle, first, straight_->first_index);
    trace_block_(straight_->sections, block, nullptr);
    drain(block.x, ends.x, first, count, 1);
    drain(block.y, ends.y, first, count, 1);
    drain(block.z, ends.z, first, count, 1);
    drain(block.kx, ends.dx, first, count, 1 / straight_->last_index);
    drain(block.ky, ends.dy, first, count, 1 / straight_->last_index);
    drain(block.kz, ends.dz, first, count, 1 / straight_->last_index);
    drain(block.path, ends.path, first, count, 1);
    const std::size_t last = path_.surfaces.size() - 1;
    for (std::size_t i = 0; i < count; ++i) {
        const LaneEnd end = end_in(block, i, last);
        ends.surface[first + i] = static_cast<std::uint32_t>(end.surface);
        ends.fate[first + i] = end.fate;
        if (is_vague(block, i)) trace_by_reference(bundle, first + i, ends);
    }
}

void BundleTracer::trace_by_reference(const RayBundle& bundle,
                                      std::size_t i,
                                      BundleEnds& ends) const {
    const RayEnd end = trace_ray(path_, bundle.ray(i), wavelength_);
    const Pose& frame = path_.surfaces.back().world_from_surface;
    const Point at = frame.point_in(end.ray.origin);
    const Direction along = frame.direction_in(end.ray.direction);
    ends.fate[i] = end.fate;
    ends.surface[i] = static_cast<std::uint32_t>(end.surface);
    ends.x[i] = at.x;
    ends.y[i] = at.y;
    ends.z[i] = at.z;
    ends.dx[i] = along.x;
    ends.dy[i] = along.y;
    ends.dz[i] = along.z;
    ends.path[i] = end.ray.path;
}

std::vector<TracedRay> BundleTracer::follow(const RayBundle& bundle) const {
    std::vector<TracedRay> traced;
    traced.reserve(bundle.size());
    const auto by_reference = [&](std::size_t i) {
        return trace_with_corners(path_, bundle.ray(i), wavelength_);
    };
    for (std::size_t first = 0; first < bundle.size(); first += RayBlock::capacity) {
        const std::size_t count = std::min(RayBlock::capacity, bundle.size() - first);
        if (!straight_) {
            for (std::size_t i = first; i < first + count; ++i)
                traced.push_back(by_reference(i));
            continue;
        }
        RayBlock block;
        load_block(block, bundle, first, straight_->first_index);
        CornerReader reader(path_, *straight_, wavelength_, block.count);
        trace_block_(straight_->sections, block, &reader.trail());
        for (std::size_t lane = 0; lane < count; ++lane) {
            const LaneEnd end = end_in(block, lane, path_.surfaces.size() - 1);
            const bool needs_reference = is_vague(block, lane) || end.fate == RayFate::missed;
            traced.push_back(needs_reference
                                 ? by_reference(first + lane)
                                 : reader.read(lane, end, start_of(bundle.ray(first + lane))));
        }
    }
    return traced;
}

}  // namespace beamfork
