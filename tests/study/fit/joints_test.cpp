#include <algorithm>

#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/fitting.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "study/fit/joints.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Setup joined() {
    Setup setup = wide_setup({{"Diagonal", MirrorDiagonal{}, {}}, {"Filter", FilterPlate{}, {}}});
    the<Focuser>(setup).mount.rear = Fitting::holder_2;
    the<MirrorDiagonal>(setup).mount = {Fitting::barrel_2, Fitting::holder_125, {}};
    the<FilterPlate>(setup).mount = {Fitting::unstated, Fitting::filter_125_male, {}};
    the<SplitterHead>(setup).mount = {Fitting::barrel_125, Fitting::holder_125, {}};
    the<EyepiecePair>(setup).mount.front = Fitting::barrel_125;
    return setup;
}

std::vector<Finding> misfits(const Setup& setup) {
    auto findings = make_report(setup, setup.chosen, {64})->findings;
    std::erase_if(findings,
                  [](const Finding& finding) { return finding.id != "joint_does_not_fit"; });
    return findings;
}

}  // namespace

TEST_CASE("a filter in the barrel behind it leaves that barrel to the part before") {
    const Setup setup = joined();
    const auto found = joints(setup, setup.chosen);
    REQUIRE(found.size() == 4);
    const std::size_t diagonal = index_of<MirrorDiagonal>(setup);
    const std::size_t filter = index_of<FilterPlate>(setup);
    const std::size_t head = index_of<SplitterHead>(setup);
    CHECK(found[0].before == index_of<Focuser>(setup));
    CHECK(found[0].behind == diagonal);
    CHECK(found[1].before == filter);
    CHECK(found[1].behind == head);
    CHECK(found[2].before == diagonal);
    CHECK(found[2].behind == head);
    CHECK(found[3].behind == index_of<EyepiecePair>(setup));
    CHECK(std::ranges::all_of(found, &Joint::fits));
    CHECK(misfits(setup).empty());
}

TEST_CASE(
    "two ends that do not fit fail, and the adapter between them is named with both its ends") {
    Setup setup = joined();
    the<SplitterHead>(setup).mount.front = Fitting::m42_female;
    the<FilterPlate>(setup).mount = {};
    the<FilterPlate>(setup).mount.front = Fitting::barrel_125;
    the<FilterPlate>(setup).mount.rear = Fitting::holder_2;
    const auto found = misfits(setup);
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::fails);
    CHECK(found[0].part == index_of<SplitterHead>(setup));
    CHECK(found[0].sentence.find("“2 in holder”") != std::string::npos);
    CHECK(found[0].sentence.find("“M42x0.75 female”") != std::string::npos);
    CHECK(found[0].advice.find("a 2 in barrel in front and an M42x0.75 male behind")
          != std::string::npos);
}

TEST_CASE("a joint of which one end is not stated is no finding") {
    Setup setup = joined();
    the<MirrorDiagonal>(setup).mount.front = Fitting::unstated;
    CHECK(misfits(setup).empty());
    the<MirrorDiagonal>(setup).mount.front = Fitting::barrel_125;
    CHECK(misfits(setup).size() == 1);
}

TEST_CASE("threads that jam are told of") {
    Setup setup = joined();
    the<Focuser>(setup).mount.rear = Fitting::m42_female;
    the<MirrorDiagonal>(setup).mount.front = Fitting::camera_m42_male;
    REQUIRE(misfits(setup).size() == 1);
    CHECK(misfits(setup)[0].sentence.find("jam") != std::string::npos);
}
