// The triangles of a shell in the order of their direction about its axis, so that those which the opening leaves
// out are never sent: they would be a third of all pixels of a tube.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "scene/picture/frame.hpp"
#include "scene/picture/shell_opening.hpp"

#include <glm/glm.hpp>

namespace beamfork {

inline constexpr int shell_sectors = 32;

struct SectorTable {
    glm::vec3 zero{1, 0, 0};     ///< direction of angle 0, square to the axis
    glm::vec3 quarter{0, 1, 0};  ///< direction of angle 90 degrees
    float half_span_rad = 0;     ///< no triangle reaches farther out of its sector
    /// Indices counted from the mesh's first: those of sector k lie from start[k] to start[k + 1]. Triangles
    /// too large for a sector come behind all sectors.
    std::array<std::uint32_t, shell_sectors + 1> start{};
    std::uint32_t end = 0;
};

/// Appends the shell's indices, each plus `base`, to `indices` in the order of the table. `scratch` is memory that
/// the caller keeps.
SectorTable append_by_sector(const Mesh& shell,
                             std::uint32_t base,
                             std::vector<std::uint32_t>& indices,
                             std::vector<std::uint8_t>& scratch);

/// Indices counted from the mesh's first.
struct IndexRange {
    std::uint32_t first = 0;
    std::uint32_t count = 0;
};

/// What of an opened shell is asked for: the sectors that an edge of the opening may run through, or those
/// that stay whole. What lies wholly inside the opening is in neither.
enum class ShellShare { along_edges, clear_of_edges };

std::vector<IndexRange>
index_ranges(const SectorTable& table, const ShellOpening& opening, ShellShare share);

}  // namespace beamfork
