#include <algorithm>

#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour/light_path_ruler.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Train racked_in(const Setup& setup) {
    auto axes = build_axes(setup, setup.chosen, Millimetres{0});
    REQUIRE(axes);
    return *std::move(axes);
}

}  // namespace

TEST_CASE("an empty tube takes its length of the ruler, and what is left shrinks by as much") {
    Setup setup = short_setup();
    const auto at = [&] {
        for (std::size_t i = 0; i < setup.parts.size(); ++i)
            if (setup.parts[i].body.is<Spacer>()) return i;
        FAIL("no spacer");
        return std::size_t{0};
    }();
    setup.parts[at].body.get<Spacer>().length = {17};
    const Train train = racked_in(setup);
    double left = train.back_focus;
    for (const RulerShare& share : ruler_shares(train)) {
        if (share.part == at) CHECK(near(share.takes.value, 17, 1e-9));
        left -= share.takes.value;
        CHECK(near(share.left.value, left, 1e-9));  // no lens in this train
    }
    CHECK(left < 0);  // short_setup() is short of focus
}

TEST_CASE("behind a lens the rest of the ruler is as long as the thin-lens equation says") {
    const Setup setup = cured_setup();
    double before = racked_in(setup).back_focus;
    int lenses = 0;
    for (const RulerShare& share : ruler_shares(racked_in(setup))) {
        if (const auto* lens = setup.parts[share.part].body.as<Shifter>()) {
            // A cell of no length: the lens stands lens_offset behind its entry and the chain goes on from there.
            const double f = lens->lens_focal_length().value;
            const double offset = lens->lens_offset.value;
            const double ahead = before - offset;
            const double behind = 1 / (1 / ahead + 1 / f);
            CHECK(near(share.left.value, behind - (lens->length.value - offset), 1e-6));
            ++lenses;
        }
        before = share.left.value;
    }
    CHECK(lenses == 1);
}

TEST_CASE("the ruler's picture shows what is left while the image is ahead, and no light") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const auto text = [&](const std::vector<bool>& on) {
        std::string words;
        const Frame frame = ruler_picture(setup, report, on, {});
        CHECK(frame.light.empty());
        for (const Label& label : frame.labels)
            words += label.text + "; ";
        return words;
    };
    CHECK(text({}).find(" left") != std::string::npos);
    CHECK(text(std::vector<bool>(setup.parts.size(), true)).find(" left") == std::string::npos);
    CHECK(text(std::vector<bool>(setup.parts.size(), true)).find(" short") != std::string::npos);
}
