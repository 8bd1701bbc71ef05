// Seeks the cures of a report's findings on a thread of its own, since every idea is a whole study: the newest
// report wins, a search for an older one is given up.
#pragma once

#include <atomic>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "app/workbench.hpp"

namespace beamfork {

class CureFinder {
public:
    /// `finished` is called on the searching thread when cures wait to be taken.
    explicit CureFinder(std::function<void()> finished);
    CureFinder(const CureFinder&) = delete;
    CureFinder& operator=(const CureFinder&) = delete;
    CureFinder(CureFinder&&) = delete;
    CureFinder& operator=(CureFinder&&) = delete;
    ~CureFinder();

    /// After each frame: begins a search where the report is new and nothing is dragged, and hands the bench
    /// what was found. True when it has.
    bool refresh(Workbench& bench);

private:
    struct Job {
        std::uint64_t revision = 0;
        Setup setup;
        Report report;
    };
    struct Found {
        std::uint64_t revision = 0;
        std::vector<std::vector<Cure>> cures;
    };
    void work(const std::stop_token& stop);

    std::function<void()> finished_;
    std::uint64_t asked_revision_ = 0;
    std::mutex mutex_;
    std::condition_variable_any changed_;
    std::optional<Job> waiting_;
    std::atomic<bool> is_one_waiting_ = false;
    std::optional<Found> found_;
    std::jthread thread_;  // last: it ends before what it uses
};

}  // namespace beamfork
