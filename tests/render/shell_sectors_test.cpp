#include <algorithm>
#include <cmath>
#include <set>

#include "render/shell_sectors.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/constants.hpp>

using namespace beamfork;

namespace {

// A round wall of 40 strips about a slanted axis, and one large triangle across it.
Mesh slanted_wall() {
    Mesh mesh;
    mesh.is_shell = true;
    mesh.shell_axis_point = {3, -4, 5};
    mesh.shell_axis = glm::normalize(glm::vec3(0.3F, 0.2F, 0.9F));
    const glm::vec3 e = glm::normalize(glm::cross(mesh.shell_axis, glm::vec3(0, 1, 0)));
    const glm::vec3 f = glm::cross(mesh.shell_axis, e);
    constexpr std::uint32_t strips = 40;
    for (std::uint32_t i = 0; i < strips; ++i) {
        const float angle = glm::two_pi<float>() * static_cast<float>(i) / strips;
        const glm::vec3 out = std::cos(angle) * e + std::sin(angle) * f;
        for (const float along : {0.0F, 50.0F}) {
            mesh.vertices.push_back(
                {mesh.shell_axis_point + 20.0F * out + along * mesh.shell_axis, out});
        }
    }
    for (std::uint32_t i = 0; i < strips; ++i) {
        const std::uint32_t a = 2 * i;
        const std::uint32_t b = 2 * ((i + 1) % strips);
        mesh.indices.insert(mesh.indices.end(), {a, b, b + 1, a, b + 1, a + 1});
    }
    mesh.indices.insert(mesh.indices.end(), {0, 26, 52});
    return mesh;
}

std::vector<std::uint32_t> sorted_indices(const Mesh& mesh, SectorTable& table) {
    std::vector<std::uint32_t> indices;
    std::vector<std::uint8_t> scratch;
    table = append_by_sector(mesh, 0, indices, scratch);
    return indices;
}

std::multiset<std::array<std::uint32_t, 3>>
triangles_of(const std::vector<std::uint32_t>& indices) {
    std::multiset<std::array<std::uint32_t, 3>> triangles;
    for (std::size_t i = 0; i < indices.size(); i += 3)
        triangles.insert({indices[i], indices[i + 1], indices[i + 2]});
    return triangles;
}

}  // namespace

TEST_CASE("sorting by sector keeps every triangle once") {
    const Mesh mesh = slanted_wall();
    SectorTable table;
    CHECK(triangles_of(sorted_indices(mesh, table)) == triangles_of(mesh.indices));
    CHECK(table.end == mesh.indices.size());
}

TEST_CASE("only triangles whose every corner is opened away are left out, and those clear of the "
          "edges are whole") {
    const Mesh mesh = slanted_wall();
    SectorTable table;
    const auto indices = sorted_indices(mesh, table);
    for (const glm::vec3 eye :
         {glm::vec3(-400, 0, 0), glm::vec3(100, 300, -50), glm::vec3(0, -200, 300)}) {
        const ShellOpening opening = shell_opening(eye, mesh.shell_axis_point, mesh.shell_axis);
        std::vector<int> times_drawn(indices.size() / 3);
        std::vector<bool> clear(indices.size() / 3);
        for (const ShellShare share : {ShellShare::along_edges, ShellShare::clear_of_edges}) {
            for (const IndexRange& stretch : index_ranges(table, opening, share)) {
                for (std::uint32_t i = stretch.first; i < stretch.first + stretch.count; i += 3) {
                    ++times_drawn[i / 3];
                    clear[i / 3] = share == ShellShare::clear_of_edges;
                }
            }
        }
        int left_out = 0;
        for (std::size_t t = 0; t < times_drawn.size(); ++t) {
            int opened_corners = 0;
            for (std::size_t corner = 0; corner < 3; ++corner) {
                const glm::vec3 place = mesh.vertices[indices[3 * t + corner]].position;
                opened_corners += is_opened_at(mesh, place, eye) ? 1 : 0;
            }
            CHECK(times_drawn[t] <= 1);
            if (times_drawn[t] == 0) CHECK(opened_corners == 3);
            if (clear[t]) CHECK(opened_corners == 0);
            left_out += times_drawn[t] == 0 ? 1 : 0;
        }
        CHECK(left_out > 10);  // of 81: the point of it
    }
}

TEST_CASE("looking along the axis nothing is left out and nothing is cut") {
    const Mesh mesh = slanted_wall();
    SectorTable table;
    const auto indices = sorted_indices(mesh, table);
    const glm::vec3 eye = mesh.shell_axis_point + 500.0F * mesh.shell_axis;
    const ShellOpening opening = shell_opening(eye, mesh.shell_axis_point, mesh.shell_axis);
    CHECK(index_ranges(table, opening, ShellShare::along_edges).empty());
    const auto whole = index_ranges(table, opening, ShellShare::clear_of_edges);
    REQUIRE(whole.size() == 1);
    CHECK(whole[0].count == indices.size());
}
