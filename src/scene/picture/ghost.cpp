#include "scene/picture/ghost.hpp"

#include <algorithm>

#include "scene/kit/colours.hpp"
#include "scene/picture/fingerprint.hpp"

namespace beamfork {

namespace {

constexpr float same_place_mm = 0.02F;

bool is_at(const Mesh& mesh, const Mesh& other) {
    return mesh.vertices.size() == other.vertices.size()
           && std::equal(mesh.vertices.begin(), mesh.vertices.end(), other.vertices.begin(),
                         [](const MeshVertex& a, const MeshVertex& b) {
                             return glm::distance(a.position, b.position) < same_place_mm;
                         });
}

Mesh ghost_of(Mesh mesh) {
    mesh.finish = Finish::glass;
    mesh.tint = role_rgb(ColourRole::ghost);
    mesh.part = -1;
    mesh.is_shell = false;
    return mesh;
}

bool is_line_of(const Frame& frame, const Line& line) {
    return std::any_of(frame.lines.begin(), frame.lines.end(), [&](const Line& other) {
        return glm::distance(line.from, other.from) < same_place_mm
               && glm::distance(line.to, other.to) < same_place_mm;
    });
}

}  // namespace

Frame with_ghost(const Frame& now, const Frame& changed, const std::string& words) {
    Frame frame = now;
    glm::vec3 low = now.rear_bounds.high;
    glm::vec3 high = now.rear_bounds.low;
    bool is_any = false;
    for (const Mesh& mesh : changed.meshes) {
        const bool stays = std::any_of(now.meshes.begin(), now.meshes.end(),
                                       [&](const Mesh& other) { return is_at(mesh, other); });
        if (stays) continue;
        for (const MeshVertex& vertex : mesh.vertices) {
            low = is_any ? glm::min(low, vertex.position) : vertex.position;
            high = is_any ? glm::max(high, vertex.position) : vertex.position;
            is_any = true;
        }
        frame.meshes.push_back(ghost_of(mesh));
    }
    for (Line line : changed.lines) {
        if (line.on_top || is_line_of(now, line)) continue;
        line.role = ColourRole::ghost;
        line.shade = 1;
        line.part = -1;
        frame.lines.push_back(line);
    }
    const Bounds& rear = now.rear_bounds;
    const glm::vec3 at = is_any ? 0.5F * (low + high) : rear.centre();
    frame.labels.insert(frame.labels.begin(),
                        {at, is_any ? words : words + " (nothing moves)", LabelRole::note, -1, -1});
    frame.revision = fingerprint(frame);
    return frame;
}

}  // namespace beamfork
