#include "document/sample.hpp"
#include "document/setup_file.hpp"
#include "parts/focuser.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// Reads a file that must be refused.
Error refusal(const std::string& text) {
    const auto read = read_setup(text, "bad.train.toml");
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error().where.file == "bad.train.toml");
    INFO(to_text(read.error()));
    return read.error();
}

bool says(const Error& error, const std::string& words) {
    const bool found = error.what.find(words) != std::string::npos;
    if (!found) MESSAGE("'", error.what, "' does not say '", words, "'");
    return found;
}

// The only notice of a file that must be read.
Notice notice(const std::string& text) {
    const auto read = read_setup(text, "file");
    REQUIRE(read.has_value());
    REQUIRE(read->notices.size() == 1);
    return read->notices.front();
}

bool says(const Notice& found, const std::string& words) {
    return says(Error{ErrorCode::bad_input, found.text, {}}, words);
}

}  // namespace

TEST_CASE("the smallest file is read, and what it leaves out takes the kinds' own values") {
    const auto read = read_setup(smallest_file, "file");
    REQUIRE(read.has_value());
    CHECK(read->notices.empty());
    const Setup& setup = read->document.setup;
    CHECK(setup.title == "Smallest");
    REQUIRE(setup.parts.size() == 6);
    const auto& tube = part_as<Refractor>(setup, 0);
    CHECK(tube.aperture == Millimetres{100});  // an integer where a number with a point is meant
    CHECK(tube.back_focus == Millimetres{116});
    CHECK(part_as<Focuser>(setup, 1) == Focuser{});
    CHECK(part_as<SplitterHead>(setup, 2) == SplitterHead{});
    CHECK_FALSE(part_as<Target>(setup, 5).distance.has_value());
    CHECK(setup.chosen == Choice{3, 4, 5});
}

TEST_CASE("a mistyped key is kept and noted with its line and the nearest known key") {
    const Notice field = notice(with(smallest_file, "aperture_mm", "apertur_mm"));
    CHECK(field.line == 7);
    CHECK(says(field, "'apertur_mm'"));
    CHECK(says(field, "'aperture_mm'"));
    CHECK(says(field, "Tube"));
    const Notice top = notice(with(smallest_file, "title", "titel"));
    CHECK(top.line == 2);
    CHECK(says(top, "did you mean 'title'"));
    const Notice of_chosen =
        notice(smallest_file + "[chosen]\nobserver = \"Regular\"\neyepeace = \"Pair\"\n");
    CHECK(of_chosen.line == 30);
    CHECK(says(of_chosen, "did you mean 'eyepiece'"));
    const Notice of_observer =
        notice(with(smallest_file, "name = \"Regular\"", "name = \"Regular\"\nleft_dioptre = 1"));
    CHECK(says(of_observer, "'left_dioptres'"));
}

TEST_CASE("a key in another unit is noted with the unit that is meant") {
    const Notice centimetres =
        notice(with(smallest_file, "focal_length_mm = 700", "focal_length_cm = 70"));
    CHECK(centimetres.line == 8);
    CHECK(says(centimetres, "millimetres"));
    CHECK(says(centimetres, "'focal_length_mm'"));
    CHECK(
        says(notice(with(smallest_file, "aperture_mm = 100", "aperture_in = 4")), "'aperture_mm'"));
    CHECK(
        says(notice(with(smallest_file, "aperture_mm = 100", "aperture = 100")), "'aperture_mm'"));
    CHECK(says(notice(with(smallest_file, "\"The sky\"", "\"Mast\"\ndistance_km = 1")),
               "metres (m)"));
}

TEST_CASE("a value that does not count because nobody said which of two ways is meant is noted") {
    const std::string shifter = "[[part]]\nkind = \"shifter\"\nfocal_length_mm = "
                                "-100\n\n[[part]]\nkind = \"splitter_head\"";
    const Notice idle = notice(with(smallest_file, "[[part]]\nkind = \"splitter_head\"", shifter));
    CHECK(idle.line == 17);
    CHECK(says(idle, "given_by = \"focal length\""));
    // A slide waits for its mechanism; a prism's error names the first of two words that it waits for.
    const Notice slide = notice(with(smallest_file, "\"Head\"", "\"Head\"\nslide_mm = 8"));
    CHECK(slide.line == 18);
    CHECK(says(slide, "mechanism = \"sliding\""));
    const Notice prism =
        notice(with(smallest_file, "\"Head\"",
                    "\"Head\"\nprisms_stand = \"slightly off\"\nouter_prism_roll_arcmin = 3"));
    CHECK(prism.line == 19);
    CHECK(says(prism, "mechanism = \"sliding\""));
}

TEST_CASE("a head's slide of more than its arms leave is refused at its line") {
    const Error error = refusal(
        with(smallest_file, "\"Head\"", "\"Head\"\nmechanism = \"sliding\"\nslide_mm = 12.5"));
    CHECK(error.where.line == 19);
    CHECK(says(error, "slide_mm must be at most arm_offset_mm less prism_width_mm"));
}

TEST_CASE("values of the wrong type are refused with what was expected") {
    const Error quoted = refusal(with(smallest_file, "aperture_mm = 100", "aperture_mm = \"100\""));
    CHECK(quoted.code == ErrorCode::bad_input);
    CHECK(quoted.where.line == 7);
    CHECK(says(quoted, "aperture_mm must be a number in millimetres"));
    CHECK(says(quoted, "without quotes"));
    const Error list = refusal(with(smallest_file, "aperture_mm = 100", "aperture_mm = [100]"));
    CHECK(says(list, "not a list"));
    CHECK(says(refusal(with(smallest_file, "= 700", "= true")), "not true or false"));
    CHECK(says(refusal(with(smallest_file, "\"Head\"", "\"Head\"\nglass = 7")),
               "must be one of: N-BK7"));
    CHECK(says(refusal(with(smallest_file, "\"Tube\"", "3")),
               "name must be a text in quotes, not a number"));
    CHECK(says(refusal(with(smallest_file, "\"Smallest\"", "5")), "title must be a text"));
    const Error single = refusal("beamfork = 1\n[part]\nkind = \"refractor\"\n");
    CHECK(single.where.line == 2);
    CHECK(says(single, "[[part]] with two brackets"));
    CHECK(says(refusal("beamfork = 1\npart = 3\n"), "found part as a number"));
    CHECK(says(refusal("chosen = 3\n" + smallest_file), "[chosen]"));
}

TEST_CASE("lengths that cannot be are refused with the range that can") {
    const Error negative = refusal(with(smallest_file, "aperture_mm = 100", "aperture_mm = -100"));
    CHECK(negative.where.line == 7);
    CHECK(says(negative, "Tube: aperture_mm must be from 20 to 400, not -100"));
    for (const std::string word : {"nan", "inf", "-inf"}) {
        CAPTURE(word);
        const Error error =
            refusal(with(smallest_file, "focal_length_mm = 700", "focal_length_mm = " + word));
        CHECK(error.where.line == 8);
        CHECK(says(error, "finite"));
    }
    CHECK(refusal(with(smallest_file, "= 700", "= 1e300")).where.line == 8);
    CHECK(refusal(with(smallest_file, "= 700", "= 9223372036854775807")).where.line == 8);
}

TEST_CASE("values that cannot hold together are refused at the line of one of them") {
    const Error error = refusal(with(smallest_file, "back_focus_mm = 116", "back_focus_mm = 695"));
    CHECK(error.where.line == 9);
    CHECK(says(error, "Tube: back_focus_mm must be at least 10 mm shorter than focal_length_mm"));
}

TEST_CASE("a word that is not among the choices is refused with the nearest") {
    const Error glass = refusal(with(smallest_file, "\"Head\"", "\"Head\"\nglass = \"N-BAK3\""));
    CHECK(glass.where.line == 18);
    CHECK(says(glass, "did you mean 'N-BAK4'"));
    const Error kind = refusal(with(smallest_file, "\"splitter_head\"", "\"spliter_head\""));
    CHECK(kind.where.line == 16);
    CHECK(says(kind, "did you mean 'splitter_head'"));
    CHECK(says(kind, "refractor, newtonian"));
    CHECK(says(refusal(with(smallest_file, "kind = \"refractor\"\n", "")),
               "expected kind = one of: refractor"));
    CHECK(says(refusal(with(smallest_file, "\"focuser\"", "\"observer\"")),
               "write it under [[observer]]"));
    const Error chosen = refusal(smallest_file + "[chosen]\nobserver = \"Regulr\"\n");
    CHECK(chosen.where.line == 29);
    CHECK(says(chosen, "did you mean 'Regular'"));
}

TEST_CASE("a missing part is named, with what to add") {
    const Error no_head =
        refusal(with(smallest_file, "[[part]]\nkind = \"splitter_head\"\nname = \"Head\"\n", ""));
    CHECK(says(no_head, "no splitter head"));
    CHECK(says(no_head, "[[part]] with kind = \"splitter_head\""));
    CHECK(says(refusal(with(smallest_file, "[[target]]\nname = \"The sky\"\n", "")),
               "add a [[target]]"));
    CHECK(says(refusal("beamfork = 1\n"), "no telescope"));
    // The likely cause is told too.
    const Error by_slip = refusal(with(smallest_file, "[[target]]", "[[targt]]"));
    CHECK(says(by_slip, "line 26"));
    CHECK(says(by_slip, "did you mean 'target'"));
    CHECK(says(refusal(with(smallest_file, "[[part]]\nkind = \"focuser\"", "[[focuser]]")),
               "write [[part]] with kind = \"focuser\""));
}

TEST_CASE("parts in an order that light cannot take are refused at the part to blame") {
    const Error behind =
        refusal(with(smallest_file, "[[observer]]",
                     "[[part]]\nkind = \"spacer\"\nname = \"Late\"\n\n[[observer]]"));
    CHECK(behind.where.line == 23);
    CHECK(says(behind, "'Late'"));
    CHECK(says(behind, "'Pair'"));
    const Error two = refusal(
        with(smallest_file, "[[part]]\nkind = \"focuser\"",
             "[[part]]\nkind = \"refractor\"\nname = \"Second\"\n[[part]]\nkind = \"focuser\""));
    CHECK(two.where.line == 11);
    CHECK(says(two, "only one"));
}

TEST_CASE("two parts of one role need two names, and parts without a name get one") {
    const std::string pair = "[[part]]\nkind = \"eyepiece_pair\"\nname = \"Pair\"\n";
    const Error error = refusal(with(smallest_file, pair, pair + pair));
    CHECK(error.where.line == 24);
    CHECK(says(error, "called 'Pair'"));
    const std::string nameless = "[[part]]\nkind = \"spacer\"\n";
    const auto read = read_setup(with(smallest_file, "[[part]]\nkind = \"splitter_head\"",
                                      nameless + nameless + "[[part]]\nkind = \"splitter_head\""),
                                 "file");
    REQUIRE(read.has_value());
    CHECK(read->document.setup.parts[2].name == "Spacer or adapter");
    CHECK(read->document.setup.parts[3].name == "Spacer or adapter 2");
    CHECK(says(refusal(with(smallest_file, "\"Tube\"", "\"  \"")), "must not be empty"));
    CHECK(says(refusal(with(smallest_file, "\"Tube\"", "\"a\\nb\"")), "one line"));
}

TEST_CASE("a file of a newer version is refused as such, whatever else it holds") {
    const Error newer = refusal("# from later\nbeamfork = 2\n[[galaxy]]\nname = 7\n");
    CHECK(newer.code == ErrorCode::newer_version);
    CHECK(newer.where.line == 2);
    CHECK(says(newer, "version 2"));
    CHECK(says(newer, "newer Beamfork"));
    CHECK(says(refusal(with(smallest_file, "beamfork = 1\n", "")), "expected beamfork = 1"));
    CHECK(says(refusal(with(smallest_file, "beamfork = 1", "beamfork = \"1\"")), "whole number"));
    CHECK(says(refusal(with(smallest_file, "beamfork = 1", "beamfork = 0")), "whole number"));
}

TEST_CASE("what is not TOML is refused with its line") {
    const Error syntax = refusal(with(smallest_file, "aperture_mm = 100", "aperture_mm = 100 mm"));
    CHECK(syntax.where.line == 7);
    CHECK(says(syntax, "not valid TOML"));
    CHECK(refusal(with(smallest_file, "focal_length_mm", "aperture_mm")).where.line
          == 8);  // a key twice
    CHECK(says(refusal(""), "expected beamfork = 1"));
}

TEST_CASE(
    "noise, bytes that are no text and oversized files are refused without being read through") {
    std::mt19937 random(1);
    std::string noise(10'000'000, '\0');
    for (char& byte : noise)
        byte = static_cast<char>(random());
    CHECK(says(refusal(noise), "at most 4096 KiB"));
    const Error small = refusal(noise.substr(0, 50'000));
    CHECK(says(small, "text file"));
    CHECK(small.where.line >= 1);
    CHECK(refusal(with(smallest_file, "Tube",
                       "Tu\xff"
                       "be"))
              .where.line
          == 6);
    CHECK(refusal(with(smallest_file, "Tube", std::string("Tu\0be", 5))).where.line == 6);
    CHECK(refusal(with(smallest_file, "Tube", "\xED\xA0\x80")).where.line
          == 6);  // half of a surrogate pair
}

TEST_CASE("keys and values nested without end are refused, not followed") {
    std::string dots = "a";
    for (int i = 0; i < 300'000; ++i)
        dots += ".a";
    CHECK(refusal(with(smallest_file, "title", dots)).where.line == 2);
    CHECK(refusal(smallest_file + "[" + dots + "]\n").where.line == 28);
    CHECK(refusal(smallest_file + "x = " + std::string(500'000, '[')).where.line == 28);
    std::string tables = "1";
    for (int i = 0; i < 100; ++i)
        tables = "{ a = " + tables + " }";
    CHECK(says(refusal(smallest_file + "x = " + tables + "\n"), "nested too deep"));
}

TEST_CASE("files of other systems, with a byte order mark and carriage returns, read the same") {
    std::string text = "\xEF\xBB\xBF";
    const std::string with_story = with(smallest_file, "\n\n", "\nstory = \"\"\"a\nb\"\"\"\n\n");
    for (const char letter : with_story)
        text += letter == '\n' ? "\r\n" : std::string(1, letter);
    const auto foreign = read_setup(text, "file");
    const auto own = read_setup(with_story, "file");
    REQUIRE(foreign.has_value());
    REQUIRE(own.has_value());
    CHECK(foreign->document == own->document);
    CHECK(own->document.setup.story == "a\nb");
}
