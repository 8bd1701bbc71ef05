// The example in README.md is a setup that the program reads without a word, and can trace; the list of
// questions names what there is.
#include <array>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "app/check/check_sections.hpp"
#include "app/commands/command_line.hpp"
#include "document/setup_file.hpp"
#include "study/findings/report.hpp"
#include "ui/panels.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The commands that `beamfork --help` lists.
std::vector<std::string> commands() {
    const std::array words{"beamfork", "--help"};
    const auto task = read_command_line(static_cast<int>(words.size()), words.data());
    std::istringstream help(std::get<PrintText>(task.value()).text);
    std::vector<std::string> found;
    bool listed = false;
    for (std::string line; std::getline(help, line);) {
        listed = listed ? line.starts_with("  ") : line.starts_with("Subcommands");
        std::string name;
        if (listed && std::istringstream(line) >> name && name != "Subcommands:")
            found.push_back(name);
    }
    return found;
}

}  // namespace

TEST_CASE("the setup printed in the README opens and makes a train") {
    std::ifstream file(BEAMFORK_SOURCE_DIR "/README.md");
    std::stringstream text;
    text << file.rdbuf();
    const std::string page = text.str();
    const std::string fence = "```toml\n";
    const auto begin = page.find(fence);
    REQUIRE(begin != std::string::npos);
    const auto from = begin + fence.size();
    const auto read = read_setup(page.substr(from, page.find("```", from) - from), "README.md");
    REQUIRE(read.has_value());
    CHECK(read->notices.empty());
    const Setup& setup = read->document.setup;
    CHECK(make_report(setup, setup.chosen, ClippingEffort{64}).has_value());
}

TEST_CASE("the list of questions names only studies, kinds and commands that there are") {
    std::set<std::string> known{"check --json", "check --assumed", "check --two-eyes",
                                "--help",       "focus_budget",    "light_at_stops",
                                "target"};
    for (const std::string& command : commands()) {
        known.insert(command);
        known.insert("beamfork " + command);
    }
    for (const PanelEntry& entry : panels())
        known.emplace(entry.stem);
    for (const PartKind& kind : part_kinds())
        known.insert(kind.key);
    for (const CheckSection& section : check_sections())
        known.emplace(section.key);
    std::ifstream page(BEAMFORK_SOURCE_DIR "/src/study/questions.md");
    int questions = 0;
    for (std::string line; std::getline(page, line);) {
        if (!line.starts_with("| ") || line.starts_with("| #")) continue;
        ++questions;
        CHECK(line.starts_with("| " + std::to_string(questions) + " | "));
        for (std::size_t at = line.find('`'); at != std::string::npos;) {
            const std::size_t end = line.find('`', at + 1);
            REQUIRE(end != std::string::npos);
            const std::string name = line.substr(at + 1, end - at - 1);
            CAPTURE(name);
            CHECK(known.contains(name));
            at = line.find('`', end + 1);
        }
    }
    CHECK(questions == 45);
}
