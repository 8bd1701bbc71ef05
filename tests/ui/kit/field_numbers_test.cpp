#include <cmath>

#include "parts/part.hpp"
#include "support/near.hpp"
#include "ui/kit/field_numbers.hpp"
#include "ui/kit/scale_bar.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("a slider's step is a round number and fine enough for its range") {
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            if (field.type == FieldType::choice) continue;
            CAPTURE(kind.key + "." + field.key);
            const double step = slider_step(field);
            const double range = field.usual_high - field.usual_low;
            CHECK(step > 0);
            CHECK(step <= 1);
            CHECK((range <= 200 ? range / step >= 40 : step == 1));
            const double per_unit = 1 / step;
            CHECK(near(per_unit, std::round(per_unit), 1e-9));  // rounding
        }
    }
}

TEST_CASE(
    "a snapped number is the nearest double to its decimal, and stays within what is accepted") {
    const FieldInfo field = length_info("x_mm", "X", "A length.", 0, 40, 0, 40);
    CHECK(slider_step(field) == 0.1);
    CHECK(snapped(field, 12.3456) == 12.3);
    CHECK(snapped(field, 0.7000001) == 0.7);
    CHECK(snapped(field, 41) == 40);
    CHECK(snapped(field, -3) == 0);
}

TEST_CASE("an entry shows a number without needless digits") {
    CHECK(entry_text(12) == "12");
    CHECK(entry_text(12.5) == "12.5");
    CHECK(entry_text(-0.25) == "-0.25");
    CHECK(entry_text(100) == "100");
    CHECK(entry_text(1.0 / 3) == "0.3333");
}

TEST_CASE("the accepted range is said with its unit") {
    CHECK(accepted_range(length_info("x_mm", "X", "A length.", 5, 80, 10, 20))
          == "Accepts 5 to 80 mm.");
}

TEST_CASE("a scale bar is the longest round length that fits") {
    CHECK(scale_bar(1, 160).length_mm == 100);
    CHECK(scale_bar(1, 160).text == "100 mm");
    CHECK(near(scale_bar(1, 160).length_px, 100, 1e-4));
    CHECK(scale_bar(0.1, 160).length_mm == 10);
    CHECK(scale_bar(0.5, 160).length_mm == 50);
    CHECK(scale_bar(10, 160).text == "1 m");
    CHECK(scale_bar(0.01, 160).text == "1 mm");
    for (double mm = 1e-3; mm < 1e3; mm *= 1.37) {
        const ScaleBar bar = scale_bar(mm, 160);
        CHECK(bar.length_px <= 160.001F);
        CHECK(bar.length_px
              >= 160 / 2.5F - 0.001F);  // the next round length is at most 2.5 times as long
    }
}
