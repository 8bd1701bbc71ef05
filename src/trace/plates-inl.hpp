// A stack of plates for many rays at once: light keeps its part across the axis through all faces, so that one root
// for each medium tells its slope, and a plane square to the axis costs four products.
//
// Included once for each set of vector instructions (see hwy/foreach_target.h), so it has no ordinary guard.
#if defined(BEAMFORK_TRACE_PLATES_INL_HPP) == defined(HWY_TARGET_TOGGLE)
#ifdef BEAMFORK_TRACE_PLATES_INL_HPP
#undef BEAMFORK_TRACE_PLATES_INL_HPP
#else
#define BEAMFORK_TRACE_PLATES_INL_HPP
#endif

#include "trace/bends-inl.hpp"
#include "trace/bundle_kernel.hpp"

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)

// The light's part along the axis in each medium, and its inverse.
struct MediaSlopes {
    Wide kz[PlateStack::most_media];
    Wide inverse[PlateStack::most_media];
};

HWY_INLINE void
find_slopes(const PlateStack& stack, MediaSlopes& media, const Wide& across, Beam& beam) {
    for (std::size_t m = 0; m < stack.indices.size(); ++m) {
        const double n = stack.indices[m];
        const Wide along_squared = all(n * n) - across;
        beam.grazing = min(beam.grazing, abs(along_squared));
        const Wide along = sqrt(max(along_squared, all(near_grazing)));
        media.kz[m] = copysign(along, beam.k.z);
        media.inverse[m] = all(1) / media.kz[m];
    }
}

HWY_INLINE Wide dot2(const Wide& x, const Wide& y, const Direction& d) {
    return fma(x, all(d.x), y * all(d.y));
}

HWY_INLINE WideMask is_within_square(const StraightPlane& plane, const Wide& x, const Wide& y) {
    switch (plane.edge) {
    case EdgeShape::circle: {
        const Wide from_x = x - all(plane.centre.x);
        const Wide from_y = y - all(plane.centre.y);
        return fma(from_x, from_x, from_y * from_y) <= all(plane.radius_squared);
    }
    case EdgeShape::ellipse:
    case EdgeShape::rectangle: {
        const Wide u = dot2(x, y, plane.u) - all(plane.from_u);
        const Wide v = dot2(x, y, plane.v) - all(plane.from_v);
        return (plane.edge == EdgeShape::ellipse ? fma(u, u, v * v) : max(abs(u), abs(v)))
               <= all(1);
    }
    case EdgeShape::polygon: {
        Wide lowest = all(never);
        for (const EdgeSide& side : plane.sides)
            lowest = min(lowest, dot2(x, y, side.along) - all(side.from));
        return all(0) <= lowest;
    }
    case EdgeShape::none: break;
    }
    return all(0) <= all(1);
}

// Light at a square plane, and what it keeps between planes.
struct InStack {
    Wide x, y;
    Wide travelled;  ///< from the first square plane, in parts across the axis
};

HWY_INLINE void
pass_tilted(const PlateStep& step, const MediaSlopes& media, const InStack& now, Beam& beam) {
    const Direction& n = step.plane.normal;
    const Wide kz = media.kz[step.medium];
    Hit hit;
    hit.cosine = fma(kz, all(n.z), dot2(beam.k.x, beam.k.y, n));
    hit.t = (all(step.from_square) - dot2(now.x, now.y, n)) / hit.cosine;
    hit.at = onward({now.x, now.y, all(step.square_plane)}, hit.t, {beam.k.x, beam.k.y, kz});
    keep(step.plane, hit.t, hit.at, {beam.k.x, beam.k.y, kz}, beam);
    judge_edge(step.plane, hit, beam);
}

HWY_INLINE void pass_square(
    const PlateStep& step, const MediaSlopes& media, const Wide& across, InStack& now, Beam& beam) {
    now.travelled = fma(all(step.advance), media.inverse[step.medium], now.travelled);
    now.x = fma(beam.k.x, now.travelled, beam.p.x);
    now.y = fma(beam.k.y, now.travelled, beam.p.y);
    const StraightPlane& plane = step.plane;
    keep(plane, now.travelled, {now.x, now.y, all(step.square_plane)},
         {beam.k.x, beam.k.y, media.kz[step.medium]}, beam);
    if (plane.edge != EdgeShape::none || plane.is_obstruction || plane.reflects_totally) {
        const WideMask within = is_within_square(plane, now.x, now.y);
        beam.end = min(beam.end, end_here(plane, within, media.kz[step.medium]));
    }
    if (step.may_leak) {
        const WideMask goes_on = across <= all(step.across_most);
        beam.end = min(beam.end, code_unless(goes_on, plane.code + code_leaked));
    }
}

HWY_INLINE void bend(const PlateStack& stack, double index, Beam& beam) {
    MediaSlopes media;
    const Wide across = fma(beam.k.x, beam.k.x, beam.k.y * beam.k.y);
    find_slopes(stack, media, across, beam);
    const Wide to_first = (all(stack.first_plane) - beam.p.z) * media.inverse[stack.medium_before];
    beam.path = fma(to_first, all(index * index), beam.path);
    beam.p.x = fma(beam.k.x, to_first, beam.p.x);
    beam.p.y = fma(beam.k.y, to_first, beam.p.y);
    InStack now{beam.p.x, beam.p.y, all(0)};
    for (const PlateStep& step : stack.steps) {
        if (step.is_square) {
            pass_square(step, media, across, now, beam);
        } else {
            pass_tilted(step, media, now, beam);
        }
    }
    for (std::size_t m = 0; m < stack.indices.size(); ++m) {
        const double n = stack.indices[m];
        beam.path = fma(all(n * n * stack.lengths[m]), media.inverse[m], beam.path);
    }
    beam.p = {now.x, now.y, all(stack.last_plane)};
    beam.k.z = media.kz[stack.medium_after];
}

}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
