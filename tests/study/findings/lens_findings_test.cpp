// A shifter's lens and the glass behind it.
#include <algorithm>

#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_search.hpp"
#include "study/tune/tune_curve.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// A head of 110 mm: 13.564 mm before its cube and 29.066 below its seats when neither is stated.
Setup with_lens(double offset, std::optional<double> entry_air = {}) {
    Shifter lens;
    lens.lens_offset = {offset};
    Setup setup = plain_setup({{"Lens", lens, {}}});
    auto& head = the<SplitterHead>(setup);
    head.stated_light_path = Millimetres{110};
    if (entry_air) head.entry_air = Millimetres{*entry_air};
    return setup;
}

Report report_on(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, {64});
    REQUIRE(report.has_value());
    return *std::move(report);
}

const Finding* find(const Report& report, const std::string& id) {
    const auto at = std::ranges::find(report.findings, id, &Finding::id);
    return at == report.findings.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("a lens in the glass fails, and what is worked out is a lens at the glass") {
    const Setup setup = with_lens(60, 12);
    const Report report = report_on(setup);
    const Finding* finding = find(report, "lens_in_glass");
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::fails);
    CHECK(finding->part == index_of<Shifter>(setup));
    CHECK(finding->sentence.find("48.0 mm beyond the cube entry face of Head")
          != std::string::npos);
    // M = 1 + d / |f|, d = 110 - 12 mm from that face to the field stop; the stated pair 2.6 and 65 mm belongs to
    // |f| = 65 x 2.6 / 1.6^2 = 66.016 mm (thin lens).
    CHECK(near(report.magnification.shifter_factor, 1 + 98 / 66.015625, 1e-6));
    CHECK(find(report_on(with_lens(12, 12)), "lens_in_glass") == nullptr);
    CHECK(find(report_on(with_lens(5, 12)), "lens_in_glass") == nullptr);
}

TEST_CASE("where the glass is derived, a lens that some inside has room for is a note, a deeper "
          "one fails") {
    // 42.630 mm of air in all, of which the seat keeps 5: the cube can stand 37.6 mm deep.
    const Report possible = report_on(with_lens(30));
    CHECK(find(possible, "lens_in_glass") == nullptr);
    const Finding* note = find(possible, "lens_may_be_in_glass");
    REQUIRE(note != nullptr);
    CHECK(note->severity == Severity::note);
    CHECK(note->advice.find("depth from the front face to the first glass") != std::string::npos);
    CHECK(find(report_on(with_lens(37)), "lens_in_glass") == nullptr);
    const Finding* deep = nullptr;
    const Report impossible = report_on(with_lens(38.5));
    deep = find(impossible, "lens_in_glass");
    REQUIRE(deep != nullptr);
    CHECK(deep->severity == Severity::fails);
}

TEST_CASE("the cure for a lens in the glass puts it before the glass") {
    const Setup setup = with_lens(60, 12);
    Report report = report_on(setup);
    add_cures(setup, report);
    const Finding* finding = find(report, "lens_in_glass");
    REQUIRE(finding != nullptr);
    REQUIRE_FALSE(finding->cures.empty());
    const bool puts_it_out = std::ranges::any_of(finding->cures, [](const Cure& cure) {
        const auto* lens = find_part<Shifter>(cure.setup);
        return lens != nullptr && lens->lens_offset == Millimetres{12} && cure.removes;
    });
    CHECK(puts_it_out);
}

TEST_CASE("a curve over the lens's place ends at the glass and says why") {
    const Setup setup = with_lens(5, 12);
    const Varied lens{index_of<Shifter>(setup), "lens_offset_mm"};
    Tuner tuner(setup, setup.chosen, lens, Watched::factor, {});
    CHECK(tuner.at(11.9).value.has_value());
    std::string why;
    CHECK_FALSE(tuner.at(12.1, &why).value.has_value());
    CHECK(why == "a lens would stand in glass");
}
