#include "scene/picture/fingerprint.hpp"

#include <array>
#include <bit>
#include <string_view>
#include <type_traits>
#include <vector>

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
    void add(double value) { add(std::bit_cast<std::uint64_t>(value)); }
    template <class Kind>
    requires std::is_enum_v<Kind>
    void add(Kind kind) { add(static_cast<int>(kind)); }
    void add(const glm::vec2& v) {
        add(v.x);
        add(v.y);
    }
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
    template <class Member>
    void add(const std::vector<Member>& list) {
        add(list.size());
        for (const Member& member : list)
            add(member);
    }
    template <class Member, std::size_t count>
    void add(const std::array<Member, count>& list) {
        for (const Member& member : list)
            add(member);
    }
    // Each names all members of its struct: one more member there does not compile here.
    void add(const Bounds& whole) {
        const auto& [low, high] = whole;
        add_all(low, high);
    }
    void add(const MeshVertex& whole) {
        const auto& [position, normal] = whole;
        add_all(position, normal);
    }
    void add(const Mesh& whole) {
        const auto& [vertices, indices, finish, tint, part, is_shell, axis_point, axis] = whole;
        add_all(vertices, indices, finish, tint, part, is_shell, axis_point, axis);
    }
    void add(const LightRibbon& whole) {
        const auto& [from, to, role, strength, clipped, rank, pupil, from_path, to_path, from_share,
                     to_share] = whole;
        add_all(from, to, role, strength, clipped, rank, pupil, from_path, to_path, from_share,
                to_share);
    }
    void add(const LightArrival& whole) {
        const auto& [is_known, at_splitter, at_stop, stop] = whole;
        add_all(is_known, at_splitter, at_stop, stop);
    }
    void add(const Line& whole) {
        const auto& [from, to, role, width, dashed, on_top, part, is_result, shade] = whole;
        add_all(from, to, role, width, dashed, on_top, part, is_result, shade);
    }
    void add(const Mark& whole) {
        const auto& [at, role, size, shape, on_top, clipped] = whole;
        add_all(at, role, size, shape, on_top, clipped);
    }
    void add(const ImageDisc& whole) {
        const auto& [centre, right, up, role, size, light, lost] = whole;
        add_all(centre, right, up, role, size, light, lost);
    }
    void add(const Label& whole) {
        const auto& [at, text, role, part, priority, along, on_hover, twin] = whole;
        add_all(at, std::string_view(text), role, part, priority, along, on_hover,
                twin.value_or(at));
    }
    void add(const Frame& whole) {
        const auto& [revision, meshes, housings, light, ray_count, arrival, lines, marks, discs,
                     labels, bounds, rear_bounds, head_bounds, part_bounds, eye_axis] = whole;
        add_all(meshes, housings, light, ray_count, arrival, lines, marks, discs, labels, bounds,
                rear_bounds, head_bounds, part_bounds, eye_axis);
    }
    [[nodiscard]] std::uint64_t result() const { return state_ == 0 ? 1 : state_; }

private:
    template <class... Members>
    void add_all(const Members&... members) {
        (add(members), ...);
    }

    std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

}  // namespace

std::uint64_t fingerprint(const Frame& frame) {
    Mixer mixer;
    mixer.add(frame);
    return mixer.result();
}

}  // namespace beamfork
