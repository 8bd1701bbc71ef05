// Instances of one kind (ribbons, lines, marks) in a vertex buffer of their own, drawn as four-cornered strips.
//
// The buffer is replaced whole at an upload; its copy in memory is kept, so that an upload allocates nothing there
// once it has grown.
#pragma once

#include <vector>

#include "render/gl_object.hpp"

#include <glm/glm.hpp>

namespace beamfork {

struct InstanceRange {
    std::size_t first = 0;
    GLsizei count = 0;
};

struct RibbonInstance {
    glm::vec3 from;
    glm::vec3 to;
    glm::vec3 colour;  ///< already times strength
    glm::vec2 shares;  ///< of it, at either end
};

/// More vertex attributes of a ribbon, for light that is painted or moves; a buffer of their own.
struct RibbonExtras {
    glm::vec3 zone_colour;  ///< of its place on the objective, already times strength
    glm::vec2 path_mm;      ///< optical path at either end
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

/// A vertex array with so many attributes, each of which advances by instance.
VertexArray instance_array(std::size_t attributes);

template <class Instance>
std::size_t attribute_count();

template <class Instance>
class InstanceBuffer {
public:
    void create();
    void clear() { instances_.clear(); }
    void add(const Instance& instance) { instances_.push_back(instance); }
    [[nodiscard]] std::size_t size() const { return instances_.size(); }
    void upload() const;
    void draw(InstanceRange range) const;
    /// Makes its range the source of the bound vertex array's attributes, from that one on.
    void bind_attributes(InstanceRange range, GLuint first_attribute = 0) const;

private:
    VertexArray array_;
    Buffer buffer_;
    std::vector<Instance> instances_;
};

extern template class InstanceBuffer<RibbonInstance>;
extern template class InstanceBuffer<RibbonExtras>;
extern template class InstanceBuffer<LineInstance>;
extern template class InstanceBuffer<MarkInstance>;

void draw_instances(InstanceRange range);

}  // namespace beamfork
