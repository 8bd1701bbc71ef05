#include "render/shell_sectors.hpp"

#include <algorithm>
#include <cmath>

#include <glm/gtc/constants.hpp>

namespace beamfork {

namespace {

constexpr float sector_rad = glm::two_pi<float>() / shell_sectors;
constexpr float widest_span_rad = 0.45F;  // of a triangle that may be left out
constexpr float rim_rad = 0.15F;          // room beyond the edge for its bright line
constexpr std::uint8_t too_large = shell_sectors;

struct Directions {
    glm::vec3 axis_point;
    glm::vec3 zero;
    glm::vec3 quarter;
    [[nodiscard]] float angle(const glm::vec3& at) const {
        const glm::vec3 d = at - axis_point;
        return std::atan2(glm::dot(d, quarter), glm::dot(d, zero));
    }
};

float turn(float from, float to) { return std::remainder(to - from, glm::two_pi<float>()); }

}  // namespace

SectorTable append_by_sector(const Mesh& shell,
                             std::uint32_t base,
                             std::vector<std::uint32_t>& indices,
                             std::vector<std::uint8_t>& scratch) {
    SectorTable table;
    const glm::vec3 hint =
        std::abs(shell.shell_axis.x) < 0.7F ? glm::vec3(1, 0, 0) : glm::vec3(0, 1, 0);
    table.zero = glm::normalize(hint - glm::dot(hint, shell.shell_axis) * shell.shell_axis);
    table.quarter = glm::cross(shell.shell_axis, table.zero);
    const Directions directions{shell.shell_axis_point, table.zero, table.quarter};
    const std::size_t triangles = shell.indices.size() / 3;
    scratch.assign(triangles, too_large);
    std::array<std::uint32_t, shell_sectors + 2> count{};
    for (std::size_t t = 0; t < triangles; ++t) {
        const auto angle = [&](std::size_t corner) {
            return directions.angle(shell.vertices[shell.indices[3 * t + corner]].position);
        };
        const float a = angle(0);
        const float to_b = turn(a, angle(1));
        const float to_c = turn(a, angle(2));
        const float low = std::min({0.0F, to_b, to_c});
        const float high = std::max({0.0F, to_b, to_c});
        if (high - low < widest_span_rad) {
            const float middle = a + 0.5F * (low + high);
            const int sector =
                static_cast<int>(std::floor(middle / sector_rad)) + 2 * shell_sectors;
            scratch[t] = static_cast<std::uint8_t>(sector % shell_sectors);
            table.half_span_rad = std::max(table.half_span_rad, 0.5F * (high - low));
        }
        count[scratch[t] + 1U] += 3;
    }
    for (std::size_t k = 1; k < count.size(); ++k)
        count[k] += count[k - 1];
    std::copy_n(count.begin(), table.start.size(), table.start.begin());
    table.end = count.back();
    const std::size_t first = indices.size();
    indices.resize(first + table.end);
    for (std::size_t t = 0; t < triangles; ++t) {
        for (std::size_t corner = 0; corner < 3; ++corner) {
            indices[first + count[scratch[t]]++] = base + shell.indices[3 * t + corner];
        }
    }
    return table;
}

std::vector<IndexRange>
index_ranges(const SectorTable& table, const ShellOpening& opening, ShellShare share) {
    const bool edges = share == ShellShare::along_edges;
    if (opening.cosine > 1)
        return edges ? std::vector<IndexRange>{} : std::vector{IndexRange{0, table.end}};
    const float half_opening = std::acos(std::max(-1.0F, opening.cosine));
    const float middle =
        std::atan2(glm::dot(opening.towards, table.quarter), glm::dot(opening.towards, table.zero));
    const float reach = 0.5F * sector_rad + table.half_span_rad;
    std::vector<IndexRange> wanted;
    const auto add = [&wanted](std::uint32_t first, std::uint32_t end) {
        if (first == end) return;
        if (!wanted.empty() && wanted.back().first + wanted.back().count == first) {
            wanted.back().count += end - first;
        } else {
            wanted.push_back({first, end - first});
        }
    };
    for (std::uint32_t k = 0; k < shell_sectors; ++k) {
        const float away = std::abs(turn(middle, (static_cast<float>(k) + 0.5F) * sector_rad));
        const bool inside = away + reach <= half_opening;
        const bool clear = away - reach > half_opening + rim_rad;
        if (edges ? !inside && !clear : clear) add(table.start[k], table.start[k + 1]);
    }
    if (edges) add(table.start[shell_sectors], table.end);  // too large to tell
    return wanted;
}

}  // namespace beamfork
