// What each surface of a straightened path does to many rays at once. The same formulas as interact() in ray.cpp, with
// directions of the length n.
//
// Included once for each set of vector instructions (see hwy/foreach_target.h), so it has no ordinary guard.
#if defined(BEAMFORK_TRACE_BENDS_INL_HPP) == defined(HWY_TARGET_TOGGLE)
#ifdef BEAMFORK_TRACE_BENDS_INL_HPP
#undef BEAMFORK_TRACE_BENDS_INL_HPP
#else
#define BEAMFORK_TRACE_BENDS_INL_HPP
#endif

#include <limits>

#include "trace/bundle_kernel.hpp"
#include "trace/wide-inl.hpp"

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)

struct Beam {
    Wide3 p, k;
    Wide path, end, grazing;
    RayTrail* trail = nullptr;  ///< to be kept, if at all
    std::size_t lane = 0;       ///< of its first ray in its block
};

struct Hit {
    Wide cosine;  ///< of length n: the light's part along the normal
    Wide t;       ///< from where the light was, in its own directions
    Wide3 at;
};

constexpr double never = std::numeric_limits<double>::infinity();

HWY_INLINE Hit meet(const StraightPlane& plane, const Beam& beam) {
    Hit hit;
    hit.cosine = dot(beam.k, plane.normal);
    hit.t = (all(plane.offset) - dot(beam.p, plane.normal)) / hit.cosine;
    hit.at = onward(beam.p, hit.t, beam.k);
    return hit;
}

HWY_INLINE Wide lowest_side(const StraightPlane& plane, const Wide3& at) {
    Wide lowest = all(never);
    for (const EdgeSide& side : plane.sides)
        lowest = min(lowest, dot(at, side.along) - all(side.from));
    return lowest;
}

HWY_INLINE WideMask is_within(const StraightPlane& plane, const Wide3& at) {
    switch (plane.edge) {
    case EdgeShape::circle: return square(minus(at, plane.centre)) <= all(plane.radius_squared);
    case EdgeShape::ellipse: {
        const Wide u = dot(at, plane.u) - all(plane.from_u);
        const Wide v = dot(at, plane.v) - all(plane.from_v);
        return fma(u, u, v * v) <= all(1);
    }
    case EdgeShape::rectangle: {
        const Wide u = dot(at, plane.u) - all(plane.from_u);
        const Wide v = dot(at, plane.v) - all(plane.from_v);
        return max(abs(u), abs(v)) <= all(1);
    }
    case EdgeShape::polygon: return all(0) <= lowest_side(plane, at);
    case EdgeShape::none: break;
    }
    return all(0) <= all(1);
}

HWY_INLINE Wide code_unless(const WideMask& passes, double code) {
    return choose(passes, all(never), all(code));
}

// How light ends that meets the plane's edge as told, with that part along its normal; endless where it does not.
HWY_INLINE Wide end_here(const StraightPlane& plane, const WideMask& within, const Wide& cosine) {
    const double clipped = plane.code + code_clipped;
    Wide end = plane.is_obstruction ? choose(within, all(clipped), all(never))
                                    : code_unless(within, clipped);
    if (plane.reflects_totally) {
        const WideMask holds = cosine * cosine <= all(plane.steepest);
        end = min(end, code_unless(holds, plane.code + code_leaked));
    }
    return end;
}

HWY_INLINE void judge_edge(const StraightPlane& plane, const Hit& hit, Beam& beam) {
    beam.grazing = min(beam.grazing, abs(hit.cosine));
    if (plane.edge == EdgeShape::none && !plane.is_obstruction && !plane.reflects_totally) return;
    beam.end = min(beam.end, end_here(plane, is_within(plane, hit.at), hit.cosine));
}

HWY_INLINE void
keep(const StraightPlane& plane, const Wide& t, const Wide3& at, const Wide3& k, const Beam& beam) {
    if (!beam.trail) return;
    store_anywhere(at.x, beam.trail->column(plane.surface, RayTrail::x) + beam.lane);
    store_anywhere(at.y, beam.trail->column(plane.surface, RayTrail::y) + beam.lane);
    store_anywhere(at.z, beam.trail->column(plane.surface, RayTrail::z) + beam.lane);
    store_anywhere(k.x, beam.trail->column(plane.surface, RayTrail::kx) + beam.lane);
    store_anywhere(k.y, beam.trail->column(plane.surface, RayTrail::ky) + beam.lane);
    store_anywhere(k.z, beam.trail->column(plane.surface, RayTrail::kz) + beam.lane);
    store_anywhere(t, beam.trail->column(plane.surface, RayTrail::t) + beam.lane);
}

HWY_INLINE void judge(const StraightPlane& plane, const Hit& hit, Beam& beam) {
    keep(plane, hit.t, hit.at, beam.k, beam);
    judge_edge(plane, hit, beam);
}

HWY_INLINE void pass(const StraightPlane& plane, Beam& beam) {
    judge(plane, meet(plane, beam), beam);
}

HWY_INLINE void go_to(const Hit& hit, double index, Beam& beam) {
    beam.p = hit.at;
    beam.path = fma(hit.t, all(index * index), beam.path);
}

HWY_INLINE void bend(const PlaneRefraction& face, double index, Beam& beam) {
    const Hit hit = meet(face.plane, beam);
    judge(face.plane, hit, beam);
    const Wide after_squared = fma(hit.cosine, hit.cosine, all(face.more));
    beam.end = min(beam.end, code_unless(all(0) <= after_squared, face.plane.code + code_leaked));
    const Wide after = copysign(sqrt(max(after_squared, all(0))), hit.cosine);
    const Wide change = after - hit.cosine;
    go_to(hit, index, beam);
    const Direction& n = face.plane.normal;
    beam.k = onward(beam.k, change, {all(n.x), all(n.y), all(n.z)});
}

HWY_INLINE Wide3 point_in(const ElementFrame& frame, const Wide3& p) {
    const Wide3 from_origin = minus(p, frame.origin);
    return frame.is_upright ? from_origin : turned_back(frame.axes, from_origin);
}
HWY_INLINE Wide3 point_out(const ElementFrame& frame, const Wide3& p) {
    return plus(frame.is_upright ? p : turned(frame.axes, p), frame.origin);
}
HWY_INLINE Wide3 direction_in(const ElementFrame& frame, const Wide3& k) {
    return frame.is_upright ? k : turned_back(frame.axes, k);
}
HWY_INLINE Wide3 direction_out(const ElementFrame& frame, const Wide3& k) {
    return frame.is_upright ? k : turned(frame.axes, k);
}

HWY_INLINE void bend(const IdealObjective& lens, double index, Beam& beam) {
    const Hit hit = meet(lens.plane, beam);
    judge(lens.plane, hit, beam);
    go_to(hit, index, beam);
    const Wide3 q = point_in(lens.frame, hit.at);
    const Wide3 k = direction_in(lens.frame, beam.k);
    const Wide straight = all(1) / k.z;
    const Wide stretch = abs(straight * all(index));  // length of the slope's vector (x, y, 1)
    const Wide slope_x = k.x * straight;
    const Wide slope_y = k.y * straight;
    Wide image_x = all(lens.focal_length) * slope_x;
    Wide image_y = all(lens.focal_length) * slope_y;
    Wide arrived = fma(q.x, k.x, q.y * k.y) * all(1 / index);
    Wide chief = abs(all(lens.focal_length) * stretch);
    if (!lens.is_far) {
        const Wide object_x = fnma(all(lens.object), slope_x, q.x);
        const Wide object_y = fnma(all(lens.object), slope_y, q.y);
        const double enlarged = lens.image / lens.object;
        image_x = object_x * all(-enlarged);
        image_y = object_y * all(-enlarged);
        arrived = all(std::abs(lens.object)) * stretch;
        const Wide3 object{object_x, object_y, all(lens.object)};
        chief = sqrt(square(object)) * all(std::abs(enlarged) + 1);
    }
    const Wide r_squared = fma(q.x, q.x, q.y * q.y);
    const Wide sag_z = all(lens.image) - sqrt(all(lens.image * lens.image) - r_squared);
    const Wide3 to{image_x - q.x, image_y - q.y, all(lens.image) - sag_z};
    const Wide to_image = sqrt(square(to));
    beam.path = beam.path + (chief - to_image - arrived);
    const Wide scale = all(index) / to_image;
    beam.p = point_out(lens.frame, {q.x, q.y, sag_z});
    beam.k = direction_out(lens.frame, {to.x * scale, to.y * scale, to.z * scale});
}

HWY_INLINE void bend(const IdealThinLens& lens, double index, Beam& beam) {
    const Hit hit = meet(lens.plane, beam);
    judge(lens.plane, hit, beam);
    go_to(hit, index, beam);
    const Wide3 q = point_in(lens.frame, hit.at);
    const Wide3 k = direction_in(lens.frame, beam.k);
    const Wide straight = all(1) / k.z;
    const Wide slope_x = k.x * straight;
    const Wide slope_y = k.y * straight;
    const Wide out_x = fnma(q.x, all(lens.power), slope_x);
    const Wide out_y = fnma(q.y, all(lens.power), slope_y);
    const Wide stretch_in = abs(straight * all(index));
    const Wide stretch_out = sqrt(fma(out_x, out_x, fma(out_y, out_y, all(1))));
    const Wide s = all(lens.object);
    const Wide3 object{fma(s, slope_x, q.x), fma(s, slope_y, q.y), s};
    const Wide chief = copysign(sqrt(square(object)), s) * all(lens.chief_gain);
    const Wide gained = fma(s, stretch_in, fnma(all(lens.image), stretch_out, chief));
    beam.path = beam.path + gained;
    const Wide scale = all(index) / stretch_out;
    beam.k = direction_out(lens.frame, {out_x * scale, out_y * scale, scale});
}

HWY_INLINE void bend(const IdealPlate& plate, double index, Beam& beam) {
    const Hit hit = meet(plate.plane, beam);
    judge(plate.plane, hit, beam);
    go_to(hit, index, beam);
    const Wide3 at = point_in(plate.frame, hit.at);
    const Wide3 k = direction_in(plate.frame, beam.k);
    const Wide q = fma(at.x, at.x, at.y * at.y);
    Wide added = all(0);
    Wide turn = all(0);
    for (std::size_t i = PhaseProfile::count; i-- > 0;) {
        added = fma(added, q, all(plate.profile.terms[i]));
        turn = fma(turn, q, all((static_cast<double>(i) + 2) * plate.profile.terms[i]));
    }
    beam.path = fma(added, q * q, beam.path);
    turn = all(2) * turn * q;
    const Wide x = fma(turn, at.x, k.x);
    const Wide y = fma(turn, at.y, k.y);
    const Wide along_squared = all(index * index) - fma(x, x, y * y);
    beam.end = min(beam.end, code_unless(all(0) <= along_squared, plate.plane.code + code_leaked));
    const Wide z = copysign(sqrt(max(along_squared, all(0))), k.z);
    beam.k = direction_out(plate.frame, {x, y, z});
}

// Reflected, then mirrored in the plane of its vertex, so that light goes on as it came.
HWY_INLINE void bend(const CurvedMirror& mirror, double index, Beam& beam) {
    Wide3 p = point_in(mirror.frame, beam.p);
    const Wide3 k = direction_in(mirror.frame, beam.k);
    Hit hit;
    hit.cosine = k.z;
    hit.t = (all(0) - p.z) / k.z;
    p = onward(p, hit.t, k);
    p.z = all(0);
    const Wide c = all(mirror.curvature);
    const Wide stretch = all(mirror.stretch);
    const Wide across = fma(k.x, k.x, k.y * k.y);
    const Wide quadratic = c * fma(stretch, k.z * k.z, across);
    const Wide half_linear = c * fma(p.x, k.x, p.y * k.y) - k.z;
    const Wide constant = c * fma(p.x, p.x, p.y * p.y);
    const Wide root_squared = fnma(quadratic, constant, half_linear * half_linear);
    const Wide root = sqrt(max(root_squared, all(0)));
    const Wide minus_linear = all(0) - half_linear;
    const Wide divisor = minus_linear + copysign(root, minus_linear);
    const Wide farther = constant / divisor;
    beam.end = min(beam.end, code_unless(all(0) <= root_squared, mirror.plane.code + code_missed));
    beam.grazing = min(beam.grazing, abs(divisor));
    hit.at = onward(p, farther, k);
    keep(mirror.plane, hit.t, point_out(mirror.frame, hit.at), beam.k, beam);
    judge_edge(mirror.plane, {hit.cosine, hit.t, {hit.at.x, hit.at.y, all(0)}}, beam);
    beam.path = fma(hit.t + farther, all(index * index), beam.path);
    const Wide3 normal{c * hit.at.x, c * hit.at.y, fma(c * stretch, hit.at.z, all(-1))};
    const Wide along = fma(k.x, normal.x, fma(k.y, normal.y, k.z * normal.z));
    const Wide twice = (all(-2) * along) / square(normal);
    const Wide3 back = onward(k, twice, normal);
    beam.p = point_out(mirror.frame, {hit.at.x, hit.at.y, all(0) - hit.at.z});
    beam.k = direction_out(mirror.frame, {back.x, back.y, all(0) - back.z});
}

// How light ends at the first of two planes that ends it.
HWY_INLINE Wide first_end(const StraightPlane& a,
                          const Hit& hit_a,
                          const StraightPlane& b,
                          const Hit& hit_b) {
    const Wide end_a = end_here(a, is_within(a, hit_a.at), hit_a.cosine);
    const Wide end_b = end_here(b, is_within(b, hit_b.at), hit_b.cosine);
    return choose(end_a < all(never), end_a, end_b);
}

HWY_INLINE Wide3 mirrored_point(const StraightPlane& plane, const Wide3& p) {
    const Wide twice = all(2) * (all(plane.offset) - dot(p, plane.normal));
    const Direction& n = plane.normal;
    return onward(p, twice, {all(n.x), all(n.y), all(n.z)});
}
HWY_INLINE Wide3 mirrored_direction(const StraightPlane& plane, const Wide3& k) {
    const Direction& n = plane.normal;
    return onward(k, all(-2) * dot(k, n), {all(n.x), all(n.y), all(n.z)});
}

// Where each face was met, in the path's own straightened space: light that met the other face first came to this
// one through that face's mirror.
struct RoofHits {
    Hit first, second, second_first, first_second;
};
HWY_INLINE void
keep_roof(const RoofFaces& roof, const RoofHits& hits, const WideMask& is_swapped, Beam& beam) {
    if (!beam.trail) return;
    keep(roof.first, choose(is_swapped, hits.first_second.t, hits.first.t),
         choose(is_swapped, mirrored_point(roof.second_first, hits.first_second.at), hits.first.at),
         choose(is_swapped, mirrored_direction(roof.second_first, beam.k), beam.k), beam);
    keep(roof.second, choose(is_swapped, hits.second_first.t, hits.second.t),
         choose(is_swapped, mirrored_point(roof.first, hits.second_first.at), hits.second.at),
         choose(is_swapped, mirrored_direction(roof.first, beam.k), beam.k), beam);
}

HWY_INLINE void bend(const RoofFaces& roof, double /*index*/, Beam& beam) {
    const RoofHits hits{meet(roof.first, beam), meet(roof.second, beam),
                        meet(roof.second_first, beam), meet(roof.first_second, beam)};
    const WideMask is_swapped = hits.second_first.t < hits.first.t;
    const Wide usual = first_end(roof.first, hits.first, roof.second, hits.second);
    const Wide swapped =
        first_end(roof.second_first, hits.second_first, roof.first_second, hits.first_second);
    beam.end = min(beam.end, choose(is_swapped, swapped, usual));
    for (const Hit* hit : {&hits.first, &hits.second, &hits.second_first, &hits.first_second})
        beam.grazing = min(beam.grazing, abs(hit->cosine));
    keep_roof(roof, hits, is_swapped, beam);
    const Wide3 p = plus(turned(roof.correction.turn, beam.p), roof.correction.shift);
    beam.p = choose(is_swapped, p, beam.p);
    beam.k = choose(is_swapped, turned(roof.correction.turn, beam.k), beam.k);
}

HWY_INLINE void bend(const LastPlane& last, double index, Beam& beam) {
    const Hit hit = meet(last.plane, beam);
    keep(last.plane, hit.t, hit.at, beam.k, beam);
    beam.grazing = min(beam.grazing, abs(hit.cosine));
    go_to(hit, index, beam);
    const Wide3 at = minus(hit.at, last.plane.centre);
    beam.p = {dot(at, last.x), dot(at, last.y), all(0)};
    beam.k = {dot(beam.k, last.x), dot(beam.k, last.y), hit.cosine};
}

}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
