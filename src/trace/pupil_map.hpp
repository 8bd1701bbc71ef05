// What bounds the light of a field point, as curves in the pupil: a few real rays tell how every place where light can
// be lost is met, as smooth functions of the point of the pupil. From those the lit share follows without more rays
// (pupil_outline.hpp).
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "trace/pupil_cubic.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// One condition for light to go on at one surface: an opening's edge or one of its sides, an obstruction, or the angle
/// from which on a face leaks.
struct PupilBound {
    enum class Shape : std::uint8_t {
        half,   ///< light ends where u < 0
        disc,   ///< light ends where u^2 + v^2 > 1
        block,  ///< light ends where u^2 + v^2 < 1
    };
    std::size_t surface = 0;  ///< index into EyePath::surfaces
    bool is_leak = false;
    Shape shape = Shape::half;
    PupilCubic u, v;                 ///< v is of no meaning for a half
    std::optional<PupilCubic> gate;  ///< the bound holds only where this is >= 0: half of a roof
};

/// One eye's path at the primary wavelength, made ready. Keeps references to the train and the path.
class PupilMap {
public:
    /// Nothing for a path that cannot be described so: one that the fast tracer does not know, or with an obstruction
    /// that has corners.
    static std::optional<PupilMap> of(const Train& train, const EyePath& path);
    PupilMap(PupilMap&&) noexcept;
    ~PupilMap();

    /// Traces the nodes' rays of up to `fields_at_once` field points, which take the place of those before.
    void look_from(std::span<const FieldSlope> fields);
    /// False for one of them of which a node's ray misses a surface or hardly meets it: nothing is known there.
    [[nodiscard]] bool is_known(std::size_t field) const;
    /// Those bounds that may take light of that field point, in the order in which light meets them.
    void bounds_of(std::size_t field, std::vector<PupilBound>& found) const;

private:
    struct Impl;
    explicit PupilMap(std::unique_ptr<Impl> impl);
    std::unique_ptr<Impl> impl_;
};

}  // namespace beamfork
