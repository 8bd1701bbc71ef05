// Several setups open at once: what opens beside what, and that each keeps its own.
#include <filesystem>
#include <set>

#include "desk/setup_row.hpp"
#include "document/setup_file.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

namespace fs = std::filesystem;

struct RowOfSetups {
    SetupRow row;
    SetupPose pose;

    explicit RowOfSetups(const std::string& demo = "1-short-of-focus") : row(opened(demo)) {}
    static ReadSetup opened(const std::string& demo) {
        const auto read = open_named(demo);
        REQUIRE(read.has_value());
        return *read;
    }
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
    [[nodiscard]] std::string title() const { return row.shown().document().setup.title; }
    [[nodiscard]] std::size_t count() const { return row.setups().size(); }
};

// Two setup files in a folder that goes away with the test.
struct SetupFolder {
    fs::path path = fs::temp_directory_path() / ("beamfork-row-" + std::to_string(getpid()));
    fs::path one = path / "one.train.toml";
    fs::path two = path / "two.train.toml";
    SetupFolder() {
        fs::create_directories(path);
        for (const fs::path& file : {one, two}) {
            Document document{short_setup(), {}, {}, {}};
            document.setup.title = file.filename().string();
            REQUIRE(save_file(file, document).has_value());
        }
    }
    ~SetupFolder() { fs::remove_all(path); }
    SetupFolder(const SetupFolder&) = delete;
    SetupFolder& operator=(const SetupFolder&) = delete;
    SetupFolder(SetupFolder&&) = delete;
    SetupFolder& operator=(SetupFolder&&) = delete;
};

}  // namespace

TEST_CASE("an untouched demo makes way, anything else stays and is stood beside") {
    const SetupFolder files;
    RowOfSetups at;
    at.ask(OpenDemo{"assets/demos/2-shifter-cures-it.train.toml"});
    CHECK(at.count() == 1);
    at.ask(OpenFile{files.one});
    CHECK(at.count() == 1);
    at.ask(OpenFile{files.two});
    CHECK(at.count() == 2);
    CHECK(at.title() == "two.train.toml");
    at.ask(NewSetup{});
    CHECK(at.count() == 3);
    at.retitle("Touched");
    at.ask(OpenDemo{"assets/demos/3-fast-and-wide.train.toml"});
    CHECK(at.count() == 4);
    at.ask(DuplicateSetup{});
    CHECK(at.count() == 5);
    CHECK(at.row.shown().is_modified());
    std::set<std::uint64_t> numbers;
    for (const auto& setup : at.row.setups())
        CHECK(numbers.insert(setup->number).second);
}

TEST_CASE("each setup has its own history, camera and selection") {
    RowOfSetups at;
    at.retitle("First");
    at.pose.camera.distance_mm = 1234;
    at.pose.camera_is_set = true;
    at.pose.selected_part = 2;
    const auto first = at.row.shown_number();
    at.ask(NewSetup{});
    CHECK_FALSE(at.pose.camera_is_set);
    CHECK_FALSE(at.pose.selected_part.has_value());
    at.retitle("Second");
    at.ask(Undo{});
    CHECK_FALSE(at.row.shown().is_modified());
    const auto second = at.row.shown_number();
    at.ask(ShowSetup{first});
    CHECK(at.title() == "First");
    CHECK(at.pose.camera.distance_mm == 1234);
    CHECK(at.pose.selected_part == 2);
    CHECK(at.row.shown().is_modified());
    at.ask(ShowSetup{second});
    at.ask(Redo{});
    CHECK(at.title() == "Second");
    at.ask(ShowSetup{999});  // there is none
    CHECK(at.title() == "Second");
}

TEST_CASE("reports of two setups never share a revision") {
    RowOfSetups at;
    at.row.shown().refresh();
    const auto first = at.row.shown().report_revision();
    at.ask(DuplicateSetup{});
    at.row.shown().refresh();
    CHECK(at.row.shown().report_revision() != first);
}

TEST_CASE(
    "a file is open once: opening it again shows it, and reads it anew where nothing is lost") {
    const SetupFolder files;
    RowOfSetups at;
    at.ask(OpenFile{files.one});
    at.ask(OpenFile{files.two});
    at.ask(OpenFile{files.path / "." / "one.train.toml"});
    CHECK(at.count() == 2);
    CHECK(at.title() == "one.train.toml");
    Document other{short_setup(), {}, {}, {}};
    other.setup.title = "Written by somebody else";
    REQUIRE(save_file(files.one, other).has_value());
    at.ask(OpenFile{files.one});
    CHECK(at.title() == "Written by somebody else");
    at.retitle("Mine");
    at.ask(OpenFile{files.one});
    CHECK(at.title() == "Mine");
    CHECK(at.count() == 2);
}

TEST_CASE("a file that cannot be opened leaves all as it was and says why") {
    RowOfSetups at;
    at.retitle("Work");
    at.ask(OpenFile{"/no/such/file.train.toml"});
    CHECK(at.count() == 1);
    CHECK(at.title() == "Work");
    CHECK(at.row.view().message.is_error);
}

TEST_CASE(
    "closing shows a neighbour; behind the last one a demo stands, and the window begins anew") {
    const SetupFolder files;
    RowOfSetups at;
    at.ask(OpenFile{files.one});
    const auto first = at.row.shown_number();
    at.ask(OpenFile{files.two});
    const auto second = at.row.shown_number();
    at.ask(CloseSetup{first});
    CHECK(at.title() == "two.train.toml");
    CHECK_FALSE(at.row.take_emptied());
    at.ask(CloseSetup{second});
    CHECK(at.count() == 1);
    CHECK(at.row.take_emptied());
    CHECK_FALSE(at.row.take_emptied());
    CHECK(at.title() == RowOfSetups::opened("").document.setup.title);
    CHECK(at.row.recent_files().size() == 2);  // those stay
}

TEST_CASE(
    "files of the last window are opened again in their order, those that are gone are told") {
    const SetupFolder files;
    RowOfSetups before;
    before.ask(OpenFile{files.one});
    before.ask(OpenFile{files.two});
    before.ask(NewSetup{});
    const auto kept = before.row.open_files();
    CHECK(kept == std::vector<std::string>{files.one.string(), files.two.string()});
    CHECK(before.row.shown_file().empty());

    RowOfSetups after;
    CHECK_FALSE(after.row.reopen({}, "", after.pose));
    auto listed = kept;
    listed.insert(listed.begin(), (files.path / "gone.train.toml").string());
    CHECK(after.row.reopen(listed, files.two.string(), after.pose));
    CHECK(after.count() == 2);
    CHECK(after.title() == "two.train.toml");
    CHECK(after.row.shown_file() == files.two.string());
    CHECK(after.row.view().message.text.find("gone.train.toml") != std::string::npos);
    CHECK_FALSE(after.row.shown().is_modified());

    RowOfSetups none;
    CHECK_FALSE(none.row.reopen({(files.path / "gone.train.toml").string()}, "", none.pose));
    CHECK(none.count() == 1);
}

TEST_CASE("a copy beside a setup leaves it as it is") {
    RowOfSetups at;
    at.retitle("Original");
    const auto original = at.row.shown_number();
    at.ask(DuplicateSetup{});
    CHECK(at.title() == "Original, copy");
    at.retitle("Other");
    at.ask(ShowSetup{original});
    CHECK(at.title() == "Original");
}
