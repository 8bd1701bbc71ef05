// Carries out the window's exports by running this very program as a command beside it: the window never waits, a
// picture too large for the memory takes nothing down with it, and giving up is what Ctrl+C does.
#pragma once

#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "app/export/child_process.hpp"
#include "base/error.hpp"

namespace beamfork {

/// How far a command is, from what it prints.
struct CommandProgress {
    bool is_running = false;
    double share = -1;      ///< of "12 of 360 ..."; negative: it has not said
    std::string last_line;  ///< of its output
    int status = 0;         ///< once it has ended; -1: it was ended
};

class ExportRunner {
public:
    /// `program` is run; `changed` is called from another thread when there is news.
    ExportRunner(std::filesystem::path program, std::function<void()> changed);
    ExportRunner(const ExportRunner&) = delete;
    ExportRunner& operator=(const ExportRunner&) = delete;
    ExportRunner(ExportRunner&&) = delete;
    ExportRunner& operator=(ExportRunner&&) = delete;
    /// Ends what still runs.
    ~ExportRunner();

    /// Starts the command; one at a time: an error while another runs. When it has ended, `scratch` is removed.
    Result<void> start(const std::vector<std::string>& arguments,
                       const std::filesystem::path& scratch = {});
    void give_up();
    [[nodiscard]] CommandProgress progress() const;
    /// What became of the command, once, after it has ended.
    std::optional<CommandProgress> take_ended();

private:
    void hear(const std::string& line);
    void hear_end(int status, const std::filesystem::path& scratch);

    std::filesystem::path program_;
    std::function<void()> changed_;
    mutable std::mutex mutex_;
    CommandProgress progress_;
    bool has_ended_ = false;
    std::unique_ptr<ChildProcess> command_;
};

/// This program's own file.
std::filesystem::path this_program();

}  // namespace beamfork
