#include "app/export/child_process.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace beamfork {

namespace {

// Both ends are closed when it goes, unless they were taken.
class Pipe {
public:
    Pipe() = default;
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    Pipe(Pipe&&) = delete;
    Pipe& operator=(Pipe&&) = delete;
    ~Pipe() {
        for (const int end : ends_)
            if (end >= 0) ::close(end);
    }
    bool open() { return ::pipe2(ends_.data(), O_CLOEXEC) == 0; }
    [[nodiscard]] int reader() const { return ends_[0]; }
    [[nodiscard]] int writer() const { return ends_[1]; }
    int take_reader() { return std::exchange(ends_[0], -1); }
    int take_writer() { return std::exchange(ends_[1], -1); }

private:
    std::array<int, 2> ends_{-1, -1};
};

// 0, or the system's error. Without an input it reads from nowhere; output and errors go into one pipe, in their order.
int spawn(pid_t& process, const std::vector<std::string>& words, int input, int output) {
    std::vector<char*> pointers;
    for (const std::string& word : words)
        pointers.push_back(const_cast<char*>(word.c_str()));
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    if (input >= 0) {
        posix_spawn_file_actions_adddup2(&actions, input, STDIN_FILENO);
    } else {
        posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    }
    posix_spawn_file_actions_adddup2(&actions, output, STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, output, STDERR_FILENO);
    posix_spawnattr_t attributes;
    posix_spawnattr_init(&attributes);
    sigset_t usual;
    sigemptyset(&usual);
    sigaddset(&usual, SIGPIPE);
    posix_spawnattr_setsigdefault(&attributes, &usual);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETPGROUP | POSIX_SPAWN_SETSIGDEF);
    const int error =
        ::posix_spawnp(&process, pointers[0], &actions, &attributes, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    posix_spawnattr_destroy(&attributes);
    return error;
}

template <class Hear>
void read_lines(int output, const Hear& hear) {
    std::string line;
    std::array<char, 1024> buffer{};
    for (;;) {
        const ssize_t count = ::read(output, buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count <= 0) break;
        for (const char letter : std::span(buffer).first(static_cast<std::size_t>(count))) {
            if (letter != '\n') {
                line += letter;
                continue;
            }
            hear(line);
            line.clear();
        }
    }
    if (!line.empty()) hear(line);
}

}  // namespace

Result<std::unique_ptr<ChildProcess>>
ChildProcess::start(const std::vector<std::string>& words, ChildNews news, ChildInput input) {
    Pipe in;
    Pipe out;
    if ((input == ChildInput::bytes && !in.open()) || !out.open())
        return fail(ErrorCode::impossible, "the system offers no pipe to another program");
    // A program that ends early is an error to tell, not our end.
    if (input == ChildInput::bytes) std::signal(SIGPIPE, SIG_IGN);
    std::unique_ptr<ChildProcess> child(new ChildProcess);
    if (const int error = spawn(child->process_, words, in.reader(), out.writer()); error != 0) {
        child->process_ = 0;
        return fail(ErrorCode::not_found, std::generic_category().message(error),
                    {words.front(), 0});
    }
    child->input_ = in.take_writer();
    child->listener_ = std::thread([&child = *child, output = out.take_reader(),
                                    news = std::move(news)] { child.listen(output, news); });
    return child;
}

ChildProcess::~ChildProcess() {
    send(SIGKILL);
    wait();
}

// NOLINTNEXTLINE(readability-make-member-function-const): it changes what the program reads
bool ChildProcess::write(std::span<const unsigned char> bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(input_, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    return true;
}

void ChildProcess::end_input() {
    if (input_ >= 0) ::close(std::exchange(input_, -1));
}

void ChildProcess::give_up() { send(SIGTERM); }

void ChildProcess::send(int signal) {
    const std::lock_guard lock(mutex_);
    if (process_ > 0) ::kill(process_, signal);
}

int ChildProcess::wait() {
    end_input();
    if (listener_.joinable()) listener_.join();
    return status_;
}

void ChildProcess::listen(int output, const ChildNews& news) {
    read_lines(output, [&](const std::string& line) {
        if (news.line) news.line(line);
    });
    ::close(output);
    // The number of an ended process may be given to another once it is waited for: no signal goes out after that.
    const pid_t process = process_;
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
    status_ = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    if (news.end) news.end(status_);
}

}  // namespace beamfork
