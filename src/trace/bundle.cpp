#include "trace/bundle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "trace/bundle_kernel.hpp"
#include "trace/course_reader.hpp"

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

using Column = RayBlock::Column;

// Mostly in air, where copying alone is several times quicker.
void copy_scaled(const double* from, double* to, std::size_t count, double scale) {
    if (scale == 1) {
        std::copy_n(from, count, to);
    } else {
        std::transform(from, from + count, to, [scale](double value) { return value * scale; });
    }
}

void fill(Column& to,
          const std::vector<double>& from,
          std::size_t first,
          std::size_t count,
          double scale) {
    copy_scaled(from.data() + first, to.data(), count, scale);
}

void drain(const Column& from,
           std::vector<double>& to,
           std::size_t first,
           std::size_t count,
           double scale) {
    copy_scaled(from.data(), to.data() + first, count, scale);
}

std::size_t padded(std::size_t count) {
    return (count + RayBlock::granule - 1) / RayBlock::granule * RayBlock::granule;
}

// The rest of the last granule repeats the last ray.
void pad(RayBlock& block, std::size_t count) {
    block.count = padded(count);
    for (Column* column :
         {&block.x, &block.y, &block.z, &block.kx, &block.ky, &block.kz, &block.path})
        std::fill(column->begin() + static_cast<std::ptrdiff_t>(count),
                  column->begin() + static_cast<std::ptrdiff_t>(block.count), (*column)[count - 1]);
    constexpr double endless = std::numeric_limits<double>::infinity();
    std::fill_n(block.end.begin(), block.count, endless);
    std::fill_n(block.grazing.begin(), block.count, endless);
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

void BundleTracer::trace_fast(const RayBundle& bundle,
                              std::size_t first,
                              BundleEnds& ends,
                              RayTrail* trail) const {
    const std::size_t count = std::min(RayBlock::capacity, bundle.size() - first);
    RayBlock block;  // left unset: a block is filled to its count
    const double n = straight_->first_index;
    fill(block.x, bundle.x, first, count, 1);
    fill(block.y, bundle.y, first, count, 1);
    fill(block.z, bundle.z, first, count, 1);
    fill(block.kx, bundle.dx, first, count, n);
    fill(block.ky, bundle.dy, first, count, n);
    fill(block.kz, bundle.dz, first, count, n);
    fill(block.path, bundle.path, first, count, 1);
    pad(block, count);
    trace_block_(*straight_, block, trail);
    drain(block.x, ends.x, first, count, 1);
    drain(block.y, ends.y, first, count, 1);
    drain(block.z, ends.z, first, count, 1);
    drain(block.kx, ends.dx, first, count, 1 / straight_->last_index);
    drain(block.ky, ends.dy, first, count, 1 / straight_->last_index);
    drain(block.kz, ends.dz, first, count, 1 / straight_->last_index);
    drain(block.path, ends.path, first, count, 1);
    const auto last = static_cast<std::uint32_t>(path_.surfaces.size() - 1);
    constexpr std::array fates{RayFate::missed, RayFate::clipped, RayFate::leaked};
    for (std::size_t i = 0; i < count; ++i) {
        const bool is_reached = block.end[i] == std::numeric_limits<double>::infinity();
        const auto code = is_reached ? 0U : static_cast<std::uint32_t>(block.end[i]);
        ends.surface[first + i] = is_reached ? last : code / fates_per_surface;
        ends.fate[first + i] = is_reached ? RayFate::reached : fates[code % fates_per_surface];
        if (block.grazing[i] >= near_grazing) continue;  // false where it is no number, too
        trace_by_reference(bundle, first + i, ends);
        if (trail) trail->is_vague[i] = true;
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

std::vector<RayCourse> BundleTracer::follow(const RayBundle& bundle) const {
    BundleEnds ends;
    resize(ends, bundle.size());
    std::vector<RayCourse> courses(bundle.size());
    for (std::size_t first = 0; first < bundle.size(); first += RayBlock::capacity) {
        const std::size_t count = std::min(RayBlock::capacity, bundle.size() - first);
        std::optional<CourseReader> reader;
        if (straight_) {
            reader.emplace(path_, *straight_, padded(count));
            trace_fast(bundle, first, ends, &reader->trail());
        }
        for (std::size_t i = first; i < first + count; ++i) {
            RayCourse& course = courses[i];
            if (!straight_ || reader->trail().is_vague[i - first]
                || ends.fate[i] == RayFate::missed) {
                course.end = trace_ray(path_, bundle.ray(i), wavelength_, &course.corners);
                continue;
            }
            course = reader->course(i - first, {ends.fate[i], ends.surface[i], bundle.ray(i)});
            course.end.ray.path = ends.path[i];
        }
    }
    return courses;
}

}  // namespace beamfork
