#include <chrono>
#include <csignal>
#include <thread>

#include "app/window/end_signals.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The listener has a thread of its own: some seconds are plenty on the busiest machine.
bool comes_true(const std::function<bool()>& condition) {
    for (int i = 0; i < 1000 && !condition(); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    return condition();
}

}  // namespace

TEST_CASE("SIGTERM, SIGINT and SIGHUP are told instead of ending the process") {
    for (const int signal : {SIGTERM, SIGINT, SIGHUP}) {
        std::atomic<int> told = 0;
        EndSignals signals([&] { ++told; });
        CHECK_FALSE(signals.was_asked());
        raise(signal);
        CHECK(comes_true([&] { return told == 1; }));
        CHECK(signals.was_asked());
    }
}

TEST_CASE("afterwards the signals have their usual handling") {
    {
        const EndSignals signals([] {});
    }
    struct sigaction action {};
    for (const int signal : {SIGTERM, SIGINT, SIGHUP}) {
        REQUIRE(sigaction(signal, nullptr, &action) == 0);
        CHECK((action.sa_handler == SIG_DFL));
    }
}
