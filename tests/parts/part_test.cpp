// Laws that every part kind obeys, run off the kinds' own descriptions: a new kind is tested without a new line here.
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "parts/eyepiece_pair.hpp"
#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/part.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// It stands in no list.
struct Unlisted {
    static constexpr std::string_view key = "unlisted";
    static constexpr Role role = Role::chain;
};

bool is_number(const FieldInfo& field) { return field.type != FieldType::choice; }

FieldValue random_value(Random& random, const FieldInfo& field) {
    if (!is_number(field)) return random.one_of(field.choices);
    if (field.type == FieldType::optional_number && random.chance(0.2)) return std::monostate{};
    return random.between(field.low, field.high);
}

std::string refusal(const PartBody& body, const std::string& key, const FieldValue& value) {
    const auto changed = with_field(body, key, value);
    REQUIRE_FALSE(changed.has_value());
    return changed.error().what;
}

}  // namespace

TEST_CASE("every kind and every field says what it is in words, and no key stands twice") {
    std::set<std::string> kinds;
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        CHECK(kinds.insert(kind.key).second);
        CHECK_FALSE(kind.label.empty());
        CHECK(kind.help.ends_with('.'));
        CHECK_FALSE(kind.fields.empty());
        CHECK(&kind_of(kind.fresh) == &kind);
        CHECK(find_kind(kind.key)->key == kind.key);
        std::set<std::string> keys;
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            CHECK(keys.insert(field.key).second);
            CHECK_FALSE(field.label.empty());
            CHECK(field.help.ends_with('.'));
        }
    }
}

TEST_CASE("a part holds its own values: a copy that is changed leaves the other as it was") {
    const PartBody body = Spacer{};
    PartBody copy = body;
    CHECK(copy == body);
    copy.get<Spacer>().length = Millimetres{33};
    CHECK_FALSE(copy == body);
    CHECK(body.get<Spacer>().length == Spacer{}.length);
    CHECK(body.as<Focuser>() == nullptr);
    CHECK_FALSE(PartBody{Focuser{}} == body);
    CHECK_THROWS_AS((void)body.get<Focuser>(), BrokenContract);
}

TEST_CASE("a kind that is not in the list makes no part") {
    CHECK_THROWS_AS(PartBody{Unlisted{}}, BrokenContract);
}

// What a kind says of itself, held against the faces it lays out.
TEST_CASE("of the parts between focuser and head those turn the light that say so, and those hold "
          "a lens") {
    for (const PartKind& kind : part_kinds()) {
        if (kind.role != Role::chain) continue;
        CAPTURE(kind.key);
        const PartLayout layout = layout_of(kind.fresh, {});
        const double ahead = layout.part_from_exit.z().z;  // 1: straight on
        CHECK(kind.turns_light == (ahead < 0.999));
        const auto is_lens = [](const Surface& one) { return one.kind == SurfaceKind::thin_lens; };
        CHECK(kind.holds_lens == std::ranges::any_of(layout.surfaces, is_lens));
    }
}

TEST_CASE("the front opening is the clear diameter of the first surface that light meets") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        const auto openings = std::ranges::count_if(kind.fields, &FieldInfo::is_front_opening);
        CHECK(openings == (kind.role == Role::chain || kind.role == Role::splitter ? 1 : 0));
        for (const FieldInfo& field : kind.fields) {
            if (!field.is_front_opening) continue;
            const auto body = with_field_unchecked(kind.fresh, field.key, field.low);
            const PartLayout layout = layout_of(body.value(), {});
            CHECK(2 * inner_radius(layout.surfaces.front().aperture) == field.low);
        }
    }
}

TEST_CASE("with all that grows with its openings half as large again, every opening of a part is") {
    constexpr double wider = 1.5;
    const auto openings = [](const PartBody& body) {
        std::vector<double> radii;
        for (const Surface& surface : layout_of(body, {}).surfaces)
            radii.push_back(inner_radius(surface.aperture));
        return radii;
    };
    for (const PartKind& kind : part_kinds()) {
        if (kind.role != Role::chain && kind.role != Role::splitter) continue;
        CAPTURE(kind.key);
        PartBody body = kind.fresh;
        for (const FieldInfo& field : kind.fields) {
            if (!field.grows_with_openings) continue;
            const double value = std::get<double>(*field_value(body, field.key));
            body = with_field_unchecked(body, field.key, wider * value).value();
        }
        const auto before = openings(kind.fresh);
        const auto after = openings(body);
        REQUIRE(after.size() == before.size());
        for (std::size_t i = 0; i < before.size(); ++i) {
            CAPTURE(i);
            CHECK(after[i] >= wider * before[i] * (1 - 1e-9));  // rounding
        }
    }
}

TEST_CASE("what is moved by hand is one length of a kind, with words for both of its ends") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        int held = 0;
        for (const FieldInfo& field : kind.fields) {
            CHECK(field.measured_by.ends_with('.'));
            if (!field.by_hand) continue;
            ++held;
            CHECK(field.unit == FieldUnit::millimetre);
            CHECK(field.by_hand->how.ends_with('.'));
            CHECK_FALSE(field.by_hand->what.empty());
            CHECK_FALSE(field.by_hand->low_word.empty());
            CHECK_FALSE(field.by_hand->high_word.empty());
        }
        CHECK(held <= 1);
    }
}

TEST_CASE("a key in a file carries its unit") {
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(kind.key);
            CAPTURE(field.key);
            CHECK(field.key.ends_with("_mm") == (field.unit == FieldUnit::millimetre));
            CHECK(field.key.ends_with("_deg") == (field.unit == FieldUnit::degree));
            CHECK(field.key.ends_with("_m") == (field.unit == FieldUnit::metre));
            CHECK(field.key.ends_with("_dioptres") == (field.unit == FieldUnit::dioptre));
            CHECK(field.key.ends_with("_percent") == (field.unit == FieldUnit::percent));
            CHECK(field.key.ends_with("_arcmin") == (field.unit == FieldUnit::arcminute));
            CHECK(field.key.ends_with("_g") == (field.unit == FieldUnit::gram));
        }
    }
}

TEST_CASE("a slider's usual range lies within what is accepted, and what is accepted is a range") {
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(kind.key);
            CAPTURE(field.key);
            if (is_number(field)) {
                CHECK(field.low <= field.usual_low);
                CHECK(field.usual_low < field.usual_high);
                CHECK(field.usual_high <= field.high);
            } else {
                CHECK(field.choices.size() >= 2);
            }
            for (const FieldCondition& condition : field.only_if) {
                const auto other = std::ranges::find(kind.fields, condition.key, &FieldInfo::key);
                REQUIRE(other != kind.fields.end());
                CHECK(std::ranges::count(other->choices, condition.word) == 1);
            }
        }
    }
}

TEST_CASE("a fresh part of every kind fits its own fields and contradicts nothing") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        CHECK_FALSE(contradiction(kind.fresh).has_value());
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            const auto value = field_value(kind.fresh, field.key);
            REQUIRE(value.has_value());
            CHECK_FALSE(objection(field, *value).has_value());
        }
    }
}

TEST_CASE("every field of every kind gives back the value put in, changes no other, and can be put "
          "back") {
    Random random(41);
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            for (int i = 0; i < 20; ++i) {
                const FieldValue value = random_value(random, field);
                const auto changed = with_field_unchecked(kind.fresh, field.key, value);
                REQUIRE(changed.has_value());
                CHECK(field_value(*changed, field.key) == value);
                for (const FieldInfo& other : kind.fields) {
                    if (other.key == field.key) continue;
                    CHECK(field_value(*changed, other.key) == field_value(kind.fresh, other.key));
                }
                const auto back =
                    with_field_unchecked(*changed, field.key, *field_value(kind.fresh, field.key));
                REQUIRE(back.has_value());
                CHECK(*back == kind.fresh);
            }
        }
    }
}

TEST_CASE("every field refuses what does not fit it, and the part stays as it was") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            std::vector<FieldValue> wrong{none, std::numeric_limits<double>::infinity(),
                                          std::string("no such word")};
            if (is_number(field)) {
                wrong.emplace_back(std::nextafter(field.low, -1e300));
                wrong.emplace_back(std::nextafter(field.high, 1e300));
            }
            if (field.type != FieldType::optional_number) wrong.emplace_back(std::monostate{});
            for (const FieldValue& value : wrong) {
                const auto changed = with_field(kind.fresh, field.key, value);
                REQUIRE_FALSE(changed.has_value());
                CHECK(changed.error().code == ErrorCode::bad_input);
                CHECK(changed.error().what.find(field.key) != std::string::npos);
            }
        }
    }
}

TEST_CASE("a mistyped key or kind is refused with the nearest known one") {
    const auto value = field_value(PartBody{Refractor{}}, "focal_lenght_mm");
    REQUIRE_FALSE(value.has_value());
    CHECK(value.error().what
          == "refractor has no 'focal_lenght_mm'; did you mean 'focal_length_mm'?");
    CHECK(refusal(Refractor{}, "aperture", 80.0)
          == "refractor has no 'aperture'; did you mean 'aperture_mm'?");
    const auto kind = find_kind("splitter_haed");
    REQUIRE_FALSE(kind.has_value());
    CHECK(kind.error().what == "no part kind 'splitter_haed'; did you mean 'splitter_head'?");
    CHECK(
        refusal(PrismDiagonal{}, "glass", std::string("N-BK8")).ends_with("did you mean 'N-BK7'?"));
}

TEST_CASE("values that cannot hold together are refused together, though each fits its own field") {
    CHECK(refusal(Refractor{}, "back_focus_mm", 475.0).find("10 mm shorter") != std::string::npos);
    CHECK(refusal(Refractor{}, "aperture_mm", 241.0).find("f/2") != std::string::npos);
    Refractor baffled;
    baffled.baffle_diameter = Millimetres{40};
    CHECK(refusal(baffled, "baffle_position_mm", 361.0).find("baffle_position_mm")
          != std::string::npos);
    CHECK(refusal(Focuser{}, "held_at_mm", 80.5).find("travel_mm") != std::string::npos);
    CHECK(refusal(FilterPlate{}, "ring_length_mm", 1.5).find("thickness_mm") != std::string::npos);
    CHECK(refusal(MirrorDiagonal{}, "exit_leg_mm", 19.0).find("half of clear_diameter_mm")
          != std::string::npos);
    CHECK(refusal(PrismDiagonal{}, "prism_width_mm", 45.0).find("half of prism_width_mm")
          != std::string::npos);
    CHECK(refusal(SplitterHead{}, "prism_width_mm", 37.5).find("arm_offset_mm")
          != std::string::npos);
    CHECK(refusal(SplitterHead{}, "hinge_low_deg", 46.0).find("hinge_high_deg")
          != std::string::npos);
    CHECK(refusal(Shifter{}, "stated_factor", 1.01).find("no lens") != std::string::npos);
    CHECK(refusal(Shifter{}, "stated_factor", 0.8).find("negative") != std::string::npos);
    CHECK(refusal(Shifter{}, "stated_gain_mm", 0.0).find("no lens") != std::string::npos);
    Shifter lens;
    lens.given = ShifterGiven::focal_length;
    CHECK(refusal(lens, "focal_length_mm", 4.0).find("at least 5 mm") != std::string::npos);
    EyepiecePair deep;
    deep.field_stop_depth = Millimetres{5};
    CHECK(refusal(deep, "field_stop_mm", 28.5).find("barrel_clear_diameter_mm")
          != std::string::npos);
}

TEST_CASE("only parts whose maker states a light path have one") {
    CHECK_FALSE(stated_light_path(PrismDiagonal{}).has_value());
    CHECK_FALSE(stated_light_path(Spacer{}).has_value());
    PrismDiagonal diagonal;
    diagonal.stated_light_path = Millimetres{35};
    CHECK(stated_light_path(diagonal) == Millimetres{35});
}

TEST_CASE("every kind lays itself out in finite numbers wherever its fields allow it to be") {
    Random random(42);
    const auto is_finite = [](const Pose& pose) {
        double sum = 0;
        for (int i = 0; i < 3; ++i)
            sum += pose.origin[i] + glm::dot(pose.axes[i], glm::dvec3{1, 1, 1});
        return std::isfinite(sum);
    };
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        int laid_out = 0;
        for (int i = 0; i < 300; ++i) {
            PartBody body = kind.fresh;
            for (const FieldInfo& field : kind.fields) {
                body = with_field_unchecked(body, field.key, random_value(random, field)).value();
            }
            if (contradiction(body)) continue;
            ++laid_out;
            for (const Eye eye : both_eyes) {
                const PartLayout layout = layout_of(body, {eye,
                                                           {random.between(0, 100)},
                                                           {random.between(35, 85)},
                                                           {random.between(-3, 3)}});
                CHECK(is_finite(layout.part_from_exit));
                for (const Surface& surface : layout.surfaces)
                    CHECK(is_finite(surface.part_from_surface));
                for (const Body& seen : layout.bodies)
                    CHECK(is_finite(seen.part_from_body));
            }
        }
        CHECK(laid_out > 0);
    }
}
