#include "render/gpu_meshes.hpp"

#include <cstddef>
#include <span>
#include <utility>

#include "base/contract.hpp"

namespace beamfork {

namespace {

// Turns each triangle so that its corners run counter-clockwise seen from where its normals point: then
// OpenGL knows its front exactly, at every sample.
void face_as_normals(const std::vector<MeshVertex>& vertices, std::span<std::uint32_t> indices) {
    for (std::size_t i = 0; i + 2 < indices.size(); i += 3) {
        const MeshVertex& a = vertices[indices[i]];
        const MeshVertex& b = vertices[indices[i + 1]];
        const MeshVertex& c = vertices[indices[i + 2]];
        const glm::vec3 across = glm::cross(b.position - a.position, c.position - a.position);
        if (glm::dot(across, a.normal + b.normal + c.normal) < 0)
            std::swap(indices[i + 1], indices[i + 2]);
    }
}

}  // namespace

void GpuMeshes::create() {
    array_ = VertexArray::create();
    vertex_buffer_ = Buffer::create();
    index_buffer_ = Buffer::create();
    glBindVertexArray(array_.name());
    glBindBuffer(GL_ARRAY_BUFFER, vertex_buffer_.name());
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, index_buffer_.name());
    glEnableVertexAttribArray(0);
    glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                          byte_offset(offsetof(MeshVertex, position)));
    glEnableVertexAttribArray(1);
    glVertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                          byte_offset(offsetof(MeshVertex, normal)));
    glBindVertexArray(0);
}

void GpuMeshes::append(const Mesh& mesh) {
    for (const std::uint32_t index : mesh.indices)
        BEAMFORK_EXPECTS(index < mesh.vertices.size());
    const auto base = static_cast<std::uint32_t>(vertices_.size());
    const std::size_t first = indices_.size();
    meshes_.push_back({.first_index = first,
                       .index_count = static_cast<GLsizei>(mesh.indices.size()),
                       .finish = mesh.finish,
                       .tint = mesh.tint,
                       .part = mesh.part,
                       .is_shell = mesh.is_shell,
                       .shell_axis_point = mesh.shell_axis_point,
                       .shell_axis = mesh.shell_axis,
                       .sectors = {}});
    vertices_.insert(vertices_.end(), mesh.vertices.begin(), mesh.vertices.end());
    if (mesh.is_shell) {
        meshes_.back().sectors = append_by_sector(mesh, base, indices_, scratch_);
    } else {
        for (const std::uint32_t index : mesh.indices)
            indices_.push_back(base + index);
    }
    face_as_normals(vertices_, std::span(indices_).subspan(first));
}

void GpuMeshes::upload(const std::vector<Mesh>& meshes) {
    vertices_.clear();
    indices_.clear();
    meshes_.clear();
    for (const Mesh& mesh : meshes)
        append(mesh);
    bind();
    glBindBuffer(GL_ARRAY_BUFFER, vertex_buffer_.name());
    glBufferData(GL_ARRAY_BUFFER, byte_size(vertices_.size(), sizeof(MeshVertex)), vertices_.data(),
                 GL_STREAM_DRAW);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, byte_size(indices_.size(), sizeof(std::uint32_t)),
                 indices_.data(), GL_STREAM_DRAW);
    glBindVertexArray(0);
}

void GpuMeshes::draw(const MeshRange& mesh) const {
    glDrawElements(GL_TRIANGLES, mesh.index_count, GL_UNSIGNED_INT,
                   byte_offset(mesh.first_index * sizeof(std::uint32_t)));
}

void GpuMeshes::draw_opened(const MeshRange& shell,
                            const ShellOpening& opening,
                            ShellShare share) const {
    for (const IndexRange& range : index_ranges(shell.sectors, opening, share)) {
        glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(range.count), GL_UNSIGNED_INT,
                       byte_offset((shell.first_index + range.first) * sizeof(std::uint32_t)));
    }
}

}  // namespace beamfork
