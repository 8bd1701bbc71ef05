// SIGTERM and SIGINT as events: the system shuts down, or the user pressed Ctrl+C in the terminal.
#pragma once

#include <atomic>
#include <functional>
#include <thread>

namespace beamfork {

/// While one lives, the two signals no longer end the process but are told. At most one at a time.
///
/// The handler only writes a byte into a pipe, which is all that a handler may do; a thread reads it. Programs that
/// are started meanwhile have the usual handling.
class EndSignals {
public:
    /// `tell` is called on a thread of its own, once for each signal, after was_asked() has become true.
    explicit EndSignals(std::function<void()> tell);
    ~EndSignals();
    EndSignals(const EndSignals&) = delete;
    EndSignals& operator=(const EndSignals&) = delete;
    EndSignals(EndSignals&&) = delete;
    EndSignals& operator=(EndSignals&&) = delete;

    [[nodiscard]] bool was_asked() const { return was_asked_; }

private:
    std::atomic<bool> was_asked_ = false;
    int reader_ =
        -1;  ///< the pipe's ends; -1: none could be had, and signals end the process as ever
    int writer_ = -1;
    std::thread listener_;
};

}  // namespace beamfork
