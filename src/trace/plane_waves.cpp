#include "trace/plane_waves.hpp"

#include <cstdint>

#include "base/contract.hpp"

// As in bundle_kernel.cpp: AVX-512, AVX2, SSE4 and a fallback without vectors.
#define HWY_DISABLED_TARGETS (HWY_AVX3_DL | HWY_SSSE3)
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "trace/plane_waves.cpp"
// The order counts: the first of these includes this source once for each set of instructions.
// clang-format off
#include <hwy/foreach_target.h>
#include <hwy/highway.h>
#include <hwy/contrib/math/math-inl.h>
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)
namespace {

namespace hn = hwy::HWY_NAMESPACE;
using Lanes = hn::ScalableTag<double>;
using Lane = hn::Vec<Lanes>;

struct Wave {
    Lane real, imaginary;
};

HWY_INLINE Wave wave_of(Lane waves) {
    const Lanes lanes;
    const Lane turn = hn::Set(lanes, 6.283185307179586);
    const Lane angle = hn::Mul(turn, hn::Sub(waves, hn::Round(waves)));
    return {hn::Cos(lanes, angle), hn::Sin(lanes, angle)};
}

HWY_INLINE Wave times(const Wave& a, const Wave& b) {
    return {hn::NegMulAdd(a.imaginary, b.imaginary, hn::Mul(a.real, b.real)),
            hn::MulAdd(a.real, b.imaginary, hn::Mul(a.imaginary, b.real))};
}

HWY_INLINE double total(Lane lane) {
    const Lanes lanes;
    return hn::GetLane(hn::SumOfLanes(lanes, lane));
}

// The lanes from `first` on, 0 where there are no more values.
HWY_INLINE Lane load_up_to_end(const std::vector<double>& values, std::size_t first) {
    const Lanes lanes;
    if (first + hn::Lanes(lanes) <= values.size()) return hn::LoadU(lanes, &values[first]);
    HWY_ALIGN double rest[hn::MaxLanes(Lanes())] = {};
    for (std::size_t i = first; i < values.size(); ++i)
        rest[i - first] = values[i];
    return hn::Load(lanes, rest);
}

Amplitude sum_waves(std::span<const double> waves) {
    const Lanes lanes;
    const std::size_t step = hn::Lanes(lanes);
    Lane real = hn::Zero(lanes);
    Lane imaginary = hn::Zero(lanes);
    std::size_t i = 0;
    for (; i + step <= waves.size(); i += step) {
        const Wave wave = wave_of(hn::LoadU(lanes, &waves[i]));
        real = hn::Add(real, wave.real);
        imaginary = hn::Add(imaginary, wave.imaginary);
    }
    Amplitude sum{total(real), total(imaginary)};
    HWY_ALIGN double rest[hn::MaxLanes(Lanes())] = {};
    if (i == waves.size()) return sum;
    const std::size_t left = waves.size() - i;
    for (std::size_t k = 0; k < left; ++k)
        rest[k] = waves[i + k];
    const Wave last = wave_of(hn::Load(lanes, rest));
    const auto is_wave = hn::FirstN(lanes, left);
    sum.real += total(hn::IfThenElseZero(is_wave, last.real));
    sum.imaginary += total(hn::IfThenElseZero(is_wave, last.imaginary));
    return sum;
}

// One row of the grid for each place along an axis; a row holds the waves' values there, several to a vector.
class GridRows {
public:
    GridRows(std::size_t places, std::size_t vectors)
        : vectors_(vectors), rows_(2 * places * vectors * hn::Lanes(Lanes())) {}
    HWY_INLINE void set(std::size_t place, std::size_t vector, const Wave& wave) {
        double* to = &rows_[first(place, vector)];
        hn::StoreU(wave.real, Lanes(), to);
        hn::StoreU(wave.imaginary, Lanes(), to + hn::Lanes(Lanes()));
    }
    HWY_INLINE Wave get(std::size_t place, std::size_t vector) const {
        const double* from = &rows_[first(place, vector)];
        return {hn::LoadU(Lanes(), from), hn::LoadU(Lanes(), from + hn::Lanes(Lanes()))};
    }

private:
    HWY_INLINE std::size_t first(std::size_t place, std::size_t vector) const {
        return 2 * (place * vectors_ + vector) * hn::Lanes(Lanes());
    }
    std::size_t vectors_;
    std::vector<double> rows_;
};

// Fills places one growth apart by turning on from the first.
HWY_INLINE void
fill(GridRows& rows, std::size_t places, std::size_t vector, Wave first, Lane growth) {
    const Wave turn = wave_of(growth);
    for (std::size_t place = 0; place < places; ++place) {
        rows.set(place, vector, first);
        first = times(first, turn);
    }
}

// The places at +x and -x share their products: with u the wave along y and c, s the cosine and sine along x, they
// are u c + i u s and u c - i u s.
void sum_grid(const WavesOverGrid& waves, std::size_t side, Amplitude* sums) {
    const Lanes lanes;
    const std::size_t step = hn::Lanes(lanes);
    const std::size_t vectors = (waves.phase.size() + step - 1) / step;
    const std::size_t half = side / 2;
    GridRows across(half + 1, vectors);
    GridRows up(side, vectors);
    for (std::size_t v = 0; v < vectors; ++v) {
        const std::size_t first = v * step;
        const Lane growth = load_up_to_end(waves.up, first);
        const Lane lowest = hn::NegMulAdd(hn::Set(lanes, static_cast<double>(half)), growth,
                                          load_up_to_end(waves.phase, first));
        Wave start = wave_of(lowest);
        if (first + step > waves.phase.size()) {
            const auto is_wave = hn::FirstN(lanes, waves.phase.size() - first);
            start = {hn::IfThenElseZero(is_wave, start.real),
                     hn::IfThenElseZero(is_wave, start.imaginary)};
        }
        fill(up, side, v, start, growth);
        fill(across, half + 1, v, {hn::Set(lanes, 1), hn::Zero(lanes)},
             load_up_to_end(waves.across, first));
    }
    for (std::size_t y = 0; y < side; ++y) {
        for (std::size_t x = 0; x <= half; ++x) {
            Lane real_c = hn::Zero(lanes);
            Lane real_s = real_c;
            Lane imaginary_c = real_c;
            Lane imaginary_s = real_c;
            for (std::size_t v = 0; v < vectors; ++v) {
                const Wave u = up.get(y, v);
                const Wave e = across.get(x, v);
                real_c = hn::MulAdd(u.real, e.real, real_c);
                real_s = hn::MulAdd(u.real, e.imaginary, real_s);
                imaginary_c = hn::MulAdd(u.imaginary, e.real, imaginary_c);
                imaginary_s = hn::MulAdd(u.imaginary, e.imaginary, imaginary_s);
            }
            Amplitude* row = sums + y * side + half;
            row[x] = {total(hn::Sub(real_c, imaginary_s)), total(hn::Add(imaginary_c, real_s))};
            *(row - x) = {total(hn::Add(real_c, imaginary_s)), total(hn::Sub(imaginary_c, real_s))};
        }
    }
}

}  // namespace
}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace beamfork {

namespace {
HWY_EXPORT(sum_waves);
HWY_EXPORT(sum_grid);
}  // namespace

Amplitude sum_of_waves(std::span<const double> waves) {
    return HWY_DYNAMIC_DISPATCH(sum_waves)(waves);
}

std::vector<Amplitude> sum_over_grid(const WavesOverGrid& waves, int side) {
    BEAMFORK_EXPECTS(side > 0 && side % 2 == 1);
    BEAMFORK_EXPECTS(waves.across.size() == waves.phase.size());
    BEAMFORK_EXPECTS(waves.up.size() == waves.phase.size());
    std::vector<Amplitude> sums(static_cast<std::size_t>(side * side));
    HWY_DYNAMIC_DISPATCH(sum_grid)(waves, static_cast<std::size_t>(side), sums.data());
    return sums;
}

}  // namespace beamfork
#endif
