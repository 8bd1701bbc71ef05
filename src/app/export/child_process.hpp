// Another program run beside this one: what goes into it, the lines it says, and its end.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <span>
#include <string>
#include <thread>
#include <vector>

#include "base/error.hpp"

#include <sys/types.h>

namespace beamfork {

enum class ChildInput {
    nothing,  ///< it reads an empty input
    bytes     ///< what write() gives it, until end_input()
};

/// Called from another thread; may be left out.
struct ChildNews {
    /// Each line that it prints or complains of, in their order, without the line break.
    std::function<void(const std::string&)> line;
    /// After its last line: its exit status; -1: a signal ended it.
    std::function<void(int)> end;
};

class ChildProcess {
public:
    /// `words` are the program, looked for along PATH unless it names a folder, and its arguments. It runs in a process
    /// group of its own, so that Ctrl+C reaches this program alone, which then ends it in order. Errors: not_found with
    /// the system's reason, impossible when there is no pipe to be had.
    static Result<std::unique_ptr<ChildProcess>> start(const std::vector<std::string>& words,
                                                       ChildNews news,
                                                       ChildInput input = ChildInput::nothing);

    ChildProcess(const ChildProcess&) = delete;
    ChildProcess& operator=(const ChildProcess&) = delete;
    ChildProcess(ChildProcess&&) = delete;
    ChildProcess& operator=(ChildProcess&&) = delete;
    /// Ends it at once if it still runs, and waits for that.
    ~ChildProcess();

    /// Waits until it has taken all of them; false when it takes no more.
    bool write(std::span<const unsigned char> bytes);
    void end_input();
    /// Asks it to end in order, as Ctrl+C does (SIGTERM); returns at once.
    void give_up();
    /// Waits for its end; the exit status, -1 when a signal ended it.
    int wait();

private:
    ChildProcess() = default;
    void send(int signal);
    void listen(int output, const ChildNews& news);

    std::mutex mutex_;
    pid_t process_ = 0;  ///< 0: it has ended
    int status_ = 0;
    int input_ = -1;
    std::thread listener_;
};

}  // namespace beamfork
