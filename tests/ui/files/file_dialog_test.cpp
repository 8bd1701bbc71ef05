#include <filesystem>
#include <fstream>

#include "parts/spacer.hpp"
#include "ui/desk.hpp"
#include "ui/files/file_dialog.hpp"

using namespace beamfork;
namespace fs = std::filesystem;

namespace {

// A folder of its own with two setups, a text and a folder in it.
struct Drawer {
    fs::path path;
    explicit Drawer(const std::string& name)
        : path(fs::temp_directory_path() / ("beamfork-ui-" + name)) {
        fs::remove_all(path);
        fs::create_directories(path / "older");
        for (const char* file : {"a.train.toml", "b.train.toml", "notes.txt"})
            std::ofstream(path / file) << "x\n";
    }
    ~Drawer() { fs::remove_all(path); }
    Drawer(const Drawer&) = delete;
    Drawer& operator=(const Drawer&) = delete;
    Drawer(Drawer&&) = delete;
    Drawer& operator=(Drawer&&) = delete;
};

void change_something(Desk& desk) {
    desk.select(desk.index<Spacer>());
    desk.retype("field/length_mm/entry", "5");
    REQUIRE(desk.history().is_modified());
}

}  // namespace

TEST_CASE("a setup's name gets the ending that it lacks") {
    CHECK(with_setup_ending("evening") == "evening.train.toml");
    CHECK(with_setup_ending("evening.toml") == "evening.train.toml");
    CHECK(with_setup_ending("evening.train.toml") == "evening.train.toml");
}

TEST_CASE("a folder lists its folders first, then its files, by name") {
    const Drawer drawer("list");
    FileDialog dialog;
    enter_folder(dialog, drawer.path);
    REQUIRE(dialog.entries.size() == 4);
    CHECK(dialog.entries[0].name == "older");
    CHECK(dialog.entries[0].is_folder);
    CHECK(dialog.entries[1].name == "a.train.toml");
    CHECK(dialog.entries[3].name == "notes.txt");
    enter_folder(dialog, drawer.path / "absent");
    CHECK(dialog.error.find("cannot be opened") != std::string::npos);
    CHECK(dialog.folder == fs::weakly_canonical(drawer.path));
}

TEST_CASE("a setup is opened by a double click on its name") {
    const Drawer drawer("open");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    desk.key(ImGuiKey_O, {ImGuiMod_Ctrl});
    REQUIRE(desk.has("dialog/entry/b.train.toml"));
    CHECK_FALSE(desk.has("dialog/entry/notes.txt"));
    desk.double_click("dialog/entry/b.train.toml");
    REQUIRE(desk.asked<OpenFile>().size() == 1);
    CHECK(desk.asked<OpenFile>().front().path
          == fs::weakly_canonical(drawer.path) / "b.train.toml");
    CHECK_FALSE(desk.has("dialog/name"));
}

TEST_CASE(
    "the dialog walks through folders, by click and by typing, and shows other files when asked") {
    const Drawer drawer("walk");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    desk.click("file/open");
    desk.click("dialog/entry/older");
    CHECK_FALSE(desk.has("dialog/entry/a.train.toml"));
    desk.click("dialog/up");
    CHECK(desk.has("dialog/entry/a.train.toml"));
    desk.click("dialog/all");
    CHECK(desk.has("dialog/entry/notes.txt"));
    desk.retype("dialog/folder", (drawer.path / "older").string());
    CHECK_FALSE(desk.has("dialog/entry/notes.txt"));
    desk.key(ImGuiKey_Escape);
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("dialog/name"));
    CHECK(desk.commands.empty());
}

TEST_CASE("a name that is not there is refused and the dialog stays") {
    const Drawer drawer("absent");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    desk.click("file/open");
    desk.retype("dialog/name", "nowhere.train.toml");
    CHECK(desk.commands.empty());
    CHECK(desk.has("dialog/name"));
    desk.click("dialog/cancel");
    CHECK_FALSE(desk.has("dialog/name"));
}

TEST_CASE(
    "saving without a file asks for one, adds the ending and then saves there again unasked") {
    const Drawer drawer("save");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    change_something(desk);
    desk.key(ImGuiKey_S, {ImGuiMod_Ctrl});
    desk.retype("dialog/name", "evening");
    REQUIRE(desk.asked<SaveFile>().size() == 1);
    CHECK(desk.asked<SaveFile>().front().path.filename() == "evening.train.toml");
    desk.key(ImGuiKey_S, {ImGuiMod_Ctrl});
    CHECK(desk.asked<SaveFile>().size() == 2);
    CHECK_FALSE(desk.has("dialog/name"));
}

TEST_CASE("an existing file is overwritten only after a question") {
    const Drawer drawer("overwrite");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    desk.key(ImGuiKey_S, {ImGuiMod_Ctrl, ImGuiMod_Shift});
    desk.retype("dialog/name", "a");
    CHECK(desk.commands.empty());
    REQUIRE(desk.has("dialog/question"));
    CHECK(desk.widget("dialog/accept").label == "Overwrite");
    SUBCASE("yes") {
        desk.click("dialog/accept");
        REQUIRE(desk.asked<SaveFile>().size() == 1);
        CHECK(desk.asked<SaveFile>().front().path.filename() == "a.train.toml");
    }
    SUBCASE("no") {
        desk.click("dialog/cancel");
        CHECK(desk.commands.empty());
    }
    SUBCASE("another name") {
        desk.retype("dialog/name", "c");
        CHECK(desk.asked<SaveFile>().front().path.filename() == "c.train.toml");
    }
}

TEST_CASE("without unsaved work nothing is asked") {
    Desk desk;
    desk.key(ImGuiKey_N, {ImGuiMod_Ctrl});
    CHECK(desk.asked<NewSetup>().size() == 1);
    desk.events.close_asked = true;
    desk.frame();
    CHECK(desk.asked<Quit>().size() == 1);
}

TEST_CASE("unsaved work is kept, discarded or saved, as the user says") {
    const Drawer drawer("guard");
    Desk desk;
    desk.session.files.folder = drawer.path.string();
    change_something(desk);
    desk.events.close_asked = true;
    desk.frame(3);
    REQUIRE(desk.has("unsaved/save"));
    CHECK(desk.asked<Quit>().empty());
    SUBCASE("cancel") {
        desk.click("unsaved/cancel");
        CHECK(desk.commands.empty());
        CHECK_FALSE(desk.has("unsaved/save"));
        CHECK(desk.history().is_modified());
    }
    SUBCASE("cancel by Escape") {
        desk.key(ImGuiKey_Escape);
        desk.frame(2);
        CHECK_FALSE(desk.has("unsaved/save"));
        CHECK(desk.commands.empty());
    }
    SUBCASE("discard") {
        desk.click("unsaved/discard");
        CHECK(desk.asked<Quit>().size() == 1);
        CHECK(desk.asked<SaveFile>().empty());
    }
    SUBCASE("save into the file it came from, then go on") {
        desk.bench.set_path(drawer.path / "a.train.toml");
        desk.click("unsaved/save");
        desk.frame(3);
        CHECK(desk.asked<SaveFile>().size() == 1);
        CHECK(desk.asked<Quit>().size() == 1);
        CHECK(std::holds_alternative<SaveFile>(desk.commands.front()));
    }
    SUBCASE("save into a new file, then go on") {
        desk.click("unsaved/save");
        desk.frame(2);
        desk.retype("dialog/name", "new");
        desk.frame(3);
        CHECK(desk.asked<SaveFile>().size() == 1);
        CHECK(desk.asked<Quit>().size() == 1);
    }
    SUBCASE("calling off the dialog calls off the command") {
        desk.click("unsaved/save");
        desk.frame(2);
        desk.click("dialog/cancel");
        desk.frame(3);
        CHECK(desk.commands.empty());
        CHECK_FALSE(desk.has("unsaved/save"));
    }
    SUBCASE("a save that fails loses nothing") {
        desk.bench.set_path(drawer.path / "no such folder" / "a.train.toml");
        desk.click("unsaved/save");
        desk.frame(3);
        CHECK(desk.asked<Quit>().empty());
        CHECK(desk.history().is_modified());
    }
}
