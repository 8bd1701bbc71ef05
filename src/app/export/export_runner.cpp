#include "app/export/export_runner.hpp"

#include <cstdio>
#include <system_error>
#include <utility>

namespace beamfork {

namespace {

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
    if (command_) command_->wait();
}

Result<void> ExportRunner::start(const std::vector<std::string>& arguments,
                                 const std::filesystem::path& scratch) {
    if (progress().is_running)
        return fail(ErrorCode::impossible,
                    "something is being written already: wait or give it up");
    command_.reset();
    std::vector<std::string> words{program_.string()};
    words.insert(words.end(), arguments.begin(), arguments.end());
    {
        const std::lock_guard lock(mutex_);
        progress_ = {.is_running = true, .share = -1, .last_line = "working …", .status = 0};
        has_ended_ = false;
    }
    auto started = ChildProcess::start(
        words, {.line = [this](const std::string& line) { hear(line); },
                .end = [this, scratch](int status) { hear_end(status, scratch); }});
    if (!started) {
        const std::lock_guard lock(mutex_);
        progress_ = {};
        Error error = started.error();
        error.what = "cannot be started: " + error.what;
        return tl::make_unexpected(error);
    }
    command_ = *std::move(started);
    return {};
}

void ExportRunner::give_up() {
    if (command_) command_->give_up();
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

void ExportRunner::hear_end(int status, const std::filesystem::path& scratch) {
    std::error_code ignored;
    if (!scratch.empty()) std::filesystem::remove(scratch, ignored);
    {
        const std::lock_guard lock(mutex_);
        progress_.is_running = false;
        progress_.status = status;
        has_ended_ = true;
    }
    changed_();
}

}  // namespace beamfork
