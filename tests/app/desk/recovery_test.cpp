#include <csignal>
#include <filesystem>
#include <fstream>
#include <set>

#include "app/desk/recovery.hpp"

#include <doctest/doctest.h>

#include <sys/wait.h>
#include <unistd.h>

using namespace beamfork;
namespace fs = std::filesystem;

namespace {

// A folder of its own that goes away with the test.
struct StateFolder {
    fs::path path = fs::temp_directory_path() / ("beamfork-recovery-" + std::to_string(getpid()));
    StateFolder() { fs::remove_all(path); }
    ~StateFolder() { fs::remove_all(path); }
    StateFolder(const StateFolder&) = delete;
    StateFolder& operator=(const StateFolder&) = delete;
    StateFolder(StateFolder&&) = delete;
    StateFolder& operator=(StateFolder&&) = delete;
};

// A window's setups without the window.
struct Row {
    SetupRow row{ReadSetup{new_document(), {}}};
    SetupPose pose;

    void ask(Command command) {
        DeskRequests requests;
        requests.commands.push_back(std::move(command));
        row.carry_out(requests, pose);
    }
    void retitle(const std::string& title) {
        DeskRequests requests;
        requests.edits.emplace_back(SetTitle{title});
        row.carry_out(requests, pose);
    }
};

std::ptrdiff_t files_in(const fs::path& folder) {
    return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

// A process that has unsaved work and is killed as by `kill -9`.
void lose_work(const fs::path& folder, const fs::path& file, const std::string& title) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        Row at;
        if (!file.empty()) at.row.shown().adopt_path(file);
        RecoveryDesk desk(folder);
        at.retitle(title);
        desk.keep(at.row, 0);
        desk.keep(at.row, RecoveryDesk::delay_seconds);
        raise(SIGKILL);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
}

}  // namespace

TEST_CASE("work of a process that was killed is offered and restored as unsaved work") {
    const StateFolder folder;
    lose_work(folder.path, {}, "Evening on the hill");
    RecoveryDesk desk(folder.path);
    Row at;
    REQUIRE(desk.lost_work().size() == 1);
    CHECK(desk.lost_work().front().title == "Evening on the hill");
    FilesRequests requests;
    CHECK_FALSE(desk.answer(requests.recovery, at.row, at.pose));
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests.recovery, at.row, at.pose));
    CHECK(at.row.shown().document().setup.title == "Evening on the hill");
    CHECK(at.row.shown().is_modified());
    // The dead process's copy has made way for one of this process, which is not lost yet.
    CHECK(files_in(folder.path) == 1);
    CHECK(find_lost_work(folder.path).empty());
    desk.close();
    CHECK(fs::is_empty(folder.path));
}

TEST_CASE("restoring leaves the user's file as it was, and undo goes back to it") {
    const StateFolder folder;
    const fs::path file = folder.path / "mine.train.toml";
    fs::create_directories(folder.path);
    Document saved = new_document();
    saved.setup.title = "Saved";
    REQUIRE(save_file(file, saved).has_value());
    lose_work(folder.path / "state", file, "Not saved");
    RecoveryDesk desk(folder.path / "state");
    Row at;
    FilesRequests requests;
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests.recovery, at.row, at.pose));
    CHECK(at.row.shown().path() == file);
    CHECK(at.row.shown().document().setup.title == "Not saved");
    CHECK(load_file(file)->document.setup.title == "Saved");
    at.ask(Undo{});
    CHECK(at.row.shown().document().setup.title == "Saved");
    CHECK_FALSE(at.row.shown().is_modified());
    desk.close();
}

TEST_CASE("discarding deletes the copy; what is no copy is left alone") {
    const StateFolder folder;
    lose_work(folder.path, {}, "Gone");
    std::ofstream(folder.path / "1-1.unsaved.json") << "{ broken";
    RecoveryDesk desk(folder.path);
    Row at;
    FilesRequests requests;
    requests.recovery = RecoveryAnswer::discard;
    CHECK_FALSE(desk.answer(requests.recovery, at.row, at.pose));
    CHECK_FALSE(at.row.shown().is_modified());
    CHECK(find_lost_work(folder.path).empty());
    CHECK(fs::exists(folder.path / "1-1.unsaved.json"));
    CHECK_FALSE(desk.answer(requests.recovery, at.row, at.pose));  // nothing is left to answer for
}

TEST_CASE(
    "a copy is written some seconds after a change, and goes when the work is saved or undone") {
    const StateFolder folder;
    Row at;
    RecoveryDesk desk(folder.path);
    desk.keep(at.row, 10);
    CHECK_FALSE(desk.seconds_left(10).has_value());
    at.retitle("Changed");
    desk.keep(at.row, 11);
    REQUIRE(desk.seconds_left(11).has_value());
    CHECK(*desk.seconds_left(11) == RecoveryDesk::delay_seconds);
    CHECK_FALSE(fs::exists(folder.path));
    desk.keep(at.row, 11 + RecoveryDesk::delay_seconds);
    CHECK_FALSE(fs::is_empty(folder.path));
    CHECK_FALSE(desk.seconds_left(20).has_value());
    at.ask(Undo{});
    desk.keep(at.row, 30);
    CHECK(fs::is_empty(folder.path));
}

TEST_CASE("what was not kept yet is written on the way down") {
    const StateFolder folder;
    {
        Row at;
        RecoveryDesk desk(folder.path);
        at.retitle("Last words");
        desk.keep(at.row, 0);
    }
    CHECK_FALSE(fs::is_empty(folder.path));
}

TEST_CASE("each open setup has a copy of its own, which goes when it is closed or saved") {
    const StateFolder folder;
    Row at;
    RecoveryDesk desk(folder.path);
    at.retitle("First");
    const auto first = at.row.shown_number();
    at.ask(NewSetup{});
    at.retitle("Second");
    desk.keep(at.row, 0);
    desk.keep(at.row, RecoveryDesk::delay_seconds);
    CHECK(files_in(folder.path) == 2);
    at.ask(CloseSetup{first});
    desk.keep(at.row, 100);
    CHECK(files_in(folder.path) == 1);
    at.ask(Undo{});
    desk.keep(at.row, 200);
    CHECK(fs::is_empty(folder.path));
}

TEST_CASE("all that a window left is restored side by side") {
    const StateFolder folder;
    lose_work(folder.path, {}, "One");
    lose_work(folder.path, {}, "Two");
    RecoveryDesk desk(folder.path);
    Row at;
    FilesRequests requests;
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests.recovery, at.row, at.pose));
    CHECK(desk.answer(requests.recovery, at.row, at.pose));
    CHECK_FALSE(desk.answer(requests.recovery, at.row, at.pose));
    REQUIRE(at.row.setups().size() == 2);
    std::set<std::string> titles;
    for (const auto& setup : at.row.setups()) {
        titles.insert(setup->bench.document().setup.title);
        CHECK(setup->bench.is_modified());
    }
    CHECK(titles == std::set<std::string>{"One", "Two"});
    CHECK(files_in(folder.path) == 2);
    CHECK(find_lost_work(folder.path).empty());
    desk.close();
}

TEST_CASE("work is restored over its own file where that is open again") {
    const StateFolder folder;
    const fs::path file = folder.path / "mine.train.toml";
    fs::create_directories(folder.path);
    REQUIRE(save_file(file, new_document()).has_value());
    lose_work(folder.path / "state", file, "Not saved");
    RecoveryDesk desk(folder.path / "state");
    Row at;
    REQUIRE(at.row.reopen({file.string()}, file.string(), at.pose));
    FilesRequests requests;
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests.recovery, at.row, at.pose));
    CHECK(at.row.setups().size() == 1);
    CHECK(at.row.shown().document().setup.title == "Not saved");
    desk.close();
}
