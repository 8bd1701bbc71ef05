#include "app/export/export_runner.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace beamfork {

namespace {

// Output and errors go into one pipe, in their order.
int spawn_with_output(pid_t& process, const std::vector<std::string>& words, int output) {
    std::vector<char*> pointers;
    for (const std::string& word : words)
        pointers.push_back(const_cast<char*>(word.c_str()));
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, output, STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, output, STDERR_FILENO);
    const int error =
        ::posix_spawn(&process, pointers[0], &actions, nullptr, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    return error;
}

double share_in(const std::string& line) {
    int done = 0;
    int all = 0;
    const bool says = std::sscanf(line.c_str(), "%d of %d", &done, &all) == 2 && all > 0;
    return says ? static_cast<double>(done) / all : -1;
}

}  // namespace

std::filesystem::path this_program() {
    std::error_code trouble;
    return std::filesystem::read_symlink("/proc/self/exe", trouble);
}

ExportRunner::ExportRunner(std::filesystem::path program, std::function<void()> changed)
    : program_(std::move(program)), changed_(std::move(changed)) {}

ExportRunner::~ExportRunner() {
    give_up();
    if (reader_.joinable()) reader_.join();
}

Result<void> ExportRunner::start(const std::vector<std::string>& arguments,
                                 const std::filesystem::path& scratch) {
    if (progress().is_running)
        return fail(ErrorCode::impossible,
                    "something is being written already: wait or give it up");
    if (reader_.joinable()) reader_.join();
    std::array<int, 2> ends{-1, -1};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0)
        return fail(ErrorCode::impossible, "the system offers no pipe to the command");
    std::vector<std::string> words{program_.string()};
    words.insert(words.end(), arguments.begin(), arguments.end());
    pid_t process = 0;
    const int error = spawn_with_output(process, words, ends[1]);
    ::close(ends[1]);
    if (error != 0) {
        ::close(ends[0]);
        return fail(ErrorCode::not_found,
                    "cannot be started: " + std::generic_category().message(error),
                    {program_.string(), 0});
    }
    const std::lock_guard lock(mutex_);
    progress_ = {.is_running = true, .share = -1, .last_line = "working …", .status = 0};
    has_ended_ = false;
    process_ = process;
    reader_ = std::thread(
        [this, output = ends[0], process, scratch] { read_until_end(output, process, scratch); });
    return {};
}

void ExportRunner::give_up() {
    const std::lock_guard lock(mutex_);
    if (process_ > 0) ::kill(process_, SIGTERM);
}

CommandProgress ExportRunner::progress() const {
    const std::lock_guard lock(mutex_);
    return progress_;
}

std::optional<CommandProgress> ExportRunner::take_ended() {
    const std::lock_guard lock(mutex_);
    if (!std::exchange(has_ended_, false)) return std::nullopt;
    return progress_;
}

void ExportRunner::hear(const std::string& line) {
    if (line.empty()) return;
    {
        const std::lock_guard lock(mutex_);
        progress_.last_line = line;
        if (const double share = share_in(line); share >= 0) progress_.share = share;
    }
    changed_();
}

void ExportRunner::read_until_end(int output, pid_t process, const std::filesystem::path& scratch) {
    std::string line;
    std::array<char, 1024> buffer{};
    for (;;) {
        const ssize_t count = ::read(output, buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count <= 0) break;
        for (ssize_t i = 0; i < count; ++i) {
            if (buffer[static_cast<std::size_t>(i)] != '\n') {
                line += buffer[static_cast<std::size_t>(i)];
                continue;
            }
            hear(line);
            line.clear();
        }
    }
    hear(line);
    ::close(output);
    // The number of an ended process may be given to another once it is waited for: no signal goes out after that.
    siginfo_t ended{};
    while (::waitid(P_PID, static_cast<id_t>(process), &ended, WEXITED | WNOWAIT) < 0
           && errno == EINTR) {
    }
    {
        const std::lock_guard lock(mutex_);
        process_ = 0;
    }
    int status = 0;
    while (::waitpid(process, &status, 0) < 0 && errno == EINTR) {
    }
    std::error_code ignored;
    if (!scratch.empty()) std::filesystem::remove(scratch, ignored);
    {
        const std::lock_guard lock(mutex_);
        progress_.is_running = false;
        progress_.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        has_ended_ = true;
    }
    changed_();
}

}  // namespace beamfork
