#include "scene/picture/fingerprint.hpp"

#include <bit>
#include <string_view>

namespace beamfork {

namespace {

// FNV-1a by words of 32 bits with a final mixing (G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV
// Non-Cryptographic Hash Algorithm", IETF draft).
class Mixer {
public:
    void add(std::uint32_t word) {
        state_ ^= word;
        state_ *= 0x100000001B3ULL;
        state_ ^= state_ >> 29U;
    }
    void add(std::size_t count) { add(static_cast<std::uint32_t>(count)); }
    void add(int value) { add(static_cast<std::uint32_t>(value)); }
    void add(bool value) { add(static_cast<std::uint32_t>(value ? 1 : 0)); }
    void add(float value) { add(std::bit_cast<std::uint32_t>(value)); }
    void add(const glm::vec3& v) {
        add(v.x);
        add(v.y);
        add(v.z);
    }
    void add(std::string_view text) {
        add(text.size());
        for (const char letter : text)
            add(static_cast<int>(letter));
    }
    void add(const Bounds& bounds) {
        add(bounds.low);
        add(bounds.high);
    }
    [[nodiscard]] std::uint64_t result() const { return state_ == 0 ? 1 : state_; }

private:
    std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

void add_mesh(Mixer& mixer, const Mesh& mesh) {
    mixer.add(mesh.vertices.size());
    for (const MeshVertex& vertex : mesh.vertices) {
        mixer.add(vertex.position);
        mixer.add(vertex.normal);
    }
    mixer.add(mesh.indices.size());
    for (const std::uint32_t index : mesh.indices)
        mixer.add(index);
    mixer.add(static_cast<int>(mesh.finish));
    mixer.add(mesh.tint);
    mixer.add(mesh.part);
    mixer.add(mesh.is_shell);
    mixer.add(mesh.shell_axis_point);
    mixer.add(mesh.shell_axis);
}

void add_light(Mixer& mixer, const Frame& frame) {
    mixer.add(frame.light.size());
    for (const LightRibbon& ribbon : frame.light) {
        mixer.add(ribbon.from);
        mixer.add(ribbon.to);
        mixer.add(ribbon.colour);
        mixer.add(ribbon.strength);
        mixer.add(ribbon.clipped);
        mixer.add(ribbon.pupil.x);
        mixer.add(ribbon.pupil.y);
        mixer.add(ribbon.from_path_mm);
        mixer.add(ribbon.to_path_mm);
    }
    mixer.add(frame.ray_count);
    for (const double path : frame.arrival.at_stop_mm)
        mixer.add(static_cast<float>(path));
    mixer.add(static_cast<float>(frame.arrival.at_splitter_mm));
}

void add_signs(Mixer& mixer, const Frame& frame) {
    mixer.add(frame.lines.size());
    for (const Line& line : frame.lines) {
        mixer.add(line.from);
        mixer.add(line.to);
        mixer.add(line.colour);
        mixer.add(line.width_px);
        mixer.add(line.dashed);
        mixer.add(line.on_top);
        mixer.add(line.part);
        mixer.add(line.is_result);
    }
    mixer.add(frame.marks.size());
    for (const Mark& mark : frame.marks) {
        mixer.add(mark.at);
        mixer.add(mark.colour);
        mixer.add(mark.size_px);
        mixer.add(static_cast<int>(mark.shape));
        mixer.add(mark.on_top);
        mixer.add(mark.clipped);
    }
    mixer.add(frame.labels.size());
    for (const Label& label : frame.labels) {
        mixer.add(label.at);
        mixer.add(std::string_view(label.text));
        mixer.add(static_cast<int>(label.role));
        mixer.add(label.part);
        mixer.add(label.priority);
    }
}

void add_discs(Mixer& mixer, const Frame& frame) {
    mixer.add(frame.discs.size());
    for (const ImageDisc& disc : frame.discs) {
        mixer.add(disc.centre);
        mixer.add(disc.right);
        mixer.add(disc.up);
        mixer.add(disc.size);
        for (const Rgb& pixel : disc.pixels)
            mixer.add(pixel);
    }
}

}  // namespace

std::uint64_t fingerprint(const Frame& frame) {
    Mixer mixer;
    mixer.add(frame.meshes.size());
    for (const Mesh& mesh : frame.meshes)
        add_mesh(mixer, mesh);
    add_light(mixer, frame);
    add_signs(mixer, frame);
    add_discs(mixer, frame);
    mixer.add(frame.bounds);
    mixer.add(frame.rear_bounds);
    for (const Bounds& bounds : frame.part_bounds)
        mixer.add(bounds);
    mixer.add(frame.eye_axis);
    return mixer.result();
}

}  // namespace beamfork
