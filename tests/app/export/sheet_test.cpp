// The printed sheet as the command writes it, read by a general XML parser (Python's, which is expat).
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include "app/commands/command_line.hpp"
#include "app/export/sheet.hpp"
#include "desk/open_setup.hpp"

#include <doctest/doctest.h>

#include <unistd.h>

using namespace beamfork;

namespace {

struct SheetFolder {
    std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("beamfork-sheet-" + std::to_string(getpid()));
    SheetFolder() { std::filesystem::create_directories(path); }
    SheetFolder(const SheetFolder&) = delete;
    SheetFolder& operator=(const SheetFolder&) = delete;
    ~SheetFolder() { std::filesystem::remove_all(path); }
};

// Every number of a drawing is finite and every drawing has something in it.
bool is_well_formed(const std::filesystem::path& page) {
    const std::string command = "python3 -c \"import sys, xml.etree.ElementTree as t\n"
                                "root = t.parse(sys.argv[1]).getroot()\n"
                                "svg = '{http://www.w3.org/2000/svg}'\n"
                                "drawings = root.findall('.//' + svg + 'svg')\n"
                                "assert len(drawings) == 5, len(drawings)\n"
                                "ids = [e.get('id') for e in root.iter() if e.get('id')]\n"
                                "assert len(ids) == len(set(ids)), ids\n"
                                "for drawing in drawings: assert len(list(drawing.iter())) > 8\n"
                                "\" '"
                                + page.string() + "'";
    return std::system(command.c_str()) == 0;
}

}  // namespace

TEST_CASE("the page of every demo is well-formed, and checking the page checks the setup") {
    const SheetFolder folder;
    for (const Demo& demo : demos()) {
        CAPTURE(demo.name);
        const auto page = folder.path / (demo.name + ".html");
        const auto opened = open_demo(demo.asset);
        REQUIRE(opened.has_value());
        REQUIRE(write_sheet(opened->document,
                            {.file = demo.name, .output = page.string(), .options = {}}));
        CHECK(is_well_formed(page));
        const auto back = open_named(page.string());
        REQUIRE(back.has_value());
        CHECK(back->document.setup == opened->document.setup);
        CHECK(back->document.last_lines == opened->document.last_lines);
        CHECK_FALSE(names_a_setup_file(page.string()));
    }
}

TEST_CASE("a page that is not ours, and a folder that is not there, are told") {
    const SheetFolder folder;
    const auto page = folder.path / "other.html";
    std::ofstream(page) << "<!DOCTYPE html><html><body>Nothing here</body></html>";
    const auto read = open_named(page.string());
    REQUIRE_FALSE(read.has_value());
    CHECK(read.error().what.find("beamfork sheet") != std::string::npos);
    const auto opened = open_named("");
    REQUIRE(opened.has_value());
    const auto written =
        write_sheet(opened->document, {.file = "", .output = "/no/such/sheet.html", .options = {}});
    REQUIRE_FALSE(written.has_value());
    CHECK(written.error().code == ErrorCode::not_found);
}

TEST_CASE("every command under “Take it with you” in the README is one that the program takes") {
    std::ifstream readme(BEAMFORK_SOURCE_DIR "/README.md");
    const std::string begin = "build/release/beamfork ";
    bool is_inside = false;
    int commands = 0;
    for (std::string line; std::getline(readme, line);) {
        if (line.starts_with("## ")) is_inside = line == "## Take it with you";
        if (!is_inside || !line.starts_with(begin)) continue;
        CAPTURE(line);
        std::istringstream stream(line.substr(0, line.find(" #")));
        const std::vector<std::string> words{std::istream_iterator<std::string>(stream), {}};
        std::vector<const char*> pointers;
        for (const std::string& word : words)
            pointers.push_back(word.c_str());
        CHECK(read_command_line(static_cast<int>(pointers.size()), pointers.data()).has_value());
        ++commands;
    }
    CHECK(commands > 0);
}

TEST_CASE("model takes a file and what to leave out, and writes glTF's binary form only") {
    const char* words[] = {"beamfork", "model", "mine.train.toml", "-o", "out.glb", "--no-light"};
    const auto task = read_command_line(6, words);
    REQUIRE(task.has_value());
    const auto& model = std::get<MakeModel>(*task);
    CHECK(model.output == "out.glb");
    CHECK_FALSE(model.options.light);
    CHECK_FALSE(model.options.whole_shells);
    const char* other[] = {"beamfork", "model", "mine.train.toml", "-o", "out.obj"};
    CHECK_FALSE(read_command_line(5, other).has_value());
}

TEST_CASE("sheet takes a file, where to write and the night variant") {
    const char* words[] = {"beamfork", "sheet", "mine.train.toml", "-o", "out.html", "--night"};
    const auto task = read_command_line(6, words);
    REQUIRE(task.has_value());
    const auto& sheet = std::get<MakeSheet>(*task);
    CHECK(sheet.file == "mine.train.toml");
    CHECK(sheet.output == "out.html");
    CHECK(sheet.options.night);
}
