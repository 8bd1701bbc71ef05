#include "scene/model/model.hpp"

#include <algorithm>
#include <map>

#include "base/contract.hpp"
#include "scene/kit/colours.hpp"
#include "scene/model/model_buffer.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr int lines_mode = 1;

/// How a finish answers light in a physically based viewer. A choice by eye.
struct ModelLook {
    const char* name;
    double metallic;
    double roughness;
    double alpha;
};

ModelLook look_of(Finish finish) {
    switch (finish) {
    case Finish::metal: return {"Metal", 0.85, 0.45, 1};
    case Finish::blackened: return {"Blackened", 0.1, 0.9, 1};
    case Finish::mirror: return {"Mirror", 1, 0.05, 1};
    case Finish::ring: return {"Ring", 0.6, 0.4, 1};
    case Finish::glass: return {"Glass", 0, 0.05, 0.28};
    }
    return {"", 0, 1, 1};
}

GltfJson rgb(const Rgb& colour) { return {colour.r, colour.g, colour.b}; }

// A tint that makes glass glow in the picture is brighter than a surface can be: its hue stays.
Rgb as_surface(const Rgb& tint) {
    const float brightest = std::max({1.0F, tint.r, tint.g, tint.b});
    return Rgb{tint.r / brightest, tint.g / brightest, tint.b / brightest};
}

GltfJson rgba(const Rgb& colour, double alpha) { return {colour.r, colour.g, colour.b, alpha}; }

// A file under way: meshes and nodes are added, materials are shared.
class ModelWriter {
public:
    void add_part(const std::string& name, const std::vector<const Mesh*>& meshes) {
        GltfJson primitives = GltfJson::array();
        for (const Mesh* mesh : meshes) {
            if (mesh->indices.empty()) continue;
            std::vector<glm::vec3> places;
            std::vector<glm::vec3> normals;
            for (const MeshVertex& vertex : mesh->vertices) {
                places.push_back(vertex.position);
                const float length = glm::length(vertex.normal);
                normals.push_back(length > 1e-6F ? vertex.normal / length : glm::vec3(0, 0, 1));
            }
            const std::size_t place = buffer_.add_places(places);
            const std::size_t normal = buffer_.add_directions(normals);
            primitives.push_back({{"attributes", {{"POSITION", place}, {"NORMAL", normal}}},
                                  {"indices", buffer_.add_indices(mesh->indices)},
                                  {"material", surface_of(*mesh)}});
        }
        add_node(name, std::move(primitives));
    }

    void add_lines(const std::string& name, const std::vector<glm::vec3>& ends, const Rgb& colour) {
        if (ends.empty()) return;
        has_lines_ = true;
        add_node(name, GltfJson::array({{{"attributes", {{"POSITION", buffer_.add_places(ends)}}},
                                         {"material", glow_of(name, colour)},
                                         {"mode", lines_mode}}}));
    }

    std::string file(const std::string& title) {
        GltfJson children = GltfJson::array();
        for (std::size_t i = 0; i < nodes_.size(); ++i)
            children.push_back(i);
        const std::size_t root = nodes_.size();
        nodes_.push_back({{"name", title}, {"children", children}});
        GltfJson json{{"asset", {{"version", "2.0"}, {"generator", "Beamfork"}}},
                      {"scene", 0},
                      {"scenes", GltfJson::array({{{"name", title}, {"nodes", {root}}}})},
                      {"nodes", nodes_},
                      {"meshes", meshes_},
                      {"materials", materials_},
                      {"accessors", buffer_.accessors()},
                      {"bufferViews", buffer_.views()},
                      {"buffers", GltfJson::array({{{"byteLength", buffer_.bytes().size()}}})}};
        if (has_lines_) json["extensionsUsed"] = {"KHR_materials_unlit"};
        return glb_file(json, buffer_.bytes());
    }

private:
    void add_node(const std::string& name, GltfJson primitives) {
        if (primitives.empty()) return;
        meshes_.push_back({{"name", name}, {"primitives", std::move(primitives)}});
        nodes_.push_back({{"name", name}, {"mesh", meshes_.size() - 1}});
    }

    // The two sides of a cut shell differ, so both are drawn.
    std::size_t surface_of(const Mesh& mesh) {
        const ModelLook look = look_of(mesh.finish);
        GltfJson material{{"name", look.name},
                          {"pbrMetallicRoughness",
                           {{"baseColorFactor", rgba(as_surface(mesh.tint), look.alpha)},
                            {"metallicFactor", look.metallic},
                            {"roughnessFactor", look.roughness}}},
                          {"doubleSided", true}};
        if (look.alpha < 1) material["alphaMode"] = "BLEND";
        return shared(std::move(material));
    }

    std::size_t glow_of(const std::string& name, const Rgb& colour) {
        return shared({{"name", name},
                       {"pbrMetallicRoughness",
                        {{"baseColorFactor", rgba(colour, 1)},
                         {"metallicFactor", 0.0},
                         {"roughnessFactor", 1.0}}},
                       {"emissiveFactor", rgb(colour)},
                       {"extensions", {{"KHR_materials_unlit", GltfJson::object()}}}});
    }

    std::size_t shared(GltfJson material) {
        const auto found = std::find(materials_.begin(), materials_.end(), material);
        if (found != materials_.end())
            return static_cast<std::size_t>(std::distance(materials_.begin(), found));
        materials_.push_back(std::move(material));
        return materials_.size() - 1;
    }

    ModelBuffer buffer_;
    GltfJson nodes_ = GltfJson::array();
    GltfJson meshes_ = GltfJson::array();
    GltfJson materials_ = GltfJson::array();
    bool has_lines_ = false;
};

struct Beam {
    const char* name;
    ColourRole role;
    bool clipped;
};

void add_beams(ModelWriter& writer, const Frame& frame) {
    for (const auto& [name, role, clipped] :
         {Beam{"Light, undivided", ColourRole::undivided_beam, false},
          Beam{"Light to the left eye", ColourRole::left_arm, false},
          Beam{"Light to the right eye", ColourRole::right_arm, false},
          Beam{"Light that is clipped", ColourRole::clipped, true}}) {
        std::vector<glm::vec3> ends;
        for (const LightRibbon& ribbon : frame.light) {
            if (ribbon.role != role || (ribbon.clipped && !clipped)) continue;
            ends.push_back(ribbon.from);
            ends.push_back(ribbon.to);
        }
        writer.add_lines(name, ends, role_rgb(role));
    }
    std::vector<glm::vec3> ends;
    for (const Line& line : frame.lines) {
        if (!line.on_top || line.role != ColourRole::shortfall) continue;
        ends.push_back(line.from);
        ends.push_back(line.to);
    }
    writer.add_lines("Missing focus", ends, role_rgb(ColourRole::shortfall));
}

}  // namespace

Mesh halved_shell(const Mesh& shell) {
    const glm::vec3 axis = shell.shell_axis;
    const bool runs_to_viewer = std::abs(axis.x) > 0.9F;
    glm::vec3 away = runs_to_viewer ? glm::vec3(0, 1, 0) : glm::vec3(-1, 0, 0);
    away = glm::normalize(away - glm::dot(away, axis) * axis);
    Mesh half = shell;
    half.indices.clear();
    for (std::size_t i = 0; i + 2 < shell.indices.size(); i += 3) {
        glm::vec3 middle(0);
        for (std::size_t corner = i; corner < i + 3; ++corner)
            middle += shell.vertices.at(shell.indices[corner]).position / 3.0F;
        if (glm::dot(middle - shell.shell_axis_point, away) > 0) continue;
        half.indices.insert(half.indices.end(),
                            shell.indices.begin() + static_cast<std::ptrdiff_t>(i),
                            shell.indices.begin() + static_cast<std::ptrdiff_t>(i + 3));
    }
    return half;
}

std::string model_glb(const Setup& setup, const Frame& frame, const ModelOptions& options) {
    std::vector<Mesh> meshes;
    for (const Mesh& mesh : frame.meshes)
        meshes.push_back(mesh.is_shell && !options.whole_shells ? halved_shell(mesh) : mesh);
    std::map<int, std::vector<const Mesh*>> by_part;
    for (const Mesh& mesh : meshes)
        by_part[mesh.part].push_back(&mesh);
    ModelWriter writer;
    for (const auto& [part, of_part] : by_part) {
        const std::string name =
            part < 0 ? "Other" : fmt::format("{} {}", part + 1, setup.parts.at(part).name);
        writer.add_part(name, of_part);
    }
    if (options.light) add_beams(writer, frame);
    return writer.file(setup.title.empty() ? "Beamfork" : setup.title);
}

}  // namespace beamfork
