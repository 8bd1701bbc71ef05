// The program as a user runs it, without a display: what it says, its exit status, a folder for what it leaves.
#pragma once

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include <doctest/doctest.h>

#include <sys/wait.h>
#include <unistd.h>

namespace test_program {

struct Ran {
    int status = -1;
    std::string output;  ///< standard output and error together
};

/// `environment`: words for env(1), such as "-u HOME" or "LC_ALL=C".
inline Ran run(const std::string& arguments, const std::string& environment = "") {
    const std::string command = "env -u DISPLAY -u WAYLAND_DISPLAY " + environment
                                + " '" BEAMFORK_PROGRAM "' " + arguments + " 2>&1";
    FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    Ran ran;
    std::array<char, 4096> buffer{};
    std::size_t count = 0;
    while ((count = fread(buffer.data(), 1, buffer.size(), pipe)) > 0)
        ran.output.append(buffer.data(), count);
    ran.status = WEXITSTATUS(pclose(pipe));
    return ran;
}

class ScratchFolder {
public:
    ScratchFolder()
        : path_(std::filesystem::temp_directory_path()
                / ("beamfork-program-" + std::to_string(getpid()))) {
        std::filesystem::create_directories(path_);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;
    ~ScratchFolder() { std::filesystem::remove_all(path_); }

    [[nodiscard]] std::string file(const std::string& name, const std::string& text) const {
        std::ofstream(path_ / name, std::ios::binary) << text;
        return (path_ / name).string();
    }
    [[nodiscard]] std::filesystem::path at(const std::string& name) const { return path_ / name; }

private:
    std::filesystem::path path_;
};

inline bool says(const Ran& ran, const std::string& words) {
    return ran.output.find(words) != std::string::npos;
}

}  // namespace test_program
