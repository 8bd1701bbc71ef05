// Seeks the cures of a report's findings on a thread of its own, since every idea is a whole study: the newest
// report wins, a search for an older one is given up.
#pragma once

#include "app/finders/newest_job.hpp"
#include "desk/workbench.hpp"

namespace beamfork {

class CureFinder {
public:
    /// `finished` is called on the searching thread when cures wait to be taken.
    explicit CureFinder(std::function<void()> finished);

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
    using Finder = NewestJob<Job, Found>;
    static void work(const Job& job, const Finder::Desk& desk);

    std::uint64_t asked_revision_ = 0;
    Finder finder_;
};

}  // namespace beamfork
