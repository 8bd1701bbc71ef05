#include "render/gpu_frame.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <utility>

#include "base/contract.hpp"
#include "scene/picture/pupil_paint.hpp"

namespace beamfork {

namespace {

// How few rays a picture may have; each group of the buffer holds the rays of the one before, too.
constexpr std::array ray_shares{0.25F, 0.5F, 1.0F};

struct Attribute {
    GLint components;
    std::size_t offset;
};

template <class Instance>
constexpr auto attributes_of();
template <>
constexpr auto attributes_of<RibbonInstance>() {
    return std::array{Attribute{3, offsetof(RibbonInstance, from)},
                      Attribute{3, offsetof(RibbonInstance, to)},
                      Attribute{3, offsetof(RibbonInstance, colour)}};
}
template <>
constexpr auto attributes_of<RibbonTale>() {
    return std::array{Attribute{3, offsetof(RibbonTale, painted)},
                      Attribute{2, offsetof(RibbonTale, path_mm)}};
}
template <>
constexpr auto attributes_of<LineInstance>() {
    return std::array{Attribute{3, offsetof(LineInstance, from)},
                      Attribute{3, offsetof(LineInstance, to)},
                      Attribute{3, offsetof(LineInstance, colour)},
                      Attribute{2, offsetof(LineInstance, width_px)}};
}
template <>
constexpr auto attributes_of<MarkInstance>() {
    return std::array{Attribute{3, offsetof(MarkInstance, at)},
                      Attribute{3, offsetof(MarkInstance, colour)},
                      Attribute{2, offsetof(MarkInstance, size_px)}};
}

const void* byte_offset(std::size_t bytes) {
    return reinterpret_cast<const void*>(bytes);  // NOLINT(performance-no-int-to-ptr): GL's way
}

GLsizeiptr byte_size(std::size_t count, std::size_t each) {
    return static_cast<GLsizeiptr>(count * each);
}

void set_texture_defaults() {
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
}

// By PupilPlace.
std::array<Rgb, pupil_places.size()> paint_of_zones() {
    std::array<Rgb, pupil_places.size()> paint;
    for (const PupilPlace place : pupil_places)
        paint.at(static_cast<std::size_t>(place)) = linear_rgb(pupil_zone(place).srgb_hex);
    return paint;
}

/// Turns each triangle so that its corners run counter-clockwise seen from where its normals point: then
/// OpenGL knows its front exactly, at every sample.
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

namespace {

VertexArray instance_layout(std::size_t attributes) {
    VertexArray layout = VertexArray::create();
    glBindVertexArray(layout.name());
    for (GLuint i = 0; i < attributes; ++i) {
        glEnableVertexAttribArray(i);
        glVertexAttribDivisor(i, 1);
    }
    glBindVertexArray(0);
    return layout;
}

}  // namespace

template <class Instance>
void InstanceBuffer<Instance>::create() {
    layout_ = instance_layout(attributes_of<Instance>().size());
    buffer_ = Buffer::create();
}

template <class Instance>
void InstanceBuffer<Instance>::send() const {
    glBindBuffer(GL_ARRAY_BUFFER, buffer_.name());
    glBufferData(GL_ARRAY_BUFFER, byte_size(host_.size(), sizeof(Instance)), host_.data(),
                 GL_STREAM_DRAW);
}

template <class Instance>
void InstanceBuffer<Instance>::draw(InstanceRange range) const {
    if (range.count == 0) return;
    glBindVertexArray(layout_.name());
    point(range);
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, range.count);
}

template <class Instance>
void InstanceBuffer<Instance>::point(InstanceRange range, GLuint first_attribute) const {
    glBindBuffer(GL_ARRAY_BUFFER, buffer_.name());
    constexpr auto attributes = attributes_of<Instance>();
    for (GLuint i = 0; i < attributes.size(); ++i) {
        glVertexAttribPointer(first_attribute + i, attributes[i].components, GL_FLOAT, GL_FALSE,
                              sizeof(Instance),
                              byte_offset(range.first * sizeof(Instance) + attributes[i].offset));
    }
}

template class InstanceBuffer<RibbonInstance>;
template class InstanceBuffer<RibbonTale>;
template class InstanceBuffer<LineInstance>;
template class InstanceBuffer<MarkInstance>;

GpuFrame GpuFrame::create() {
    GpuFrame made;
    made.mesh_layout_ = VertexArray::create();
    made.vertices_ = Buffer::create();
    made.indices_ = Buffer::create();
    glBindVertexArray(made.mesh_layout_.name());
    glBindBuffer(GL_ARRAY_BUFFER, made.vertices_.name());
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, made.indices_.name());
    glEnableVertexAttribArray(0);
    glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                          byte_offset(offsetof(MeshVertex, position)));
    glEnableVertexAttribArray(1);
    glVertexAttribPointer(1, 3, GL_FLOAT, GL_FALSE, sizeof(MeshVertex),
                          byte_offset(offsetof(MeshVertex, normal)));
    glBindVertexArray(0);
    made.light_.create();
    made.tales_.create();
    made.told_layout_ = instance_layout(attributes_of<RibbonInstance>().size()
                                        + attributes_of<RibbonTale>().size());
    made.lines_.create();
    made.marks_.create();
    return made;
}

void GpuFrame::upload(const Frame& frame) {
    if (revision_ == frame.revision) return;
    revision_ = frame.revision;
    send_meshes(frame);
    send_light(frame);
    send_lines(frame);
    send_marks(frame);
    send_discs(frame);
}

void GpuFrame::send_meshes(const Frame& frame) {
    host_vertices_.clear();
    host_indices_.clear();
    meshes_.clear();
    for (const Mesh& mesh : frame.meshes) {
        for (const std::uint32_t index : mesh.indices)
            BEAMFORK_EXPECTS(index < mesh.vertices.size());
        const auto base = static_cast<std::uint32_t>(host_vertices_.size());
        meshes_.push_back({.first_index = host_indices_.size(),
                           .index_count = static_cast<GLsizei>(mesh.indices.size()),
                           .finish = mesh.finish,
                           .tint = mesh.tint,
                           .part = mesh.part,
                           .is_shell = mesh.is_shell,
                           .shell_axis_point = mesh.shell_axis_point,
                           .shell_axis = mesh.shell_axis,
                           .sectors = {}});
        host_vertices_.insert(host_vertices_.end(), mesh.vertices.begin(), mesh.vertices.end());
        const std::size_t first = host_indices_.size();
        if (mesh.is_shell) {
            meshes_.back().sectors = append_by_sector(mesh, base, host_indices_, scratch_);
        } else {
            for (const std::uint32_t index : mesh.indices)
                host_indices_.push_back(base + index);
        }
        face_as_normals(host_vertices_, std::span(host_indices_).subspan(first));
    }
    glBindVertexArray(mesh_layout_.name());
    glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    glBufferData(GL_ARRAY_BUFFER, byte_size(host_vertices_.size(), sizeof(MeshVertex)),
                 host_vertices_.data(), GL_STREAM_DRAW);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, byte_size(host_indices_.size(), sizeof(std::uint32_t)),
                 host_indices_.data(), GL_STREAM_DRAW);
    glBindVertexArray(0);
}

void GpuFrame::send_light(const Frame& frame) {
    light_.clear();
    tales_.clear();
    tales_are_sent_ = false;
    const std::array paint = paint_of_zones();
    float low = 0;
    float high = 0;
    const auto add_group = [&](bool clipped, float from_rank, float to_rank) {
        for (const LightRibbon& ribbon : frame.light) {
            if (ribbon.clipped != clipped || ribbon.rank < from_rank || ribbon.rank >= to_rank)
                continue;
            light_.add({ribbon.from, ribbon.to, ribbon.colour * ribbon.strength});
            tales_.add(
                {paint[static_cast<std::size_t>(pupil_place(ribbon.pupil))] * ribbon.strength,
                 {ribbon.from_path_mm, ribbon.to_path_mm}});
            low = std::min({low, ribbon.from.x, ribbon.to.x});
            high = std::max({high, ribbon.from.x, ribbon.to.x});
        }
    };
    for (const bool clipped : {false, true}) {
        const std::size_t first = light_.size();
        float from_rank = 0;
        for (std::size_t i = 0; i < ray_shares.size(); ++i) {
            const bool is_last = i + 1 == ray_shares.size();
            const float to_rank = is_last ? std::numeric_limits<float>::infinity() : ray_shares[i];
            add_group(clipped, from_rank, to_rank);
            from_rank = to_rank;
            light_groups_[clipped ? 1 : 0][i] = {first,
                                                 static_cast<GLsizei>(light_.size() - first)};
        }
    }
    light_.send();
    ray_count_ = std::max(1, frame.ray_count);
    light_breadth_mm_ = std::max(1.0F, high - low);
}

void GpuFrame::send_lines(const Frame& frame) {
    lines_.clear();
    for (const bool on_top : {false, true}) {
        const std::size_t first = lines_.size();
        auto& groups = line_groups_[on_top ? 1 : 0];
        groups.clear();
        for (const Line& line : frame.lines) {
            if (line.on_top != on_top) continue;
            const bool goes_on = !groups.empty() && groups.back().part == line.part
                                 && groups.back().is_result == line.is_result;
            if (!goes_on) groups.push_back({line.part, line.is_result, {lines_.size(), 0}});
            ++groups.back().range.count;
            lines_.add({line.from, line.to, line.colour, line.width_px, line.dashed ? 1.0F : 0.0F});
        }
        (on_top ? lines_on_top_ : lines_hidden_) = {first,
                                                    static_cast<GLsizei>(lines_.size() - first)};
    }
    lines_.send();
}

void GpuFrame::send_marks(const Frame& frame) {
    marks_.clear();
    for (const bool on_top : {false, true}) {
        for (const bool clipped : {false, true}) {
            const std::size_t first = marks_.size();
            for (const Mark& mark : frame.marks) {
                if (mark.on_top != on_top || mark.clipped != clipped) continue;
                marks_.add({mark.at, mark.colour, mark.size_px, static_cast<float>(mark.shape)});
            }
            marks_groups_[on_top ? 1 : 0][clipped ? 1 : 0] = {
                first, static_cast<GLsizei>(marks_.size() - first)};
        }
    }
    marks_.send();
}

void GpuFrame::send_discs(const Frame& frame) {
    disc_count_ = frame.discs.size();
    if (discs_.size() < disc_count_) discs_.resize(disc_count_);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    for (std::size_t i = 0; i < disc_count_; ++i) {
        const ImageDisc& disc = frame.discs[i];
        DiscOnCard& on_card = discs_[i];
        BEAMFORK_EXPECTS(disc.pixels.size() == static_cast<std::size_t>(disc.size) * disc.size);
        on_card.centre = disc.centre;
        on_card.right = disc.right;
        on_card.up = disc.up;
        if (on_card.texture.name() == 0) {
            on_card.texture = Texture::create();
            glBindTexture(GL_TEXTURE_2D, on_card.texture.name());
            set_texture_defaults();
        }
        glBindTexture(GL_TEXTURE_2D, on_card.texture.name());
        if (on_card.size == disc.size) {
            glTexSubImage2D(GL_TEXTURE_2D, 0, 0, 0, disc.size, disc.size, GL_RGB, GL_FLOAT,
                            disc.pixels.data());
        } else {
            glTexImage2D(GL_TEXTURE_2D, 0, GL_RGB16F, disc.size, disc.size, 0, GL_RGB, GL_FLOAT,
                         disc.pixels.data());
            on_card.size = disc.size;
        }
    }
}

void GpuFrame::bind_meshes() const { glBindVertexArray(mesh_layout_.name()); }

void GpuFrame::draw_mesh(const MeshRange& mesh) const {
    glDrawElements(GL_TRIANGLES, mesh.index_count, GL_UNSIGNED_INT,
                   byte_offset(mesh.first_index * sizeof(std::uint32_t)));
}

void GpuFrame::draw_opened(const MeshRange& shell,
                           const ShellOpening& opening,
                           ShellShare share) const {
    for (const IndexStretch& stretch : stretches_of(shell.sectors, opening, share)) {
        glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(stretch.count), GL_UNSIGNED_INT,
                       byte_offset((shell.first_index + stretch.first) * sizeof(std::uint32_t)));
    }
}

InstanceRange GpuFrame::light_range(bool clipped, float rays) const {
    const auto* const enough = std::find_if(ray_shares.begin(), ray_shares.end() - 1,
                                            [rays](float share) { return share >= rays; });
    return light_groups_[clipped ? 1 : 0][enough - ray_shares.begin()];
}

void GpuFrame::draw_light(bool with_clipped, float rays) const {
    light_.draw(light_range(false, rays));
    if (with_clipped) light_.draw(light_range(true, rays));
}

void GpuFrame::draw_told_light(bool with_clipped, float rays) const {
    glBindVertexArray(told_layout_.name());
    for (const bool clipped : {false, true}) {
        const InstanceRange range = light_range(clipped, rays);
        if (range.count == 0 || (clipped && !with_clipped)) continue;
        light_.point(range);
        tales_.point(range, attributes_of<RibbonInstance>().size());
        glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, range.count);
    }
}

void GpuFrame::send_tales() {
    if (!std::exchange(tales_are_sent_, true)) tales_.send();
}

void GpuFrame::draw_lines(bool on_top) const {
    lines_.draw(on_top ? lines_on_top_ : lines_hidden_);
}

void GpuFrame::draw_marks(bool on_top, bool with_clipped) const {
    marks_.draw(marks_groups_[on_top ? 1 : 0][0]);
    if (with_clipped) marks_.draw(marks_groups_[on_top ? 1 : 0][1]);
}

}  // namespace beamfork
