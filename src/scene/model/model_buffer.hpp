// The binary half of a glTF file and the tables that say what lies where in it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <glm/glm.hpp>

#include <nlohmann/json.hpp>

namespace beamfork {

using GltfJson = nlohmann::ordered_json;

class ModelBuffer {
public:
    /// Each returns the index of its accessor. Places are in mm and become metres.
    std::size_t add_places(const std::vector<glm::vec3>& places_mm);
    std::size_t add_directions(const std::vector<glm::vec3>& units);
    std::size_t add_indices(const std::vector<std::uint32_t>& indices);

    [[nodiscard]] const GltfJson& accessors() const { return accessors_; }
    [[nodiscard]] const GltfJson& views() const { return views_; }
    [[nodiscard]] const std::string& bytes() const { return bytes_; }

private:
    void append(std::uint32_t word);
    std::size_t add_vectors(const std::vector<glm::vec3>& vectors, bool has_range);
    std::size_t add_view(std::size_t from, int target);

    std::string bytes_;
    GltfJson views_ = GltfJson::array();
    GltfJson accessors_ = GltfJson::array();
};

/// Both halves as one .glb file (specification, chapter 4).
std::string glb_file(const GltfJson& json, std::string bytes);

}  // namespace beamfork
