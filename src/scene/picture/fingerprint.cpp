#include "scene/picture/fingerprint.hpp"

#include <bit>
#include <type_traits>

namespace beamfork {

namespace {

// FNV-1a by words of 32 bits with a final mixing (G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV
// Non-Cryptographic Hash Algorithm", IETF draft).
//
// Every struct is taken apart into all its members by one binding, so that a member that is forgotten here does not compile.
class Mixer {
public:
    template <class... Values>
    void add_all(const Values&... values) {
        (add(values), ...);
    }
    [[nodiscard]] std::uint64_t result() const { return state_ == 0 ? 1 : state_; }

private:
    void add(std::uint32_t word) {
        state_ ^= word;
        state_ *= 0x100000001B3ULL;
        state_ ^= state_ >> 29U;
    }
    void add(std::uint64_t word) {
        add(static_cast<std::uint32_t>(word));
        add(static_cast<std::uint32_t>(word >> 32U));
    }
    void add(int value) { add(static_cast<std::uint32_t>(value)); }
    void add(bool value) { add(static_cast<std::uint32_t>(value ? 1 : 0)); }
    void add(float value) { add(std::bit_cast<std::uint32_t>(value)); }
    void add(double value) { add(std::bit_cast<std::uint64_t>(value)); }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void add(Enum value) { add(static_cast<std::uint32_t>(value)); }
    void add(const glm::vec2& v) { add_all(v.x, v.y); }
    void add(const glm::vec3& v) { add_all(v.x, v.y, v.z); }
    void add(const std::string& text) {
        add(text.size());
        for (const char letter : text)
            add(static_cast<int>(letter));
    }
    template <class Value>
    void add(const std::vector<Value>& values) {
        add(values.size());
        for (const Value& value : values)
            add(value);
    }
    template <class Value, std::size_t count>
    void add(const std::array<Value, count>& values) {
        for (const Value& value : values)
            add(value);
    }

    void add(const MeshVertex& vertex) {
        const auto& [position, normal] = vertex;
        add_all(position, normal);
    }
    void add(const Mesh& mesh) {
        const auto& [vertices, indices, finish, tint, part, is_shell, axis_point, axis] = mesh;
        add_all(vertices, indices, finish, tint, part, is_shell, axis_point, axis);
    }
    void add(const LightRibbon& ribbon) {
        const auto& [from, to, colour, strength, clipped, rank, pupil, from_path, to_path] = ribbon;
        add_all(from, to, colour, strength, clipped, rank, pupil, from_path, to_path);
    }
    void add(const LightArrival& arrival) {
        const auto& [is_known, at_splitter, at_stop, stop] = arrival;
        add_all(is_known, at_splitter, at_stop, stop);
    }
    void add(const Line& line) {
        const auto& [from, to, colour, width, dashed, on_top, part, is_result] = line;
        add_all(from, to, colour, width, dashed, on_top, part, is_result);
    }
    void add(const Mark& mark) {
        const auto& [at, colour, size, shape, on_top, clipped] = mark;
        add_all(at, colour, size, shape, on_top, clipped);
    }
    void add(const ImageDisc& disc) {
        const auto& [centre, right, up, size, pixels] = disc;
        add_all(centre, right, up, size, pixels);
    }
    void add(const Label& label) {
        const auto& [at, text, role, part, priority] = label;
        add_all(at, text, role, part, priority);
    }
    void add(const Bounds& bounds) {
        const auto& [low, high] = bounds;
        add_all(low, high);
    }

    std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

}  // namespace

std::uint64_t fingerprint(const Frame& frame) {
    const auto& [revision, meshes, light, ray_count, arrival, lines, marks, discs, labels, bounds,
                 rear_bounds, part_bounds, eye_axis] = frame;
    (void)revision;  // follows from the rest
    Mixer mixer;
    mixer.add_all(meshes, light, ray_count, arrival, lines, marks, discs, labels, bounds,
                  rear_bounds, part_bounds, eye_axis);
    return mixer.result();
}

}  // namespace beamfork
