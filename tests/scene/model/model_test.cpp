// Models read back by a general-purpose loader (Assimp), as other programs would.
#include <set>

#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "parts/spacer.hpp"
#include "scene/kit/colours.hpp"
#include "scene/model/model.hpp"
#include "scene/model/model_buffer.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#ifdef BEAMFORK_ASSIMP
#include <assimp/Importer.hpp>
#include <assimp/postprocess.h>
#include <assimp/scene.h>
#endif

using namespace beamfork;

namespace {

/// A closed tube of 12 flat walls along z, from 0 to 100 mm, of radius 10.
Mesh round_shell() {
    Mesh shell;
    shell.is_shell = true;
    constexpr std::uint32_t corners = 12;
    for (std::uint32_t i = 0; i < corners; ++i) {
        const float angle = 6.2831853F * static_cast<float>(i) / corners;
        const glm::vec3 out(std::cos(angle), std::sin(angle), 0);
        shell.vertices.push_back({10.0F * out, out});
        shell.vertices.push_back({10.0F * out + glm::vec3(0, 0, 100), out});
        const std::uint32_t a = 2 * i;
        const std::uint32_t b = 2 * ((i + 1) % corners);
        shell.indices.insert(shell.indices.end(), {a, b, b + 1, a, b + 1, a + 1});
    }
    return shell;
}

}  // namespace

TEST_CASE("a binary glTF file begins as the specification says and is whole words long") {
    // glTF 2.0 specification, 4.4: magic "glTF", version 2, length of all; chunks are padded to 4 bytes.
    const std::string file = glb_file({{"asset", {{"version", "2.0"}}}}, "12345");
    CHECK(file.substr(0, 4) == "glTF");
    CHECK(file[4] == 2);
    CHECK(static_cast<unsigned char>(file[8]) == file.size());
    CHECK(file.size() % 4 == 0);
    CHECK(file.substr(16, 4) == "JSON");
    CHECK(file.substr(file.size() - 8) == std::string("12345\0\0\0", 8));
}

TEST_CASE("half of a shell is left, the half away from the side view's viewer") {
    const Mesh half = halved_shell(round_shell());
    CHECK(half.indices.size() == round_shell().indices.size() / 2);
    for (const std::uint32_t index : half.indices)
        CHECK(half.vertices[index].position.x >= -1e-3F);  // the viewer stands at -x
}

#ifdef BEAMFORK_ASSIMP

namespace {

/// A model as another program reads it.
class ReadBack {
public:
    explicit ReadBack(const std::string& bytes)
        : scene_(importer_.ReadFileFromMemory(bytes.data(), bytes.size(), 0, "glb")) {
        REQUIRE_MESSAGE(scene_ != nullptr, importer_.GetErrorString());
    }
    [[nodiscard]] const aiScene& scene() const { return *scene_; }
    [[nodiscard]] const aiNode& node(const std::string& name) const {
        const aiNode* found = scene_->mRootNode->FindNode(name.c_str());
        REQUIRE_MESSAGE(found != nullptr, name);
        return *found;
    }
    /// In metres, of all meshes of a node.
    [[nodiscard]] Bounds bounds_of(const std::string& name) const {
        Bounds bounds{glm::vec3(1e30F), glm::vec3(-1e30F)};
        const aiNode& of = node(name);
        for (unsigned m = 0; m < of.mNumMeshes; ++m) {
            const aiMesh& mesh = *scene_->mMeshes[of.mMeshes[m]];
            for (unsigned i = 0; i < mesh.mNumVertices; ++i) {
                const aiVector3D& v = mesh.mVertices[i];
                bounds.low = glm::min(bounds.low, glm::vec3(v.x, v.y, v.z));
                bounds.high = glm::max(bounds.high, glm::vec3(v.x, v.y, v.z));
            }
        }
        return bounds;
    }

private:
    Assimp::Importer importer_;
    const aiScene* scene_;
};

constexpr PictureEffort few_rays{.axis_rays = 8,
                                 .rim_rays = 4,
                                 .edge_points = 0,
                                 .edge_rays = 4,
                                 .disc_pixels = 4,
                                 .round_segments = 24};

}  // namespace

TEST_CASE(
    "a body of 10 x 20 x 30 mm is 0.01 x 0.02 x 0.03 m in the model, as it lies in the world") {
    Setup setup;
    setup.title = "One body";
    setup.parts = {{"Block", Spacer{}, {}, {}}};
    Frame frame;
    Mesh body;
    body.part = 0;
    body.vertices = {{{1, 2, 3}, {0, 0, 1}}, {{11, 2, 3}, {0, 0, 1}}, {{1, 22, 33}, {0, 0, 1}}};
    body.indices = {0, 1, 2};
    frame.meshes = {body};
    const ReadBack model(model_glb(setup, frame));
    REQUIRE(model.scene().mNumMeshes == 1);
    const Bounds bounds = model.bounds_of("1 Block");
    for (int i = 0; i < 3; ++i) {
        CHECK(near(bounds.low[i], 0.001 * (i + 1), 1e-8));  // single precision
        CHECK(near(bounds.high[i] - bounds.low[i], 0.01 * (i + 1), 1e-8));
    }
    CHECK(model.scene().mMeshes[0]->mNumFaces == 1);
}

TEST_CASE("every part that can be seen is a node with its number and name; eyepieces stand a pupil "
          "distance apart") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup, 64), few_rays);
    const ReadBack model(model_glb(setup, frame));
    std::set<int> seen;
    for (const Mesh& mesh : frame.meshes)
        seen.insert(mesh.part);
    for (const int part : seen)
        CHECK(model
                  .node(std::to_string(part + 1) + " "
                        + setup.parts[static_cast<std::size_t>(part)].name)
                  .mNumMeshes
              > 0);
    CHECK(seen.size() >= 5);
    const auto& observer = setup.parts[6].body.get<Observer>();
    const auto& eyepiece = setup.parts[5].body.get<EyepiecePair>();
    const Bounds pair = model.bounds_of("6 25 mm pair");
    // From the outer edge of one to the outer edge of the other.
    const double width = to_metres(observer.pupil_distance + eyepiece.outer_diameter).value;
    CHECK(near(pair.high.x - pair.low.x, width,
               1e-3));  // 24 corners: a circle's edge is 0.9 % of its radius off
    for (unsigned m = 0; m < model.scene().mNumMeshes; ++m) {
        const aiMesh& mesh = *model.scene().mMeshes[m];
        for (unsigned i = 0; mesh.mNormals != nullptr && i < mesh.mNumVertices; ++i)
            CHECK(near(mesh.mNormals[i].Length(), 1, 1e-5));
    }
}

TEST_CASE("the beams are lines of their own, and can be left out") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup, 64), few_rays);
    const ReadBack model(model_glb(setup, frame));
    std::size_t lines = 0;
    for (const char* name :
         {"Light, undivided", "Light to the left eye", "Light to the right eye"}) {
        const aiNode& node = model.node(name);
        for (unsigned m = 0; m < node.mNumMeshes; ++m)
            lines += model.scene().mMeshes[node.mMeshes[m]]->mNumFaces;
    }
    std::size_t living = 0;
    for (const LightRibbon& ribbon : frame.light)
        living += ribbon.clipped ? 0 : 1;
    CHECK(lines == living);
    CHECK(model.node("Missing focus").mNumMeshes == 1);
    const ReadBack dark(model_glb(setup, frame, {.light = false, .whole_shells = true}));
    CHECK(dark.scene().mRootNode->FindNode("Light, undivided") == nullptr);
    CHECK(dark.scene().mNumMeshes < model.scene().mNumMeshes);
}

#endif
