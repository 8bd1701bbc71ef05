#include "scene/picture/picking.hpp"

#include <limits>

#include "scene/picture/shell_opening.hpp"

namespace beamfork {

namespace {

struct Triangle {
    glm::vec3 a;
    glm::vec3 b;
    glm::vec3 c;
};

// T. Moeller, B. Trumbore, "Fast, Minimum Storage Ray/Triangle Intersection", Journal of Graphics Tools 2(1),
// 21-28, 1997. Both sides count.
std::optional<float> distance_to(const Triangle& triangle, const ViewRay& ray) {
    const glm::vec3 ab = triangle.b - triangle.a;
    const glm::vec3 ac = triangle.c - triangle.a;
    const glm::vec3 p = glm::cross(ray.direction, ac);
    const float determinant = glm::dot(ab, p);
    if (std::abs(determinant) < 1e-9F) return std::nullopt;
    const glm::vec3 from_a = ray.origin - triangle.a;
    const float u = glm::dot(from_a, p) / determinant;
    if (u < 0 || u > 1) return std::nullopt;
    const glm::vec3 q = glm::cross(from_a, ab);
    const float v = glm::dot(ray.direction, q) / determinant;
    if (v < 0 || u + v > 1) return std::nullopt;
    const float distance = glm::dot(ac, q) / determinant;
    if (distance <= 0) return std::nullopt;
    return distance;
}

bool is_seen(const Mesh& mesh,
             const glm::vec3& place,
             const glm::vec3& eye,
             const ViewOptions& options) {
    switch (options.shells) {
    case ShellView::whole: return true;
    case ShellView::hidden: return !mesh.is_shell;
    case ShellView::open: return !mesh.is_shell || !is_opened_at(mesh, place, eye);
    case ShellView::section:
        return mesh.finish == Finish::mirror || mesh.finish == Finish::glass
               || place.x >= options.section_x_mm;
    }
    return true;
}

}  // namespace

std::optional<int> part_at(const Frame& frame, const ViewRay& ray, const ViewOptions& options) {
    float nearest = std::numeric_limits<float>::max();
    std::optional<int> found;
    std::vector<const Mesh*> meshes;
    for (const Mesh& mesh : frame.meshes)
        if (mesh.part >= 0) meshes.push_back(&mesh);
    if (options.shells == ShellView::whole)
        for (const Mesh& mesh : frame.housings)
            meshes.push_back(&mesh);
    for (const Mesh* one : meshes) {
        const Mesh& mesh = *one;
        for (std::size_t i = 0; i + 2 < mesh.indices.size(); i += 3) {
            const auto corner = [&](std::size_t k) {
                return mesh.vertices[mesh.indices[i + k]].position;
            };
            const auto distance = distance_to({corner(0), corner(1), corner(2)}, ray);
            if (!distance || *distance >= nearest) continue;
            if (!is_seen(mesh, ray.origin + *distance * ray.direction, ray.origin, options))
                continue;
            nearest = *distance;
            found = mesh.part;
        }
    }
    return found;
}

}  // namespace beamfork
