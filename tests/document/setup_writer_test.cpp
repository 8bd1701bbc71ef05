#include "base/assets.hpp"
#include "document/sample.hpp"
#include "document/setup_file.hpp"
#include "parts/splitter_head.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Document read(const std::string& text) {
    auto result = read_setup(text, "file");
    if (!result) FAIL(to_text(result.error()));
    return std::move(result->document);
}

std::vector<std::string_view> demo_names() {
    auto names = asset_names("assets/demos/");
    std::erase_if(names, [](std::string_view name) { return !name.ends_with(".train.toml"); });
    return names;
}

}  // namespace

TEST_CASE("what is written reads back to the same document, whatever the fields hold") {
    std::mt19937 random(20);
    for (int round = 0; round < 300; ++round) {
        CAPTURE(round);
        const Document document = random_document(random);
        const std::string text = write_setup(document);
        const auto again = read_setup(text, "written");
        if (!again) FAIL(to_text(again.error()), "\n", text);
        CHECK(again->notices.empty());
        CHECK(again->document == document);
        CHECK(write_setup(again->document) == text);
    }
}

TEST_CASE("a setup that was saved after any edits opens again") {
    std::mt19937 random(21);
    Document document = new_document();
    for (int round = 0; round < 2000; ++round) {
        auto changed = apply(document, random_edit(document, random));
        if (!changed || changed->setup.parts.size() > 40) continue;
        document = std::move(*changed);
        const auto again = read_setup(write_setup(document), "written");
        if (!again) FAIL(to_text(again.error()), "\n", write_setup(document));
        CHECK(again->document.setup == document.setup);
    }
}

TEST_CASE("every kind by itself fits its own fields, and its optional fields start unstated") {
    for (const PartKind& kind : part_kinds()) {
        CAPTURE(kind.key);
        CHECK_FALSE(contradiction(kind.fresh).has_value());
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(field.key);
            const auto value = field_value(kind.fresh, field.key);
            REQUIRE(value.has_value());
            CHECK_FALSE(objection(field, *value).has_value());
            // Else a file could not say that it is unstated.
            if (field.type == FieldType::optional_number)
                CHECK(std::holds_alternative<std::monostate>(*value));
        }
    }
    CHECK_FALSE(order_fault(new_document().setup).has_value());
    CHECK(read(write_setup(new_document())) == new_document());
}

TEST_CASE("a sliding head is written with its mechanism and slide and reads back as one") {
    const Document document =
        read(with(smallest_file, "\"Head\"", "\"Head\"\nmechanism = \"sliding\"\nslide_mm = 9.5"));
    const auto& head = part_as<SplitterHead>(document.setup, 2);
    CHECK(head.is_sliding());
    CHECK(head.slide == Millimetres{9.5});
    const std::string text = write_setup(document);
    CHECK(text.find("mechanism = \"sliding\"\n") != std::string::npos);
    CHECK(text.find("slide_mm = 9.5\n") != std::string::npos);
    CHECK(read(text) == document);
    // A file without the word is a hinged head, as all were before.
    CHECK(part_as<SplitterHead>(read(smallest_file).setup, 2).mechanism == Mechanism::hinged);
}

TEST_CASE("keys that this program does not know survive a save") {
    std::string text = with(smallest_file, "title", "colour = \"red\"\n\"odd key\" = 0x10\ntitle");
    text = with(
        text, "aperture_mm",
        "serial = { year = 1999, notes = [1.0, true, 1979-05-27, 07:32:00, inf] }\naperture_mm");
    text += "[chosen]\nfilter = \"none\"\n[extra]\ndeep.er = '''x'''\n[[list]]\na = 1\n[[list]]\n";
    const Document document = read(text);
    CHECK(document.top.unrecognised.size() == 4);
    CHECK(document.top.unrecognised.at("odd key") == "16");
    CHECK(document.top.unrecognised.at("extra") == R"({ deep = { er = "x" } })");
    CHECK(document.top.unrecognised.at("list") == "[{ a = 1 }, { }]");
    CHECK(document.chosen.unrecognised.at("filter") == "\"none\"");
    CHECK(document.setup.parts[0].unrecognised.at("serial")
          == "{ notes = [1.0, true, 1979-05-27, 07:32:00, inf], year = 1999 }");
    CHECK(read(write_setup(document)) == document);
}

TEST_CASE("the user's comments survive a save, at the line they were written for") {
    std::string text = "# Our own setup\n#\n# measured at home\n\n" + smallest_file;
    text = with(text, "[[part]]\nkind = \"focuser\"",
                "# borrowed\n\n# from next door\n[[part]]  # until spring\nkind = \"focuser\"");
    text = with(text, "focal_length_mm = 700", "# from the plate\nfocal_length_mm = 700  # f/7");
    text =
        with(text, "title = \"Smallest\"",
             "title = \"has # inside\" # a title\nstory = \"\"\"\n# no comment\n\"\"\" # a story");
    text += "[extra]\n# inside what is not understood\na = 1\n# the end\n";
    const Document document = read(text);
    CHECK(document.top.remarks.at("beamfork").above == "# Our own setup\n#\n# measured at home\n");
    CHECK(write_setup(document).starts_with(
        "# Our own setup\n#\n# measured at home\n\nbeamfork = 1\n"));
    CHECK(document.setup.parts[1].remarks.at("")
          == Remark{"# borrowed\n\n# from next door", "# until spring"});
    CHECK(document.setup.parts[0].remarks.at("focal_length_mm")
          == Remark{"# from the plate", "# f/7"});
    CHECK(document.setup.title == "has # inside");
    CHECK(document.top.remarks.at("title").beside == "# a title");
    CHECK(document.setup.story == "# no comment\n");
    CHECK(document.top.remarks.at("story").beside == "# a story");
    CHECK(document.last_lines == "# inside what is not understood\n# the end");
    CHECK(read(write_setup(document)) == document);
    // They stay with their part when it moves and its values change.
    const auto moved = apply(document, SetField{0, "focal_length_mm", 800.0});
    REQUIRE(moved.has_value());
    CHECK(write_setup(*moved).find("# from the plate\nfocal_length_mm = 800  # f/7\n")
          != std::string::npos);
}

TEST_CASE("a comment that opens a file stays on top even if the version comes later") {
    const Document document = read("# First words\n"
                                   + with(smallest_file, "beamfork = 1\ntitle = \"Smallest\"",
                                          "title = \"Smallest\"\nbeamfork = 1  # format"));
    CHECK(document.top.remarks.at("beamfork") == Remark{"# First words", "# format"});
    CHECK(write_setup(document).starts_with("# First words\nbeamfork = 1  # format\ntitle"));
}

TEST_CASE("each demo is read without a notice and keeps its comments") {
    const auto demos = demo_names();
    CHECK(demos.size() >= 3);
    for (const auto name : demos) {
        CAPTURE(name);
        const std::string text(*asset(name));
        const auto demo = read_setup(text, std::string(name));
        if (!demo) FAIL(to_text(demo.error()));
        for (const Notice& notice : demo->notices)
            MESSAGE(notice.line, ": ", notice.text);
        CHECK(demo->notices.empty());
        const std::string written = write_setup(demo->document);
        CHECK(read(written) == demo->document);
        CHECK(std::count(written.begin(), written.end(), '#')
              == std::count(text.begin(), text.end(), '#'));
        CHECK_FALSE(demo->document.setup.story.empty());
        CHECK_FALSE(order_fault(demo->document.setup).has_value());
    }
}

TEST_CASE("a damaged demo is refused or read to a sound setup, and never breaks anything") {
    std::mt19937 random(22);
    const auto demos = demo_names();
    REQUIRE_FALSE(demos.empty());
    const std::vector<std::string> pieces{
        "[",  "]",    "\"", "\"\"\"",     "=", "\n",   "#",   ".",          "nan",
        "-",  "1e99", "{",  "}",          "'", "\\",   ",",   "[[part]]\n", "\xff",
        "\r", "part", "9",  "[chosen]\n", " ", "kind", "name"};
    int sound = 0;
    int refused = 0;
    for (int round = 0; round < 2000; ++round) {
        std::string text(*asset(demos[number_below(random, demos.size())]));
        for (std::size_t slips = 1 + number_below(random, 4); slips > 0; --slips) {
            const std::size_t at = number_below(random, text.size());
            const std::size_t length =
                number_below(random, 3) == 0 ? number_below(random, 300) : number_below(random, 3);
            switch (number_below(random, 3)) {
            case 0: text.erase(at, length); break;
            case 1: text.insert(at, pieces[number_below(random, pieces.size())]); break;
            default: text.insert(at, text.substr(number_below(random, text.size()), length)); break;
            }
        }
        const auto read_back = read_setup(text, "damaged");
        if (!read_back) {
            ++refused;
            CHECK_FALSE(read_back.error().what.empty());
            continue;
        }
        ++sound;
        CHECK_FALSE(order_fault(read_back->document.setup).has_value());
        const auto again = read_setup(write_setup(read_back->document), "written");
        if (!again) FAIL(to_text(again.error()), "\n", text);
        CHECK(again->document == read_back->document);
    }
    CHECK(sound > 200);  // else this would not have tried much
    CHECK(refused > 200);
}

TEST_CASE("a comment at a value that does not count now survives a save, value and all") {
    const std::string comment = "spectacle_distance_mm = 17   # front of the lens to the pupil";
    const Document document =
        read(with(smallest_file, "name = \"Regular\"", "name = \"Regular\"\n" + comment));
    const std::string text = write_setup(document);
    CHECK(text.find("spectacle_distance_mm = 17  # front of the lens") != std::string::npos);
    CHECK(read(text) == document);
}
