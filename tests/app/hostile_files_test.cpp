// Files that nobody in good faith would write: what the program says of them is short, harmless and soon said.
#include <algorithm>
#include <chrono>

#include "base/assets.hpp"
#include "support/program_run.hpp"

#include <doctest/doctest.h>

#include <sys/stat.h>

using namespace test_program;

namespace {

std::string demo_text() {
    return std::string(beamfork::asset("assets/demos/2-shifter-cures-it.train.toml").value());
}

std::string with(std::string text, const std::string& old, const std::string& fresh) {
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old.size(), fresh);
}

std::string many(int count, const std::string& before, const std::string& behind) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += before + std::to_string(i) + behind;
    return text;
}

// No control but the line break, and no mark of direction: ECMA-48 (C0, C1) and Unicode Standard Annex 9.
bool steers_nothing(const std::string& text) {
    const bool has_control = std::any_of(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7F;
    });
    const auto has = [&](const char* letter) { return text.find(letter) != std::string::npos; };
    return !has_control && !has("\xC2\x9B") && !has("\xE2\x80\xAE") && !has("\xE2\x80\x8B");
}

}  // namespace

TEST_CASE("whatever names, keys and words hold, nothing steers the terminal") {
    const ScratchFolder scratch;
    const std::string steering = "\xC2\x9B"
                                 "31m\xE2\x80\xAE"
                                 "nekorb\xE2\x80\x8B";
    const std::string named =
        with(demo_text(), "name = \"25 mm, 50° pair\"", "name = \"" + steering + "\"");
    const std::string chosen =
        with(named, "eyepiece = \"25 mm, 50° pair\"", "eyepiece = \"" + steering + "\"");
    const std::string title = with(chosen, "title = \"", "title = \"" + steering);
    const std::string fine = scratch.file("named.train.toml", title);
    for (const std::string command :
         {"check", "check --json", "solve --list", "solve --list --json"}) {
        CAPTURE(command);
        const Ran ran = run(command + " '" + fine + "'");
        CHECK(ran.status != 2);
        CHECK(says(ran, "\\u009B31m\\u202Enekorb\\u200B"));
        CHECK(steers_nothing(ran.output));
    }
    for (const auto& one : {std::pair<std::string, std::string>{
                                "aperture_mm", "\"a\\u001B[31m\\u0007\\nbeamfork: all is well\""},
                            {"aperture_mm = 100", "aperture_mm = \"\\u001B[2J\\u009B\""},
                            {"kind = \"spacer\"", "kind = \"\\u001B[2Jspacer\\nspacer\""},
                            {"glass = \"N-BAK4\"", "glass = \"\\u202E\\u001B]0;owned\\u0007\""},
                            {"title =", "\"\\u009B" + steering + "\" ="}}) {
        const auto& [old, fresh] = one;
        CAPTURE(one.second);
        const Ran ran =
            run("check '" + scratch.file("bad.train.toml", with(demo_text(), old, fresh)) + "'");
        CHECK(ran.status == 2);
        CHECK(says(ran, "\\u"));
        CHECK(steers_nothing(ran.output));
        CHECK(std::count(ran.output.begin(), ran.output.end(), '\n') == 1);
    }
    const Ran ran = run("check \"$(printf '/no/\\033[31m\\nfile')\"");
    CHECK(ran.status == 2);
    CHECK(steers_nothing(ran.output));
}

TEST_CASE("more than can be studied is refused in one short line, at once") {
    struct Hostile {
        std::string text;
        std::string must_say;
    };
    const auto observers = [](int count) {
        return demo_text() + many(count, "[[observer]]\nname = \"Guest ", "\"\n");
    };
    const std::string spacers =
        with(demo_text(), "[[part]]\nkind = \"spacer\"",
             many(10'000, "[[part]]\nkind = \"spacer\"\nname = \"Ring ", "\"\n")
                 + "[[part]]\nkind = \"spacer\"");
    const ScratchFolder scratch;
    for (const Hostile& one :
         {Hostile{observers(2000), "at most 40 observers"},
          Hostile{demo_text() + many(100'000, "[[target]]\n#", "\n"), "at most 40 targets"},
          Hostile{spacers, "at most 100 parts between focuser and splitter head"},
          Hostile{
              with(demo_text(), "beamfork = 1", "beamfork = 1\n" + many(100'000, "key", " = 1\n")),
              "more than 1000 keys"},
          Hostile{demo_text() + "story2 = [" + std::string(1'000'000, '['), "nested"},
          Hostile{demo_text() + many(50, "[[tour]]\nname = \"t", "\"\n[[tour.step]]\n"),
                  "at most 40 tours"},
          Hostile{std::string(5'000'000, '#'), "at most 4096 KiB"}}) {
        CAPTURE(one.must_say);
        const auto begin = std::chrono::steady_clock::now();
        const Ran ran = run("check '" + scratch.file("big.train.toml", one.text) + "'");
        const auto taken = std::chrono::steady_clock::now() - begin;
        CAPTURE(ran.output.substr(0, 500));
        CHECK(ran.status == 2);
        CHECK(says(ran, one.must_say));
        CHECK(ran.output.size() < 500);
        CHECK(taken < std::chrono::seconds(5));  // some 0.1 s here, where nothing else runs
    }
}

TEST_CASE("of many unknown keys the first are told, and how many there are") {
    const ScratchFolder scratch;
    const std::string file =
        scratch.file("keys.train.toml", with(demo_text(), "beamfork = 1",
                                             "beamfork = 1\n" + many(500, "key", " = 1\n")));
    const Ran ran = run("check '" + file + "'");
    CHECK(ran.status == 2);
    CHECK(says(ran, "'key0' is unknown"));
    CHECK(says(ran, "and 490 more keys without effect"));
    CHECK(ran.output.size() < 5000);
}

TEST_CASE("of a club's evening so many combinations are studied as can be, and the rest is named") {
    const ScratchFolder scratch;
    const std::string text = demo_text() + many(35, "[[observer]]\nname = \"Guest ", "\"\n")
                             + many(3, "[[target]]\nname = \"Lamp ", "\"\n");
    const Ran ran = run("check --full '" + scratch.file("club.train.toml", text) + "'");
    CHECK(ran.status != 2);
    CHECK(says(ran, "More than 200 combinations are not studied"));
    CHECK(says(ran, "Guest"));
}

TEST_CASE("a pipe into which nobody writes is told of, one into which somebody does is read") {
    const ScratchFolder scratch;
    const std::string pipe = scratch.at("pipe").string();
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    const Ran none = run("check '" + pipe + "'");
    CHECK(none.status == 2);
    CHECK(says(none, "nothing came from this pipe"));
    const std::string file = scratch.file("setup.train.toml", demo_text());
    CHECK(run("check '" + pipe + "' & cat '" + file + "' > '" + pipe + "'; wait $!").status == 0);
}

TEST_CASE("what cannot be written is an error, for every command that prints") {
    for (const std::string command :
         {"check 2-shifter-cures-it", "check 2-shifter-cures-it --json", "parts", "measure",
          "compare 1-short-of-focus 2-shifter-cures-it", "tours 1-short-of-focus", "--help",
          "--version", "solve 2-shifter-cures-it --list",
          "solve 2-shifter-cures-it --vary 'Thread adapter.length_mm' --for margin --wanted 5"}) {
        CAPTURE(command);
        const Ran ran = run(command + " 2>&1 >/dev/full #");
        CHECK(ran.status == 2);
        CHECK(says(ran, "could not be written"));
    }
    const ScratchFolder scratch;
    for (const auto& one : {std::pair<std::string, std::string>{"sheet", "a.html"},
                            {"model", "a.glb"},
                            {"picture --size 64x64", "a.png"},
                            {"sight --height 64", "a.png"},
                            {"film --size 64x64", "a.mp4"}}) {
        const auto& [command, name] = one;
        CAPTURE(one.first);
        const std::string into = " 2-shifter-cures-it -o '" + scratch.at(name).string() + "'";
        if (name != "a.mp4") CHECK(run(command + into + " 2>&1 >/dev/full #").status == 2);
        std::filesystem::remove(scratch.at(name));
        // What is no plain file stays what it is, a device above all.
        REQUIRE(mkfifo(scratch.at(name).c_str(), 0600) == 0);
        const Ran refused = run(command + into);
        CHECK(refused.status == 2);
        CHECK(says(refused, "cannot save: this is not a plain file"));
        CHECK(std::filesystem::is_fifo(scratch.at(name)));
        std::filesystem::remove(scratch.at(name));
    }
}

TEST_CASE("a lens that is said to stand in glass fails, a target that is too near is refused with "
          "the file's "
          "name") {
    const ScratchFolder scratch;
    const std::string behind = scratch.file(
        "behind.train.toml", with(demo_text(), "lens_offset_mm = 4.4", "lens_offset_mm = 200"));
    const Ran lens = run("check --json '" + behind + "'");
    CHECK(lens.status == 1);
    CHECK(says(lens, "lens_in_glass"));
    const std::string near = scratch.file(
        "near.train.toml", with(demo_text(), "focal_length_mm = 700", "focal_length_mm = 3000")
                               + "[[target]]\nname = \"Wall\"\ndistance_m = 5\n");
    const Ran target = run("check '" + near + "'");
    CHECK(target.status == 2);
    CHECK(says(target, "near.train.toml: the target is nearer than"));
}
