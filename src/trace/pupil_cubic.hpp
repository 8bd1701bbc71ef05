// A quantity of light as a cubic function of the point of the pupil, fitted to a few rays: where it meets a surface goes
// almost linearly with the place in the pupil, and what is left is coma, spherical aberration and the like.
#pragma once

#include <array>
#include <cstddef>
#include <span>

#include <glm/glm.hpp>

namespace beamfork {

/// Points of the pupil, in units of its radius, whose rays are traced: the middle, rings of 3, 5 and 7, the last its rim.
/// A cubic has ten numbers: six rays are left to tell how well it fits.
inline constexpr std::size_t pupil_node_count = 16;
using PupilNodes = std::array<glm::dvec2, pupil_node_count>;
PupilNodes pupil_nodes();

inline constexpr std::size_t cubic_term_count = 10;

/// Terms 1, x, y, x^2, xy, y^2, x^3, x^2 y, x y^2, y^3 with x, y in units of the pupil's radius.
struct PupilCubic {
    std::array<double, cubic_term_count> terms{};
    double residual = 0;  ///< largest departure of a node's ray from it

    [[nodiscard]] double at(glm::dvec2 pupil) const;
    /// The same function of the place seen from `centre`: at(p) == about(centre).at(p - centre).
    [[nodiscard]] PupilCubic about(glm::dvec2 centre) const;
    [[nodiscard]] glm::dvec2 slope() const { return {terms[1], terms[2]}; }
    /// The most that all but the constant and the slope add anywhere in the pupil.
    [[nodiscard]] double bend() const;
};

/// Field points side by side: the rays of one node for all of them stand next to each other.
inline constexpr std::size_t fields_at_once = 16;
using FieldLanes = std::array<double, fields_at_once>;

/// Cubics of many field points at once.
struct CubicLanes {
    std::array<FieldLanes, cubic_term_count> terms{};
    FieldLanes residual{};
    [[nodiscard]] PupilCubic of(std::size_t field) const;
};

/// Least squares through the values at the nodes, as two small matrices.
struct CubicFit {
    std::array<std::array<double, pupil_node_count>, cubic_term_count> terms_from_values{};
    std::array<std::array<double, cubic_term_count>, pupil_node_count> values_from_terms{};
};
CubicFit cubic_fit();

}  // namespace beamfork
