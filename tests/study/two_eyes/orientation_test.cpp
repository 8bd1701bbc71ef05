// How images stand behind known chains. A refractor alone turns its image by 180 degrees; each mirror in the
// plane of sight exchanges up and down of that (optics textbooks; common knowledge of the trade).
#include <algorithm>
#include <cmath>

#include "parts/erecting_diagonal.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/target.hpp"
#include "study/findings/report.hpp"
#include "study/two_eyes/orientation.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

ImageOrientation seen_behind(const std::vector<Part>& chain, Eye eye = Eye::left) {
    const Setup setup = wide_setup(chain);
    const auto train = build_train(setup, setup.chosen, Millimetres{5});
    REQUIRE(train.has_value());
    return orientation(*train)[eye == Eye::left ? 0 : 1];
}

}  // namespace

TEST_CASE("both eyes see the same way round behind every chain") {
    for (const Eye eye : both_eyes) {
        CAPTURE(eye == Eye::left);
        CHECK(to_words(seen_behind({}, eye)) == "turned by 180°");
        CHECK(to_words(seen_behind({{"D", MirrorDiagonal{}, {}}}, eye)) == "mirrored left-right");
        CHECK(to_words(seen_behind({{"D", PrismDiagonal{}, {}}}, eye)) == "mirrored left-right");
        CHECK(to_words(seen_behind({{"D", ErectingDiagonal90{}, {}}}, eye)) == "upright");
        CHECK(to_words(seen_behind({{"D", ErectingDiagonal45{}, {}}}, eye)) == "upright");
        CHECK(is_erect(seen_behind({{"D", ErectingDiagonal90{}, {}}}, eye)));
        CHECK(is_erect(seen_behind({{"D", ErectingDiagonal45{}, {}}}, eye)));
        CHECK_FALSE(is_erect(seen_behind({{"D", MirrorDiagonal{}, {}}}, eye)));
    }
}

TEST_CASE("a diagonal that leans to the left turns the sky the other way for the leaning head") {
    MirrorDiagonal leaning;
    leaning.turned = {30};
    const ImageOrientation seen = seen_behind({{"D", leaning, {}}});
    CHECK(seen.is_mirrored);
    CHECK(near(std::abs(seen.turn.value), 30, 1e-6));
}

TEST_CASE("known maps are told in words") {
    const auto words = [](double a, double b, double c, double d) {
        return to_words(orientation_of(glm::dmat2{a, b, c, d}));
    };
    CHECK(words(1, 0, 0, 1) == "turned by 180°");
    CHECK(words(-2, 0, 0, -2) == "upright");
    CHECK(words(1, 0, 0, -1) == "mirrored left-right");
    CHECK(words(-1, 0, 0, 1) == "mirrored up-down");
    // Right of the sky is seen above: a quarter turn anticlockwise.
    CHECK(words(0, -1, 1, 0) == "turned by 90° anticlockwise");
}

TEST_CASE("eyes of unlike parity fail, and a target by day is told how it is seen") {
    Setup setup = wide_setup({{"D", MirrorDiagonal{}, {}}});
    auto report = make_report(setup, setup.chosen, {64});
    REQUIRE(report.has_value());
    const auto has = [&](const char* id) {
        const auto findings = find_all(setup, *report);
        return std::any_of(findings.begin(), findings.end(),
                           [&](const Finding& finding) { return finding.id == id; });
    };
    CHECK_FALSE(has("parity_differs"));
    CHECK_FALSE(has("image_not_erect"));
    report->orientation[1].is_mirrored = false;
    CHECK(has("parity_differs"));
    the<Target>(setup).distance = Metres{200};
    report = make_report(setup, setup.chosen, {64});
    CHECK(has("image_not_erect"));
}

TEST_CASE(
    "a lens that relays a refractor's image sets it upright, and it is told which lens does") {
    // The terrestrial telescope of the textbooks: an erecting lens turns the image once more.
    Setup setup = wide_setup({bare_lens(80, 5)});
    the<Refractor>(setup).back_focus = {30};
    const Report report = make_report(setup, setup.chosen, {64}).value();
    REQUIRE(report.budget.reaches);
    REQUIRE(report.budget.shifters.front().image_distance > Millimetres{80});
    CHECK(report.magnification.magnification > 0);
    CHECK(to_words(report.orientation[0]) == "upright");
    CHECK(to_words(report.orientation[1]) == "upright");
    const auto told = std::find_if(report.findings.begin(), report.findings.end(),
                                   [](const Finding& one) { return one.id == "image_relayed"; });
    REQUIRE(told != report.findings.end());
    CHECK(told->sentence.find("Lens makes a second image") == 0);
    CHECK(told->sentence.find("turns the image by 180°") != std::string::npos);
}
