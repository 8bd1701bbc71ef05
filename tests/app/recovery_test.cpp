#include <csignal>
#include <filesystem>
#include <fstream>

#include "app/recovery.hpp"

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

void retitle(Workbench& bench, const std::string& title) {
    Requests requests;
    requests.edits.emplace_back(SetTitle{title});
    bench.carry_out(requests);
}

// A process that has unsaved work and is killed as by `kill -9`.
void lose_work(const fs::path& folder, const fs::path& file, const std::string& title) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        Workbench bench({new_document(), {}});
        if (!file.empty()) bench.adopt_path(file);
        RecoveryDesk desk(folder);
        retitle(bench, title);
        desk.keep(bench, 0);
        desk.keep(bench, RecoveryDesk::delay_seconds);
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
    Workbench bench({new_document(), {}});
    View view = bench.view();
    desk.fill(view);
    REQUIRE(view.lost_work.size() == 1);
    CHECK(view.lost_work.front().title == "Evening on the hill");
    Requests requests;
    CHECK_FALSE(desk.answer(requests, bench));
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests, bench));
    CHECK(bench.document().setup.title == "Evening on the hill");
    CHECK(bench.is_modified());
    // The dead process's copy has made way for one of this process, which is not lost yet.
    CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
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
    Workbench bench({new_document(), {}});
    Requests requests;
    requests.recovery = RecoveryAnswer::restore;
    CHECK(desk.answer(requests, bench));
    CHECK(bench.path() == file);
    CHECK(bench.document().setup.title == "Not saved");
    CHECK(load_file(file)->document.setup.title == "Saved");
    Requests undo;
    undo.commands.emplace_back(Undo{});
    bench.carry_out(undo);
    CHECK(bench.document().setup.title == "Saved");
    CHECK_FALSE(bench.is_modified());
    desk.close();
}

TEST_CASE("discarding deletes the copy; what is no copy is left alone") {
    const StateFolder folder;
    lose_work(folder.path, {}, "Gone");
    std::ofstream(folder.path / "1-1.unsaved.json") << "{ broken";
    RecoveryDesk desk(folder.path);
    Workbench bench({new_document(), {}});
    Requests requests;
    requests.recovery = RecoveryAnswer::discard;
    CHECK_FALSE(desk.answer(requests, bench));
    CHECK_FALSE(bench.is_modified());
    CHECK(find_lost_work(folder.path).empty());
    CHECK(fs::exists(folder.path / "1-1.unsaved.json"));
    CHECK_FALSE(desk.answer(requests, bench));  // nothing is left to answer for
}

TEST_CASE(
    "a copy is written some seconds after a change, and goes when the work is saved or undone") {
    const StateFolder folder;
    Workbench bench({new_document(), {}});
    RecoveryDesk desk(folder.path);
    desk.keep(bench, 10);
    CHECK_FALSE(desk.seconds_left(10).has_value());
    retitle(bench, "Changed");
    desk.keep(bench, 11);
    REQUIRE(desk.seconds_left(11).has_value());
    CHECK(*desk.seconds_left(11) == RecoveryDesk::delay_seconds);
    CHECK_FALSE(fs::exists(folder.path));
    desk.keep(bench, 11 + RecoveryDesk::delay_seconds);
    CHECK_FALSE(fs::is_empty(folder.path));
    CHECK_FALSE(desk.seconds_left(20).has_value());
    Requests undo;
    undo.commands.emplace_back(Undo{});
    bench.carry_out(undo);
    desk.keep(bench, 30);
    CHECK(fs::is_empty(folder.path));
}

TEST_CASE("what was not kept yet is written on the way down") {
    const StateFolder folder;
    {
        Workbench bench({new_document(), {}});
        RecoveryDesk desk(folder.path);
        retitle(bench, "Last words");
        desk.keep(bench, 0);
    }
    CHECK_FALSE(fs::is_empty(folder.path));
}
