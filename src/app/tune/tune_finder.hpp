// Works out the study "tune" on a thread of its own: first the curve and what solves for the wanted result, then what
// every other number changes. The newest question wins.
#pragma once

#include <memory>

#include "app/finders/newest_job.hpp"
#include "desk/workbench.hpp"
#include "study/tune/tune_study.hpp"

namespace beamfork {

class TuneFinder {
public:
    /// `wake` is called from another thread when there is something new to show; may do nothing.
    explicit TuneFinder(std::function<void()> wake);

    /// As it was worked out last; null: not yet.
    [[nodiscard]] const std::shared_ptr<const TuneStudy>& study() const { return found_; }
    /// After a frame: asks anew where the question or the setup has changed, and takes what was found. Moving the
    /// varied number alone changes no curve and is not asked while it is dragged. True when there is something new to
    /// show. Does nothing while no panel wants it.
    bool refresh(const Workbench& bench, const std::optional<TuneQuestion>& wanted);
    /// As refresh(), but works it out at once: for a window that is drawn only once.
    void find_now(const Workbench& bench, const std::optional<TuneQuestion>& wanted);

private:
    struct Job {
        Setup setup;
        TuneQuestion question;
    };
    using Found = std::shared_ptr<const TuneStudy>;
    using Finder = NewestJob<Job, Found>;
    static void work(const Job& job, const Finder::Desk& desk);

    std::optional<Job> asked_;
    Found found_;
    Finder finder_;
};

}  // namespace beamfork
