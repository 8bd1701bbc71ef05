// A refused edit says why in the words that the panel shows.
#include "document/edit.hpp"
#include "document/sample.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("an edit that is taken is not refused, and nothing is said") {
    const Document document = new_document();
    CHECK_FALSE(refusal(document, SetTitle{"Evening"}).has_value());
}

TEST_CASE(
    "every field's refusals name fields as they stand on screen, never by a key of the file") {
    const Document document = new_document();
    std::size_t refused = 0;
    for (std::size_t part = 0; part < document.setup.parts.size(); ++part) {
        const PartKind& kind = kind_of(document.setup.parts[part].body);
        for (const FieldInfo& field : kind.fields) {
            if (field.type == FieldType::choice) continue;
            for (const double value : {field.low - 1, field.high + 1, field.low, field.high}) {
                const auto why = refusal(document, SetField{part, field.key, value});
                if (!why) continue;
                ++refused;
                CAPTURE(*why);
                for (const FieldInfo& other : kind.fields) {
                    if (other.key.find('_') == std::string::npos) continue;
                    CHECK(why->find(other.key) == std::string::npos);
                }
            }
            const auto outside = refusal(document, SetField{part, field.key, field.high + 1});
            REQUIRE(outside.has_value());
            CHECK(outside->find(field.label) != std::string::npos);
        }
    }
    CHECK(refused > 20);
}

TEST_CASE("what contradicts another field of the part is refused with both labels") {
    Document document = new_document();
    for (std::size_t part = 0; part < document.setup.parts.size(); ++part) {
        const auto* focuser = document.setup.parts[part].body.as<Focuser>();
        if (focuser == nullptr) continue;
        const auto why = refusal(document, SetField{part, "held_at_mm", focuser->travel.value + 1});
        REQUIRE(why.has_value());
        CHECK(why->find("travel_mm") == std::string::npos);
        CHECK(why->find("held_at_mm") == std::string::npos);
        CHECK(why->find("must not be more than") != std::string::npos);
    }
}
