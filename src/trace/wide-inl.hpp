// Numbers of many rays at once, written like single numbers. A Wide is two of the processor's vectors side by side:
// two independent chains of sums keep its units busy, and a constant is fetched once for both.
//
// Included once for each set of vector instructions (see hwy/foreach_target.h), so it has no ordinary guard.
#if defined(BEAMFORK_TRACE_WIDE_INL_HPP) == defined(HWY_TARGET_TOGGLE)
#ifdef BEAMFORK_TRACE_WIDE_INL_HPP
#undef BEAMFORK_TRACE_WIDE_INL_HPP
#else
#define BEAMFORK_TRACE_WIDE_INL_HPP
#endif

#include <cstddef>

#include "geometry/pose.hpp"

#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)

namespace hn = hwy::HWY_NAMESPACE;
using Tag = hn::ScalableTag<double>;
using Vector = hn::Vec<Tag>;
using VectorMask = hn::Mask<Tag>;

struct Wide {
    Vector a, b;
};
struct WideMask {
    VectorMask a, b;
};
struct Wide3 {
    Wide x, y, z;
};

HWY_INLINE std::size_t vector_lanes() { return hn::Lanes(Tag()); }

HWY_INLINE Wide all(double value) {
    const Vector v = hn::Set(Tag(), value);
    return {v, v};
}
HWY_INLINE Wide load(const double* from) {
    return {hn::Load(Tag(), from), hn::Load(Tag(), from + vector_lanes())};
}
HWY_INLINE void store(const Wide& w, double* to) {
    hn::Store(w.a, Tag(), to);
    hn::Store(w.b, Tag(), to + vector_lanes());
}
HWY_INLINE void store_anywhere(const Wide& w, double* to) {
    hn::StoreU(w.a, Tag(), to);
    hn::StoreU(w.b, Tag(), to + vector_lanes());
}

HWY_INLINE Wide operator+(const Wide& l, const Wide& r) {
    return {hn::Add(l.a, r.a), hn::Add(l.b, r.b)};
}
HWY_INLINE Wide operator-(const Wide& l, const Wide& r) {
    return {hn::Sub(l.a, r.a), hn::Sub(l.b, r.b)};
}
HWY_INLINE Wide operator*(const Wide& l, const Wide& r) {
    return {hn::Mul(l.a, r.a), hn::Mul(l.b, r.b)};
}
HWY_INLINE Wide operator/(const Wide& l, const Wide& r) {
    return {hn::Div(l.a, r.a), hn::Div(l.b, r.b)};
}
/// l * r + plus
HWY_INLINE Wide fma(const Wide& l, const Wide& r, const Wide& plus) {
    return {hn::MulAdd(l.a, r.a, plus.a), hn::MulAdd(l.b, r.b, plus.b)};
}
/// from - l * r
HWY_INLINE Wide fnma(const Wide& l, const Wide& r, const Wide& from) {
    return {hn::NegMulAdd(l.a, r.a, from.a), hn::NegMulAdd(l.b, r.b, from.b)};
}
HWY_INLINE Wide sqrt(const Wide& w) { return {hn::Sqrt(w.a), hn::Sqrt(w.b)}; }
HWY_INLINE Wide abs(const Wide& w) { return {hn::Abs(w.a), hn::Abs(w.b)}; }
HWY_INLINE Wide min(const Wide& l, const Wide& r) { return {hn::Min(l.a, r.a), hn::Min(l.b, r.b)}; }
HWY_INLINE Wide max(const Wide& l, const Wide& r) { return {hn::Max(l.a, r.a), hn::Max(l.b, r.b)}; }
HWY_INLINE Wide copysign(const Wide& size, const Wide& sign) {
    return {hn::CopySign(size.a, sign.a), hn::CopySign(size.b, sign.b)};
}
HWY_INLINE WideMask operator<=(const Wide& l, const Wide& r) {
    return {hn::Le(l.a, r.a), hn::Le(l.b, r.b)};
}
HWY_INLINE WideMask operator<(const Wide& l, const Wide& r) {
    return {hn::Lt(l.a, r.a), hn::Lt(l.b, r.b)};
}
HWY_INLINE WideMask operator==(const Wide& l, const Wide& r) {
    return {hn::Eq(l.a, r.a), hn::Eq(l.b, r.b)};
}
HWY_INLINE Wide choose(const WideMask& where, const Wide& yes, const Wide& no) {
    return {hn::IfThenElse(where.a, yes.a, no.a), hn::IfThenElse(where.b, yes.b, no.b)};
}
HWY_INLINE Wide3 choose(const WideMask& where, const Wide3& yes, const Wide3& no) {
    return {choose(where, yes.x, no.x), choose(where, yes.y, no.y), choose(where, yes.z, no.z)};
}

HWY_INLINE Wide dot(const Wide3& l, const Direction& r) {
    return fma(l.x, all(r.x), fma(l.y, all(r.y), l.z * all(r.z)));
}
HWY_INLINE Wide square(const Wide3& w) { return fma(w.x, w.x, fma(w.y, w.y, w.z * w.z)); }
HWY_INLINE Wide3 minus(const Wide3& l, const Point& r) {
    return {l.x - all(r.x), l.y - all(r.y), l.z - all(r.z)};
}
HWY_INLINE Wide3 plus(const Wide3& l, const Point& r) {
    return {l.x + all(r.x), l.y + all(r.y), l.z + all(r.z)};
}
/// from + t along
HWY_INLINE Wide3 onward(const Wide3& from, const Wide& t, const Wide3& along) {
    return {fma(t, along.x, from.x), fma(t, along.y, from.y), fma(t, along.z, from.z)};
}
HWY_INLINE Wide3 turned(const glm::dmat3& m, const Wide3& w) {
    return {fma(w.x, all(m[0][0]), fma(w.y, all(m[1][0]), w.z * all(m[2][0]))),
            fma(w.x, all(m[0][1]), fma(w.y, all(m[1][1]), w.z * all(m[2][1]))),
            fma(w.x, all(m[0][2]), fma(w.y, all(m[1][2]), w.z * all(m[2][2])))};
}
HWY_INLINE Wide3 turned_back(const glm::dmat3& m, const Wide3& w) {
    return {dot(w, m[0]), dot(w, m[1]), dot(w, m[2])};
}

}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#endif
