#include <filesystem>
#include <fstream>

#include "base/assets.hpp"
#include "document/drawer_file.hpp"
#include "document/sample.hpp"
#include "parts/focuser.hpp"
#include "parts/spacer.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// Line numbers in the tests count on it.
const std::string small_drawer = R"(beamfork_drawer = 1
title = "Shelf"

[[part]]
kind = "refractor"
name = "Tube"

[[part]]
kind = "newtonian"
name = "Bucket"

[[part]]
kind = "focuser"
name = "Rack"
sits_on = "Tube"

[[part]]
kind = "focuser"
name = "Low one"
sits_on = "Bucket"
lower_by_mm = 30
wanted = true
price = [90, "talers"]

[[part]]
kind = "spacer"
name = "Ring"
length_mm = 12

[[observer]]
name = "Regular"
)";

ReadDrawer shelf_from(const std::string& text) {
    auto found = read_drawer(text, "shelf.drawer.toml");
    if (!found) FAIL(to_text(found.error()));
    return *std::move(found);
}

// The text with one word exchanged must be refused at that line, with these words.
void check_refused(const std::string& old,
                   const std::string& fresh,
                   int line,
                   const std::string& words) {
    const std::string text = with(small_drawer, old, fresh);
    CAPTURE(text);
    REQUIRE(text != small_drawer);
    const auto found = read_drawer(text, "shelf.drawer.toml");
    REQUIRE_FALSE(found.has_value());
    CHECK(found.error().where == Where{"shelf.drawer.toml", line});
    CAPTURE(found.error().what);
    CHECK(found.error().what.find(words) != std::string::npos);
}

Drawer random_drawer(std::mt19937& random) {
    Drawer drawer;
    const Document document = random_document(random);
    drawer.title = document.setup.title;
    drawer.story = document.setup.story;
    std::string telescope;
    for (const Part& part : document.setup.parts) {
        DrawerPart held{part};
        if (role_of(part) == Role::telescope) telescope = part.name;
        if (role_of(part) < Role::observer) {
            held.wanted = number_below(random, 2) == 0;
            if (number_below(random, 2) == 0)
                held.price = Price{static_cast<double>(number_below(random, 999)) / 8,
                                   random_text(random, false)};
        }
        if (role_of(part) == Role::focuser) {
            if (number_below(random, 2) == 0) held.sits_on = telescope;
            held.lower_by = Millimetres{static_cast<double>(number_below(random, 60)) - 20};
        }
        if (number_below(random, 3) == 0) held.note = random_text(random, true);
        drawer.parts.push_back(std::move(held));
    }
    return drawer;
}

}  // namespace

TEST_CASE("a drawer holds parts of every kind with what its owner knows of them besides") {
    const ReadDrawer found = shelf_from(small_drawer);
    CHECK(found.notices.empty());
    const Drawer& drawer = found.drawer;
    CHECK(drawer.title == "Shelf");
    REQUIRE(drawer.parts.size() == 6);
    CHECK(parts_with_role(drawer, Role::telescope) == std::vector<std::size_t>{0, 1});
    CHECK(telescope_of_focuser(drawer, 2) == std::optional<std::size_t>(0));
    CHECK(telescope_of_focuser(drawer, 3) == std::optional<std::size_t>(1));
    CHECK_FALSE(drawer.parts[2].wanted);
    CHECK(drawer.parts[3].wanted);
    CHECK(drawer.parts[3].price == Price{90, "talers"});
    CHECK(drawer.parts[3].lower_by == Millimetres{30});
    CHECK(drawer.parts[4].part.body.get<Spacer>().length == Millimetres{12});
}

TEST_CASE("what is written of a drawer reads back to the same, whatever it holds") {
    std::mt19937 random(31);
    for (int round = 0; round < 100; ++round) {
        CAPTURE(round);
        const Drawer drawer = random_drawer(random);
        const std::string text = write_drawer(drawer);
        const ReadDrawer again = shelf_from(text);
        CHECK(again.notices.empty());
        CHECK(again.drawer == drawer);
        CHECK(write_drawer(again.drawer) == text);
    }
}

TEST_CASE("comments and unknown keys of a drawer survive a save") {
    const std::string text = with(with("# The top shelf\n\n" + small_drawer + "# the end\n",
                                       "price = [90", "# asked in May\nprice = [90"),
                                  "length_mm = 12", "length_mm = 12  # measured\nshelf = 3");
    const ReadDrawer found = shelf_from(text);
    REQUIRE(found.notices.size() == 1);
    CHECK(found.notices[0].line == 32);
    CHECK(found.notices[0].text.find("'shelf'") != std::string::npos);
    const std::string written = write_drawer(found.drawer);
    CAPTURE(written);
    for (const std::string kept : {"# The top shelf", "# asked in May\nprice = [90, \"talers\"]",
                                   "length_mm = 12  # measured", "shelf = 3", "# the end"})
        CHECK(written.find(kept) != std::string::npos);
    CHECK(written.starts_with("# The top shelf"));
}

TEST_CASE("a mistyped key of a drawer is told with the nearest one") {
    const auto notice_of = [](const std::string& old, const std::string& fresh) {
        const ReadDrawer found = shelf_from(with(small_drawer, old, fresh));
        REQUIRE(found.notices.size() == 1);
        return found.notices.front();
    };
    const Notice wanted = notice_of("wanted = true", "wantd = true");
    CHECK(wanted.line == 22);
    CHECK(wanted.text.find("did you mean 'wanted'") != std::string::npos);
    const Notice title = notice_of("title", "titel");
    CHECK(title.line == 2);
    CHECK(title.text.find("did you mean 'title'") != std::string::npos);
    // A spacer sits on nothing.
    CHECK(notice_of("length_mm = 12", "sits_on = \"Tube\"").line == 28);
}

TEST_CASE("a drawer that says what cannot be is refused at its line") {
    check_refused("beamfork_drawer = 1", "beamfork = 1", 1, "expected beamfork_drawer = 1");
    check_refused("beamfork_drawer = 1", "beamfork_drawer = 2", 1, "newer Beamfork");
    check_refused("kind = \"spacer\"", "kind = \"spacr\"", 26, "did you mean 'spacer'");
    check_refused("length_mm = 12", "length_mm = \"12\"", 28, "write it without quotes");
    check_refused("length_mm = 12", "length_mm = 5000", 28, "length_mm must be from");
    check_refused("wanted = true", "wanted = \"true\"", 22, "without quotes");
    check_refused("[90, \"talers\"]", "90", 23, "[90, \"talers\"]");
    check_refused("[90, \"talers\"]", "[-1, \"talers\"]", 23, "number from 0");
    check_refused("[90, \"talers\"]", "[nan, \"talers\"]", 23, "number from 0");
    check_refused("[90, \"talers\"]", "[90, \"\"]", 23, "currency");
    check_refused("lower_by_mm = 30", "lower_by_mm = 900", 21, "from -150 to 150");
    check_refused("sits_on = \"Bucket\"", "sits_on = \"Buckett\"", 20, "did you mean 'Bucket'");
    check_refused("sits_on = \"Bucket\"\n", "", 17, "say which telescope 'Low one' sits on");
    check_refused("name = \"Low one\"", "name = \"Rack\"", 19, "two focusers called 'Rack'");
    check_refused("[[observer]]", "[observer]", 30, "[[observer]] with two brackets");
    check_refused("title = \"Shelf\"", "title = \"Shelf", 2, "not valid TOML");
}

TEST_CASE("the shipped drawer is read without a word, and makes no claim on makers") {
    const auto text = asset("assets/drawers/harrier-hill.drawer.toml");
    REQUIRE(text.has_value());
    const ReadDrawer found = shelf_from(std::string(*text));
    CHECK(found.notices.empty());
    for (const Role role : {Role::telescope, Role::focuser, Role::chain, Role::splitter,
                            Role::eyepiece, Role::observer, Role::target})
        CHECK(parts_with_role(found.drawer, role).size() >= 2);
    const ReadDrawer again = shelf_from(write_drawer(found.drawer));
    CHECK(again.drawer == found.drawer);
}

TEST_CASE("a drawer is saved whole, and an old one is replaced") {
    const auto path = std::filesystem::temp_directory_path() / "beamfork_test.drawer.toml";
    std::filesystem::remove(path);
    const Drawer drawer = shelf_from(small_drawer).drawer;
    REQUIRE(save_drawer(path, drawer).has_value());
    REQUIRE(save_drawer(path, drawer).has_value());
    const auto again = load_drawer(path);
    REQUIRE(again.has_value());
    CHECK(again->drawer == drawer);
    std::filesystem::remove(path);
    const auto missing = load_drawer(path);
    REQUIRE_FALSE(missing.has_value());
    CHECK(missing.error().code == ErrorCode::not_found);
}
