#include "render/instance_buffer.hpp"

#include <array>
#include <cstddef>

namespace beamfork {

namespace {

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
                      Attribute{3, offsetof(RibbonInstance, colour)},
                      Attribute{2, offsetof(RibbonInstance, shares)}};
}
template <>
constexpr auto attributes_of<RibbonExtras>() {
    return std::array{Attribute{3, offsetof(RibbonExtras, zone_colour)},
                      Attribute{2, offsetof(RibbonExtras, path_mm)}};
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

}  // namespace

VertexArray instance_array(std::size_t attributes) {
    VertexArray array = VertexArray::create();
    glBindVertexArray(array.name());
    for (GLuint i = 0; i < attributes; ++i) {
        glEnableVertexAttribArray(i);
        glVertexAttribDivisor(i, 1);
    }
    glBindVertexArray(0);
    return array;
}

void draw_instances(InstanceRange range) {
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, range.count);
}

template <class Instance>
std::size_t attribute_count() {
    return attributes_of<Instance>().size();
}

template <class Instance>
void InstanceBuffer<Instance>::create() {
    array_ = instance_array(attribute_count<Instance>());
    buffer_ = Buffer::create();
}

template <class Instance>
void InstanceBuffer<Instance>::upload() const {
    glBindBuffer(GL_ARRAY_BUFFER, buffer_.name());
    glBufferData(GL_ARRAY_BUFFER, byte_size(instances_.size(), sizeof(Instance)), instances_.data(),
                 GL_STREAM_DRAW);
}

template <class Instance>
void InstanceBuffer<Instance>::draw(InstanceRange range) const {
    if (range.count == 0) return;
    glBindVertexArray(array_.name());
    bind_attributes(range);
    draw_instances(range);
}

template <class Instance>
void InstanceBuffer<Instance>::bind_attributes(InstanceRange range, GLuint first_attribute) const {
    glBindBuffer(GL_ARRAY_BUFFER, buffer_.name());
    constexpr auto attributes = attributes_of<Instance>();
    for (GLuint i = 0; i < attributes.size(); ++i) {
        glVertexAttribPointer(first_attribute + i, attributes[i].components, GL_FLOAT, GL_FALSE,
                              sizeof(Instance),
                              byte_offset(range.first * sizeof(Instance) + attributes[i].offset));
    }
}

template std::size_t attribute_count<RibbonInstance>();
template std::size_t attribute_count<RibbonExtras>();
template class InstanceBuffer<RibbonInstance>;
template class InstanceBuffer<RibbonExtras>;
template class InstanceBuffer<LineInstance>;
template class InstanceBuffer<MarkInstance>;

}  // namespace beamfork
