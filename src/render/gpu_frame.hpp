// A Frame as it lies on the graphics card: one vertex buffer for all bodies, one instance per ribbon,
// line and mark, one small texture per field-stop image.
//
// Instances are stored in groups, so that a pass draws "all but the clipped rays" or "only what lies on
// top" as one range. Buffers are replaced whole at an upload, host copies are reused: once grown, an
// upload allocates nothing on the host.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "render/gl_object.hpp"
#include "render/shell_sectors.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

/// A stretch of the index buffer with what its shader needs to know of the mesh.
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

struct InstanceRange {
    std::size_t first = 0;
    GLsizei count = 0;
};

/// Lines that stand out or fade together, next to each other in the buffer.
struct LineGroup {
    int part = -1;
    bool is_result = false;
    InstanceRange range;
};

struct RibbonInstance {
    glm::vec3 from;
    glm::vec3 to;
    glm::vec3 colour;  ///< already times strength
};

/// What a ribbon tells besides, for light that is painted or moves.
struct RibbonTale {
    glm::vec3 painted;  ///< colour of its place on the objective, already times strength
    glm::vec2 path_mm;  ///< optical path at either end
};

struct LineInstance {
    glm::vec3 from;
    glm::vec3 to;
    glm::vec3 colour;
    float width_px;
    float dashed;
};

struct MarkInstance {
    glm::vec3 at;
    glm::vec3 colour;
    float size_px;
    float shape;
};

/// Instances of one kind with their buffer; `draw` draws a range of them as four-cornered strips.
template <class Instance>
class InstanceBuffer {
public:
    void create();
    void clear() { host_.clear(); }
    void add(const Instance& instance) { host_.push_back(instance); }
    [[nodiscard]] std::size_t size() const { return host_.size(); }
    void send() const;
    void draw(InstanceRange range) const;
    /// Makes its range the source of the bound layout's attributes, from that one on.
    void point(InstanceRange range, GLuint first_attribute = 0) const;

private:
    VertexArray layout_;
    Buffer buffer_;
    std::vector<Instance> host_;
};

extern template class InstanceBuffer<RibbonInstance>;
extern template class InstanceBuffer<RibbonTale>;
extern template class InstanceBuffer<LineInstance>;
extern template class InstanceBuffer<MarkInstance>;

/// One field-stop image and where it stands.
struct DiscOnCard {
    Texture texture;
    int size = 0;
    glm::vec3 centre{0};
    glm::vec3 right{1, 0, 0};
    glm::vec3 up{0, 1, 0};
};

class GpuFrame {
public:
    /// Needs a current context.
    static GpuFrame create();

    /// Sends the frame; nothing happens when its revision is the one last sent.
    void upload(const Frame& frame);

    [[nodiscard]] const std::vector<MeshRange>& meshes() const { return meshes_; }
    void draw_mesh(const MeshRange& mesh) const;
    void draw_opened(const MeshRange& shell, const ShellOpening& opening, ShellShare share) const;
    void bind_meshes() const;

    [[nodiscard]] const std::vector<DiscOnCard>& discs() const { return discs_; }
    [[nodiscard]] std::size_t disc_count() const { return disc_count_; }

    /// Of the rays that share, as LightRibbon::rank says: a quarter, half, or all of them.
    void draw_light(bool with_clipped, float rays) const;
    /// With what the ribbons tell besides; `send_tales` has been called since the upload.
    void draw_told_light(bool with_clipped, float rays) const;
    /// Sends that, once for each upload: light that neither is painted nor moves does without.
    void send_tales();
    void draw_lines(bool on_top) const;
    [[nodiscard]] const std::vector<LineGroup>& line_groups(bool on_top) const {
        return line_groups_[on_top ? 1 : 0];
    }
    void draw_lines(const LineGroup& group) const { lines_.draw(group.range); }
    void draw_marks(bool on_top, bool with_clipped) const;

    [[nodiscard]] int ray_count() const { return ray_count_; }
    /// Breadth of the light across the train, for its brightness, in mm.
    [[nodiscard]] float light_breadth_mm() const { return light_breadth_mm_; }

private:
    void send_meshes(const Frame& frame);
    void send_light(const Frame& frame);
    void send_lines(const Frame& frame);
    void send_marks(const Frame& frame);
    void send_discs(const Frame& frame);

    std::optional<std::uint64_t> revision_;
    VertexArray mesh_layout_;
    Buffer vertices_;
    Buffer indices_;
    std::vector<MeshVertex> host_vertices_;
    std::vector<std::uint32_t> host_indices_;
    std::vector<std::uint8_t> scratch_;
    std::vector<MeshRange> meshes_;
    InstanceBuffer<RibbonInstance> light_;
    [[nodiscard]] InstanceRange light_range(bool clipped, float rays) const;
    InstanceRange light_groups_[2][3];  // [clipped][up to a quarter of the rays, half, all]
    InstanceBuffer<RibbonTale> tales_;
    VertexArray told_layout_;
    bool tales_are_sent_ = false;
    InstanceBuffer<LineInstance> lines_;
    InstanceRange lines_hidden_;
    InstanceRange lines_on_top_;
    std::vector<LineGroup> line_groups_[2];  // [on top]
    InstanceBuffer<MarkInstance> marks_;
    InstanceRange marks_groups_[2][2];  // [on top][clipped]
    std::vector<DiscOnCard> discs_;
    std::size_t disc_count_ = 0;
    int ray_count_ = 1;
    float light_breadth_mm_ = 1;
};

}  // namespace beamfork
