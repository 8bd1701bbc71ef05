#include <filesystem>

#include "desk/workbench.hpp"
#include "document/described_setup.hpp"
#include "parts/focuser.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

Workbench opened(const std::string& demo) {
    const auto read = open_named(demo);
    REQUIRE(read.has_value());
    return Workbench(*read);
}

std::size_t focuser_of(const Workbench& bench) {
    return parts_with_role(bench.document().setup, Role::focuser).front();
}

DeskRequests asking(Edit edit) {
    DeskRequests requests;
    requests.edits.push_back(std::move(edit));
    return requests;
}

DeskRequests asking(Command command) {
    DeskRequests requests;
    requests.commands.push_back(std::move(command));
    return requests;
}

double travel(const Workbench& bench) {
    return find_part<Focuser>(bench.document().setup)->travel.value;
}

}  // namespace

TEST_CASE("an edit changes report and picture, undo brings both back") {
    Workbench bench = opened("1-short-of-focus");
    CHECK(bench.refresh());
    CHECK_FALSE(bench.refresh());
    REQUIRE(bench.report() != nullptr);
    const double short_by = bench.report()->budget.shortfall.value;
    const auto picture = bench.frame().revision;
    const Document before = bench.document();

    const auto spacers = parts_with_role(bench.document().setup, Role::chain);
    bench.carry_out(asking(RemovePart{spacers.front()}));
    CHECK(bench.refresh());
    CHECK(bench.report()->budget.shortfall.value < short_by);
    CHECK(bench.frame().revision != picture);
    CHECK(bench.view().can_undo);

    bench.carry_out(asking(Undo{}));
    bench.refresh();
    CHECK(bench.document() == before);
    CHECK(near(bench.report()->budget.shortfall.value, short_by, 1e-12));  // the same computation
    CHECK(bench.frame().revision == picture);
}

TEST_CASE(
    "a drag of many edits is one undo step, traced coarsely while it lasts and wholly at its end") {
    Workbench bench = opened("1-short-of-focus");
    bench.refresh();
    const double first = travel(bench);
    for (int i = 1; i <= 5; ++i) {
        DeskRequests requests = asking(SetField{focuser_of(bench), "travel_mm", first + i});
        requests.gesture_began = i == 1;
        bench.carry_out(requests);
        CHECK(bench.refresh());
        CHECK(near(bench.report()->budget.travel.value, first + i, 1e-12));
    }
    DeskRequests last;
    last.gesture_ended = true;
    bench.carry_out(last);
    CHECK(bench.refresh());  // once more with all rays
    CHECK_FALSE(bench.refresh());
    bench.carry_out(asking(Undo{}));
    CHECK(near(travel(bench), first, 0));
    CHECK_FALSE(bench.view().can_undo);
}

TEST_CASE("a refused edit changes nothing and says why") {
    Workbench bench = opened("1-short-of-focus");
    const Document before = bench.document();
    bench.carry_out(asking(SetField{focuser_of(bench), "travel_mm", -4.0}));
    CHECK(bench.document() == before);
    CHECK(bench.view().message.is_error);
    CHECK(bench.view().message.text.find("Travel must be") != std::string::npos);
    CHECK_FALSE(bench.view().can_undo);
}

TEST_CASE("saved work reads back the same, and a file that cannot be opened leaves what is open") {
    const auto folder =
        std::filesystem::temp_directory_path() / ("beamfork-bench-" + std::to_string(getpid()));
    std::filesystem::create_directories(folder);
    Workbench bench = opened("2-shifter-cures-it");
    bench.carry_out(asking(SetField{focuser_of(bench), "travel_mm", 66.5}));
    CHECK(bench.view().modified);
    const auto file = folder / "mine.train.toml";
    bench.carry_out(asking(SaveFile{file}));
    CHECK_FALSE(bench.view().modified);
    CHECK(bench.recent_files.front() == file.string());
    const Document saved = bench.document();

    bench.carry_out(asking(OpenFile{folder / "nothing-here.train.toml"}));
    CHECK(bench.view().message.is_error);
    CHECK(bench.document() == saved);
    CHECK(bench.path() == file);

    bench.carry_out(asking(NewSetup{}));
    CHECK(bench.path().empty());
    bench.carry_out(asking(OpenFile{file}));
    CHECK(bench.document().setup == saved.setup);
    std::filesystem::remove_all(folder);
}

TEST_CASE("a fresh setup makes a train") {
    Workbench bench = opened("1-short-of-focus");
    bench.carry_out(asking(NewSetup{}));
    bench.refresh();
    REQUIRE(bench.report() != nullptr);
    CHECK(bench.frame().light.size() > 100);
    CHECK_FALSE(bench.view().modified);
}

TEST_CASE("a duplicate is unsaved, has no file yet and another title; the file stays as it is") {
    Workbench bench({new_document(), {}});
    bench.adopt_path("/nowhere/evening.train.toml");
    const std::string title = bench.document().setup.title;
    const auto parts = bench.document().setup.parts;
    DeskRequests requests;
    requests.commands.emplace_back(DuplicateSetup{});
    bench.carry_out(requests);
    CHECK(bench.path().empty());
    CHECK(bench.is_modified());
    CHECK(bench.document().setup.title != title);
    CHECK((bench.document().setup.parts == parts));
}

TEST_CASE("a described setup is unsaved, makes a train, and undo goes back to what was open") {
    Workbench bench = opened("1-short-of-focus");
    const Setup before = bench.document().setup;
    const auto described = described_setup({});
    REQUIRE(described.has_value());
    bench.carry_out(asking(StartSetup{*described}));
    bench.refresh();
    REQUIRE(bench.report() != nullptr);
    CHECK((bench.document().setup == *described));
    CHECK(bench.is_modified());
    CHECK(bench.path().empty());
    bench.carry_out(asking(Undo{}));
    CHECK((bench.document().setup == before));
}
