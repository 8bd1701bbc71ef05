#include "scene/comparison/companion.hpp"

#include <algorithm>

#include "scene/picture/fingerprint.hpp"
#include "scene/picture/ghost.hpp"

namespace beamfork {

namespace {

// Brightness is told per ray of the first train: another number of rays behind the other's light is made up for.
void add_light(Frame& frame, const Frame& other, float strength) {
    const float per_ray = static_cast<float>(std::max(1, frame.ray_count))
                          / static_cast<float>(std::max(1, other.ray_count));
    for (LightRibbon ribbon : other.light) {
        ribbon.strength *= per_ray * strength;
        frame.light.push_back(ribbon);
    }
}

void move(Bounds& bounds, glm::vec3 by) {
    bounds.low += by;
    bounds.high += by;
}

Bounds around(const Bounds& a, const Bounds& b) {
    return {glm::min(a.low, b.low), glm::max(a.high, b.high)};
}

Frame moved(Frame frame, glm::vec3 by) {
    for (std::vector<Mesh>* meshes : {&frame.meshes, &frame.housings}) {
        for (Mesh& mesh : *meshes) {
            mesh.part = -1;
            mesh.shell_axis_point += by;
            for (MeshVertex& vertex : mesh.vertices)
                vertex.position += by;
        }
    }
    for (LightRibbon& ribbon : frame.light) {
        ribbon.from += by;
        ribbon.to += by;
    }
    for (Line& line : frame.lines) {
        line.part = -1;
        line.from += by;
        line.to += by;
    }
    for (Mark& mark : frame.marks)
        mark.at += by;
    for (ImageDisc& disc : frame.discs)
        disc.centre += by;
    for (Label& label : frame.labels) {
        label.at += by;
        label.part = -1;
    }
    move(frame.bounds, by);
    move(frame.rear_bounds, by);
    move(frame.head_bounds, by);
    return frame;
}

glm::vec3 above(const Bounds& bounds) {
    const glm::vec3 centre = bounds.centre();
    return {centre.x, bounds.high.y, centre.z};
}

template <class List>
void append(List& list, const List& more) {
    list.insert(list.end(), more.begin(), more.end());
}

}  // namespace

Frame with_other_over(const Frame& now, const Frame& other, const std::string& words) {
    Frame frame = with_ghost(now, other, words);
    Frame as_ghost = other;
    for (LightRibbon& ribbon : as_ghost.light)
        ribbon.role = ColourRole::ghost;
    constexpr float beside_the_light_that_counts = 0.6F;
    add_light(frame, as_ghost, beside_the_light_that_counts);
    for (Mark mark : other.marks) {
        if (mark.shape != MarkShape::diamond) continue;  // where its image falls
        mark.role = ColourRole::ghost;
        frame.marks.push_back(mark);
    }
    frame.revision = fingerprint(frame);
    return frame;
}

Frame with_other_beside(const Frame& now, const Frame& other, const std::string& words) {
    const float gap = 0.12F * std::max(now.bounds.radius(), other.bounds.radius());
    const float across = now.bounds.high.x - other.bounds.low.x + gap;
    const Frame beside = moved(other, {across, 0, 0});
    Frame frame = now;
    append(frame.meshes, beside.meshes);
    append(frame.housings, beside.housings);
    add_light(frame, beside, 1);
    append(frame.lines, beside.lines);
    append(frame.marks, beside.marks);
    append(frame.discs, beside.discs);
    std::copy_if(beside.labels.begin(), beside.labels.end(), std::back_inserter(frame.labels),
                 [](const Label& label) {
                     return label.role == LabelRole::clipped || label.role == LabelRole::dimension;
                 });
    frame.labels.push_back({above(beside.head_bounds), words, LabelRole::title, -1, -1});
    frame.labels.push_back({above(now.head_bounds), "this setup", LabelRole::title, -1, -1});
    frame.bounds = around(now.bounds, beside.bounds);
    frame.rear_bounds = around(now.rear_bounds, beside.rear_bounds);
    frame.head_bounds = around(now.head_bounds, beside.head_bounds);
    frame.revision = fingerprint(frame);
    return frame;
}

Frame as_half(const Frame& frame, const std::string& words) {
    Frame half = frame;
    half.labels.push_back({above(frame.head_bounds), words, LabelRole::title, -1, -1});
    half.revision = fingerprint(half);
    return half;
}

}  // namespace beamfork
