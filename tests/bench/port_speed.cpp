#include "port_speed.hpp"

#include <algorithm>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "bench/port_speed.cpp"
#define HWY_DISABLED_TARGETS (HWY_AVX3_DL | HWY_SSSE3)
// The order counts: the first of these includes this source once for each set of instructions.
// clang-format off
#include <hwy/foreach_target.h>
#include <hwy/highway.h>
// clang-format on
#include <benchmark/benchmark.h>

HWY_BEFORE_NAMESPACE();
namespace bench::HWY_NAMESPACE {
namespace hn = hwy::HWY_NAMESPACE;
using Tag = hn::ScalableTag<double>;
using Vector = hn::Vec<Tag>;

enum class Work { product, division, root };

template <Work work>
HWY_INLINE Vector worked(Vector v, Vector by) {
    if constexpr (work == Work::product) return hn::MulAdd(v, by, by);
    if constexpr (work == Work::division) return hn::Div(by, v);
    return hn::Sqrt(v);
}

// Twelve chains side by side, more than any unit's delay, and no two alike.
template <Work work>
HWY_INLINE void spend() {
    const Vector by = hn::Set(Tag(), 0.999);
    const auto start = [](double value) HWY_ATTR { return hn::Set(Tag(), value); };
    Vector a = start(1.01), b = start(1.02), c = start(1.03), d = start(1.04);
    Vector e = start(1.05), f = start(1.06), g = start(1.07), h = start(1.08);
    Vector i = start(1.09), j = start(1.11), k = start(1.12), l = start(1.13);
    const auto turns = static_cast<std::size_t>(spent_numbers / 12) / hn::Lanes(Tag());
    for (std::size_t turn = 0; turn < turns; ++turn) {
        a = worked<work>(a, by), b = worked<work>(b, by), c = worked<work>(c, by);
        d = worked<work>(d, by), e = worked<work>(e, by), f = worked<work>(f, by);
        g = worked<work>(g, by), h = worked<work>(h, by), i = worked<work>(i, by);
        j = worked<work>(j, by), k = worked<work>(k, by), l = worked<work>(l, by);
    }
    const Vector sum = hn::Add(
        hn::Add(hn::Add(a, b), hn::Add(c, d)),
        hn::Add(hn::Add(hn::Add(e, f), hn::Add(g, h)), hn::Add(hn::Add(i, j), hn::Add(k, l))));
    benchmark::DoNotOptimize(hn::GetLane(sum));
}

void products() { spend<Work::product>(); }
void divisions() { spend<Work::division>(); }
void roots() { spend<Work::root>(); }

}  // namespace bench::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace bench {

namespace {
HWY_EXPORT(products);
HWY_EXPORT(divisions);
HWY_EXPORT(roots);
}  // namespace

void spend_products() { HWY_DYNAMIC_DISPATCH(products)(); }
void spend_divisions() { HWY_DYNAMIC_DISPATCH(divisions)(); }
void spend_roots() { HWY_DYNAMIC_DISPATCH(roots)(); }

double least_time(const EyePath& path, const PortTimes& each) {
    double sum = 0;
    const auto add = [&](double products, double divisions, double roots) {
        sum += std::max(products * each.product, divisions * each.division + roots * each.root);
    };
    for (const PlacedSurface& surface : path.surfaces) {
        switch (surface.kind) {
        case SurfaceKind::refraction: add(17, 1, 1); break;
        case SurfaceKind::mirror:
        case SurfaceKind::total_reflection: add(16, 1, 0); break;
        case SurfaceKind::objective:
        case SurfaceKind::phase_plate:
        case SurfaceKind::thin_lens: add(28, 2, 1); break;
        case SurfaceKind::stop:
        case SurfaceKind::obstruction: add(13, 1, 0); break;
        }
    }
    return sum;
}

}  // namespace bench
#endif
