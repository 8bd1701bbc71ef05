#include <fstream>
#include <sstream>

#include "app/commands/part_list.hpp"
#include "parts/part.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the table in the documentation says what the program knows") {
    std::ifstream file(BEAMFORK_SOURCE_DIR "/src/document/fields.md");
    REQUIRE(file.good());
    std::stringstream text;
    text << file.rdbuf();
    CHECK(text.str() == part_list_markdown());
}

TEST_CASE("every key of every kind is listed with its help") {
    const std::string text = part_list_text();
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            CHECK(text.find(field.key) != std::string::npos);
            CHECK(text.find(field.help) != std::string::npos);
        }
    }
}
