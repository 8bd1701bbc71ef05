#include "scene/model/model_buffer.hpp"

#include <algorithm>
#include <array>
#include <bit>

#include "base/units.hpp"

namespace beamfork {

namespace {

// Numbers of the specification: component types and what a view is for.
constexpr int unsigned_int = 5125;
constexpr int float_number = 5126;
constexpr int vertex_data = 34962;
constexpr int index_data = 34963;
constexpr std::uint32_t magic = 0x46546C67;       // "glTF"
constexpr std::uint32_t json_chunk = 0x4E4F534A;  // "JSON"
constexpr std::uint32_t binary_chunk = 0x004E4942;

std::string little_endian(std::uint32_t word) {
    std::string bytes;
    for (unsigned i = 0; i < 4; ++i)
        bytes += static_cast<char>((word >> (8 * i)) & 0xFFU);
    return bytes;
}

void pad(std::string& bytes, char with) {
    while (bytes.size() % 4 != 0)
        bytes += with;
}

GltfJson numbers(const glm::vec3& v) { return {v.x, v.y, v.z}; }

}  // namespace

void ModelBuffer::append(std::uint32_t word) { bytes_ += little_endian(word); }

std::size_t ModelBuffer::add_view(std::size_t from, int target) {
    views_.push_back({{"buffer", 0},
                      {"byteOffset", from},
                      {"byteLength", bytes_.size() - from},
                      {"target", target}});
    return views_.size() - 1;
}

std::size_t ModelBuffer::add_vectors(const std::vector<glm::vec3>& vectors, bool has_range) {
    const std::size_t from = bytes_.size();
    glm::vec3 low(1e30F);
    glm::vec3 high(-1e30F);
    for (const glm::vec3& vector : vectors) {
        low = glm::min(low, vector);
        high = glm::max(high, vector);
        for (int i = 0; i < 3; ++i)
            append(std::bit_cast<std::uint32_t>(vector[i]));
    }
    GltfJson accessor{{"bufferView", add_view(from, vertex_data)},
                      {"componentType", float_number},
                      {"count", vectors.size()},
                      {"type", "VEC3"}};
    if (has_range) {
        accessor["min"] = numbers(low);
        accessor["max"] = numbers(high);
    }
    accessors_.push_back(std::move(accessor));
    return accessors_.size() - 1;
}

std::size_t ModelBuffer::add_places(const std::vector<glm::vec3>& places_mm) {
    std::vector<glm::vec3> metres;
    for (const glm::vec3& place : places_mm) {
        const auto metre = [](float mm) {
            return static_cast<float>(to_metres(Millimetres{mm}).value);
        };
        metres.emplace_back(metre(place.x), metre(place.y), metre(place.z));
    }
    return add_vectors(metres, true);
}

std::size_t ModelBuffer::add_directions(const std::vector<glm::vec3>& units) {
    return add_vectors(units, false);
}

std::size_t ModelBuffer::add_indices(const std::vector<std::uint32_t>& indices) {
    const std::size_t from = bytes_.size();
    for (const std::uint32_t index : indices)
        append(index);
    accessors_.push_back({{"bufferView", add_view(from, index_data)},
                          {"componentType", unsigned_int},
                          {"count", indices.size()},
                          {"type", "SCALAR"}});
    return accessors_.size() - 1;
}

std::string glb_file(const GltfJson& json, std::string bytes) {
    std::string text = json.dump(-1, ' ', false, GltfJson::error_handler_t::replace);
    pad(text, ' ');
    pad(bytes, '\0');
    const auto size = [](const std::string& part) {
        return static_cast<std::uint32_t>(part.size());
    };
    constexpr std::uint32_t head = 12;
    constexpr std::uint32_t chunk_head = 8;
    return little_endian(magic) + little_endian(2)
           + little_endian(head + 2 * chunk_head + size(text) + size(bytes))
           + little_endian(size(text)) + little_endian(json_chunk) + text
           + little_endian(size(bytes)) + little_endian(binary_chunk) + bytes;
}

}  // namespace beamfork
