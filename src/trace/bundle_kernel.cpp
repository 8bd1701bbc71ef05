#include "trace/bundle_kernel.hpp"

#include <array>

// AVX-512, AVX2, SSE4 and a fallback without vectors. The others gain nothing here.
#define HWY_DISABLED_TARGETS (HWY_AVX3_DL | HWY_SSSE3)
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "trace/bundle_kernel.cpp"
// The order counts: the first of these includes this source once for each set of instructions.
// clang-format off
#include <hwy/foreach_target.h>
#include "trace/plates-inl.hpp"
// clang-format on

HWY_BEFORE_NAMESPACE();
namespace beamfork::HWY_NAMESPACE {  // NOLINT(readability-identifier-naming)
namespace {

HWY_INLINE Beam load_beam(const RayBlock& block, std::size_t i, RayTrail* trail) {
    return {{load(&block.x[i]), load(&block.y[i]), load(&block.z[i])},
            {load(&block.kx[i]), load(&block.ky[i]), load(&block.kz[i])},
            load(&block.path[i]),
            load(&block.end[i]),
            load(&block.grazing[i]),
            trail,
            i};
}

HWY_INLINE void store_beam(const Beam& beam, RayBlock& block, std::size_t i) {
    store(beam.p.x, &block.x[i]);
    store(beam.p.y, &block.y[i]);
    store(beam.p.z, &block.z[i]);
    store(beam.k.x, &block.kx[i]);
    store(beam.k.y, &block.ky[i]);
    store(beam.k.z, &block.kz[i]);
    store(beam.path, &block.path[i]);
    store(beam.end, &block.end[i]);
    store(beam.grazing, &block.grazing[i]);
}

template <class Kind>
HWY_NOINLINE void
run_section(const StraightSection& section, const Kind& kind, RayBlock& block, RayTrail* trail) {
    const std::size_t step = 2 * vector_lanes();
    for (std::size_t i = 0; i < block.count; i += step) {
        Beam beam = load_beam(block, i, trail);
        for (const StraightPlane& plane : section.passed)
            pass(plane, beam);
        bend(kind, section.index, beam);
        store_beam(beam, block, i);
    }
}

void trace_block(std::span<const StraightSection> sections, RayBlock& block, RayTrail* trail) {
    for (const StraightSection& section : sections) {
        if (const auto* face = std::get_if<PlaneRefraction>(&section.bend)) {
            run_section(section, *face, block, trail);
        } else if (const auto* plates = std::get_if<PlateStack>(&section.bend)) {
            run_section(section, *plates, block, trail);
        } else if (const auto* lens = std::get_if<IdealThinLens>(&section.bend)) {
            run_section(section, *lens, block, trail);
        } else if (const auto* thin_plate = std::get_if<IdealPlate>(&section.bend)) {
            run_section(section, *thin_plate, block, trail);
        } else if (const auto* objective = std::get_if<IdealObjective>(&section.bend)) {
            run_section(section, *objective, block, trail);
        } else if (const auto* mirror = std::get_if<CurvedMirror>(&section.bend)) {
            run_section(section, *mirror, block, trail);
        } else if (const auto* roof = std::get_if<RoofFaces>(&section.bend)) {
            run_section(section, *roof, block, trail);
        } else if (const auto* last = std::get_if<LastPlane>(&section.bend)) {
            run_section(section, *last, block, trail);
        }
    }
}

}  // namespace
}  // namespace beamfork::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace beamfork {

namespace {
HWY_EXPORT(trace_block);
}

const std::vector<InstructionSet>& instruction_sets() {
    static const std::vector<InstructionSet> sets = [] {
        std::vector<InstructionSet> found;
        for (const std::int64_t target : hwy::SupportedAndGeneratedTargets()) {
            hwy::ChosenTarget chosen;
            chosen.Update(target);
            found.push_back(
                {hwy::TargetName(target), HWY_DISPATCH_TABLE(trace_block)[chosen.GetIndex()]});
        }
        return found;
    }();
    return sets;
}

}  // namespace beamfork
#endif
