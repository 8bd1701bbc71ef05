// The program end to end under a display of its own (xvfb): the scripts beside this file tell the steps.
#include <cstdlib>
#include <filesystem>
#include <string>

#include <doctest/doctest.h>

#include <unistd.h>

namespace {

// Runs a journey on the first demo. When it fails, its pictures of the window stay in the folder.
void go(const std::string& journey) {
    const auto folder = std::filesystem::temp_directory_path()
                        / ("beamfork-" + journey + "-" + std::to_string(getpid()));
    std::filesystem::create_directories(folder);
    const std::string source = BEAMFORK_SOURCE_DIR;
    // -noreset: the program is closed and opened again, and a display that starts afresh when its last
    // window goes would refuse the second one now and then.
    const std::string command = "xvfb-run -a -s '-screen 0 1280x720x24 -noreset' bash '" + source
                                + "/tests/journey/" + journey + ".sh' '" BEAMFORK_PROGRAM "' '"
                                + source + "/assets/demos/1-short-of-focus.train.toml' '"
                                + folder.string() + "'";
    const int status = std::system(command.c_str());
    CAPTURE(folder.string());
    REQUIRE(status == 0);
    std::filesystem::remove_all(folder);
}

}  // namespace

TEST_CASE("a setup is opened, edited, saved, undone, and read again by the window") {
    go("journey");
}

TEST_CASE("a setup short of focus is cured in the window, or solved for a margin, and kept") {
    go("cure_journey");
}
