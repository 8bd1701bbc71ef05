#include "app/window/end_signals.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace beamfork {

namespace {

constexpr char told_by_signal = 's';
constexpr char told_to_stop = 'x';

// A handler is given nothing but the signal's number, so that it can find the pipe here alone.
std::atomic<int> signal_pipe{-1};  // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)

void write_byte(int pipe, char byte) {
    while (write(pipe, &byte, 1) < 0 && errno == EINTR) {
    }
}

void pass_on(int /*signal*/) {
    const int kept = errno;
    write_byte(signal_pipe, told_by_signal);
    errno = kept;
}

void handle_by(void (*handler)(int)) {
    struct sigaction action {};
    action.sa_handler = handler;
    action.sa_flags = SA_RESTART;
    sigemptyset(&action.sa_mask);
    sigaction(SIGTERM, &action, nullptr);
    sigaction(SIGINT, &action, nullptr);
    sigaction(SIGHUP, &action, nullptr);  // the terminal that started the window was closed
}

char read_byte(int pipe) {
    char byte = told_to_stop;
    while (true) {
        const ssize_t got = read(pipe, &byte, 1);
        if (got == 1) return byte;
        if (got == 0 || errno != EINTR) return told_to_stop;
    }
}

}  // namespace

EndSignals::EndSignals(std::function<void()> tell) {
    std::array<int, 2> ends{};
    if (pipe2(ends.data(), O_CLOEXEC) != 0) return;
    reader_ = ends[0];
    writer_ = ends[1];
    listener_ = std::thread([this, reader = reader_, tell = std::move(tell)] {
        while (read_byte(reader) == told_by_signal) {
            was_asked_ = true;
            tell();
        }
    });
    signal_pipe = writer_;
    handle_by(pass_on);
}

EndSignals::~EndSignals() {
    if (writer_ < 0) return;
    handle_by(SIG_DFL);
    write_byte(writer_, told_to_stop);
    listener_.join();
    signal_pipe = -1;
    close(reader_);
    close(writer_);
}

}  // namespace beamfork
