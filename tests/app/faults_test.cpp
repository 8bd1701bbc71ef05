// What the system refuses in the middle of things: the user is told in a sentence, and what was there before stays whole.
#include <cerrno>
#include <cstring>
#include <locale>
#include <string>

#include "app/check/check.hpp"
#include "app/desk/recovery.hpp"
#include "app/desk/session_store.hpp"
#include "desk/open_setup.hpp"
#include "support/program_run.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_program;

namespace {

std::size_t entries(const std::filesystem::path& folder) {
    return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

TEST_CASE("a disk that fails in the middle of an export leaves the old file, nothing beside it, "
          "and a sentence") {
    struct Fault {
        std::string command;
        std::string call;
        int error;
    };
    for (const Fault& fault : {Fault{"model", "mkstemp", EACCES}, Fault{"model", "write", ENOSPC},
                               Fault{"model", "fsync", EIO}, Fault{"model", "fchmod", EIO},
                               Fault{"model", "rename", EACCES}, Fault{"sheet", "write", EIO},
                               Fault{"picture --size 64x64", "write", ENOSPC}}) {
        const auto& [command, call, error] = fault;
        CAPTURE(fault.command);
        CAPTURE(fault.call);
        const ScratchFolder scratch;
        const char* name = command == "model"   ? "kept.glb"
                           : command == "sheet" ? "kept.html"
                                                : "kept.png";
        const std::string file = scratch.file(name, "old");
        const Ran ran = run(command + " 2-shifter-cures-it -o '" + file + "'",
                            "LD_PRELOAD='" BEAMFORK_FAILING_CALLS
                            "' ASAN_OPTIONS=verify_asan_link_order=0:detect_leaks=0 "
                            "BEAMFORK_FAIL='"
                                + call + " 1 " + std::to_string(error) + "'");
        CHECK(ran.status == 2);
        CHECK(says(ran, std::strerror(error)));
        CHECK(says(ran, file));
        CHECK(bytes_of(file) == "old");
        CHECK(entries(scratch.at("")) == 1);
    }
}

TEST_CASE("without a home, or with one that cannot be written, everything that needs none works") {
    CHECK(run("check 2-shifter-cures-it", "-u HOME -u XDG_CONFIG_HOME -u XDG_STATE_HOME").status
          == 0);
    CHECK(run("check 2-shifter-cures-it", "HOME=/dev/null").status == 0);
    const std::filesystem::path nowhere = "/dev/null/beamfork";
    CHECK(load_session(nowhere / "session.json").open_files.empty());
    CHECK_FALSE(store_session(nowhere / "session.json", {}).has_value());
    CHECK(store_session({}, {}).has_value());  // without a home nothing is kept
    CHECK(find_lost_work(nowhere).empty());
}

TEST_CASE("who stops reading ends the program in silence") {
    const Ran ran = run("check 2-shifter-cures-it --json | head -c 1 >/dev/null #");
    CHECK(ran.output.empty());
    CHECK(run("film 2-shifter-cures-it --size 64x64 --seconds 0.2 -o /dev/null/x.mp4").status == 2);
}

TEST_CASE("a locale with decimal commas changes neither what is told nor what is saved") {
    struct Commas : std::numpunct<char> {
        [[nodiscard]] char do_decimal_point() const override { return ','; }
        [[nodiscard]] char do_thousands_sep() const override { return '.'; }
        [[nodiscard]] std::string do_grouping() const override { return "\3"; }
    };
    const auto told = [] {
        const auto read = open_named("2-shifter-cures-it");
        REQUIRE(read.has_value());
        const auto checked = check_setup(read->document.setup, CheckedPairs::every);
        REQUIRE(checked.has_value());
        return check_text(*checked) + check_json(*checked) + write_setup(read->document);
    };
    const std::string before = told();
    const std::locale usual = std::locale::global(std::locale(std::locale(), new Commas));
    const std::string after = told();
    std::locale::global(usual);
    CHECK(before == after);
}
