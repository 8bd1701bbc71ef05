// Bodies on the graphics card: all meshes of a Frame in one vertex and one index buffer.
#pragma once

#include <cstdint>
#include <vector>

#include "render/gl_object.hpp"
#include "render/shell_sectors.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

/// One mesh: its range of the index buffer, with what its shader needs to know of it.
struct MeshRange {
    std::size_t first_index = 0;
    GLsizei index_count = 0;
    Finish finish = Finish::metal;
    Rgb tint{0.5F};
    int part = -1;
    bool is_shell = false;
    glm::vec3 shell_axis_point{0};
    glm::vec3 shell_axis{0, 0, 1};
    SectorTable sectors;  ///< of a shell
};

class GpuMeshes {
public:
    void create();
    void upload(const std::vector<Mesh>& meshes);

    [[nodiscard]] const std::vector<MeshRange>& all() const { return meshes_; }
    /// Before the calls below.
    void bind() const { glBindVertexArray(array_.name()); }
    void draw(const MeshRange& mesh) const;
    void draw_opened(const MeshRange& shell, const ShellOpening& opening, ShellShare share) const;

private:
    void append(const Mesh& mesh);

    VertexArray array_;
    Buffer vertex_buffer_;
    Buffer index_buffer_;
    std::vector<MeshVertex> vertices_;
    std::vector<std::uint32_t> indices_;
    std::vector<std::uint8_t> scratch_;
    std::vector<MeshRange> meshes_;
};

}  // namespace beamfork
