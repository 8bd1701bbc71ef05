#include <chrono>

#include "app/export/child_process.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

struct LinesHeard {
    std::vector<std::string> lines;
    int ends = 0;
};

// The shell is everywhere (IEEE Std 1003.1-2017, "sh"); what it prints and its exit status are its own.
Result<std::unique_ptr<ChildProcess>>
shell(const std::string& script, LinesHeard& heard, ChildInput input = ChildInput::nothing) {
    return ChildProcess::start(
        {"sh", "-c", script},
        {.line = [&](const std::string& line) { heard.lines.push_back(line); },
         .end = [&](int) { ++heard.ends; }},
        input);
}

}  // namespace

TEST_CASE("what a program prints and complains of is heard line by line, then how it ended") {
    LinesHeard heard;
    auto child = shell("echo one; echo two >&2; printf 'no line break'; exit 3", heard);
    REQUIRE(child.has_value());
    CHECK((*child)->wait() == 3);
    CHECK(heard.lines == std::vector<std::string>{"one", "two", "no line break"});
    CHECK(heard.ends == 1);
    CHECK((*child)->wait() == 3);  // as often as one likes
}

TEST_CASE("a program without an input reads an empty one, one with it reads what is written") {
    LinesHeard empty;
    auto without = shell("wc -c", empty);
    REQUIRE(without.has_value());
    (*without)->wait();
    REQUIRE(empty.lines.size() == 1);
    CHECK(std::stoi(empty.lines[0]) == 0);

    LinesHeard full;
    auto with = shell("wc -c", full, ChildInput::bytes);
    REQUIRE(with.has_value());
    const std::vector<unsigned char> bytes(1'000'000, 'x');  // more than a pipe holds
    CHECK((*with)->write(bytes));
    CHECK((*with)->write(bytes));
    CHECK((*with)->wait() == 0);
    REQUIRE(full.lines.size() == 1);
    CHECK(std::stoi(full.lines[0]) == 2'000'000);
}

TEST_CASE("a program that takes no more refuses bytes and takes nobody down with it") {
    LinesHeard heard;
    auto child = shell("exec 0<&-; exit 0", heard, ChildInput::bytes);
    REQUIRE(child.has_value());
    const std::vector<unsigned char> bytes(1'000'000, 'x');
    CHECK_FALSE((*child)->write(bytes));
    CHECK((*child)->wait() == 0);
}

TEST_CASE("a program that is given up, or let go of, ends at once") {
    const auto begun = std::chrono::steady_clock::now();
    LinesHeard heard;
    {
        auto child = shell("exec sleep 600", heard);
        REQUIRE(child.has_value());
        (*child)->give_up();
        CHECK((*child)->wait() == -1);
        (*child)->give_up();  // of no effect any more
        CHECK(shell("exec sleep 600", heard).has_value());
    }
    CHECK(heard.ends == 2);
    CHECK(std::chrono::steady_clock::now() - begun < std::chrono::seconds(60));
}

TEST_CASE("a program that is not there is an error with the system's reason") {
    const auto child = ChildProcess::start({"no-such-program"}, {});
    REQUIRE_FALSE(child.has_value());
    CHECK(child.error().code == ErrorCode::not_found);
    CHECK_FALSE(child.error().what.empty());
}
