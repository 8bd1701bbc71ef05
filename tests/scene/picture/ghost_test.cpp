// The ghost of a change: what moves, and nothing else.
#include <algorithm>

#include "parts/mirror_diagonal.hpp"
#include "scene/picture/ghost.hpp"
#include "scene/picture/picture.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Frame ghost_test_frame(const Setup& setup) {
    const Report report = make_report(setup, setup.chosen, {16}).value();
    return build_frame(setup, report, {4, 4, 0, 4, 8, 12});
}

}  // namespace

TEST_CASE("where nothing moves only the words are added") {
    const Frame now = ghost_test_frame(wide_setup());
    const Frame both = with_ghost(now, now, "Take the spectacles off");
    CHECK(both.meshes.size() == now.meshes.size());
    CHECK(both.lines.size() == now.lines.size());
    REQUIRE(both.labels.size() == now.labels.size() + 1);
    CHECK(both.labels.front().text.find("nothing moves") != std::string::npos);
    CHECK(both.revision != now.revision);
}

TEST_CASE("a turned head is a ghost where it will stand; telescope and focuser are none") {
    Setup setup = wide_setup({{"Diagonal", MirrorDiagonal{}, {}}});
    const Frame now = ghost_test_frame(setup);
    the<MirrorDiagonal>(setup).turned = Degrees{90};
    const Frame turned = ghost_test_frame(setup);
    const Frame both = with_ghost(now, turned, "Turn the diagonal");
    REQUIRE(both.meshes.size() > now.meshes.size());
    const auto count_behind =
        std::count_if(turned.meshes.begin(), turned.meshes.end(), [&](const Mesh& mesh) {
            return role_of(setup.parts[mesh.part]) >= Role::splitter;
        });
    CHECK(both.meshes.size() - now.meshes.size() >= static_cast<std::size_t>(count_behind));
    for (std::size_t i = now.meshes.size(); i < both.meshes.size(); ++i) {
        CHECK(both.meshes[i].part == -1);  // cannot be picked
        CHECK(both.meshes[i].finish == Finish::glass);
        for (const MeshVertex& vertex : both.meshes[i].vertices)
            CHECK(vertex.position.z > now.part_bounds[0].low.z);
    }
    CHECK(both.bounds.low == now.bounds.low);
    CHECK(both.bounds.high == now.bounds.high);
}
