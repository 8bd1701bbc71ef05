#include "app/cure_finder.hpp"

#include <utility>

#include "study/cure_search.hpp"

namespace beamfork {

CureFinder::CureFinder(std::function<void()> finished)
    : finished_(std::move(finished)),
      thread_([this](const std::stop_token& stop) { work(stop); }) {}

CureFinder::~CureFinder() {
    thread_.request_stop();
    changed_.notify_all();
}

bool CureFinder::refresh(Workbench& bench) {
    const bool is_new = bench.report_revision() != asked_revision_ && !bench.is_coarse();
    if (is_new) asked_revision_ = bench.report_revision();
    std::optional<Found> found;
    {
        const std::lock_guard lock(mutex_);
        found = std::exchange(found_, std::nullopt);
        if (is_new && bench.report() != nullptr) {
            waiting_ = Job{asked_revision_, bench.document().setup, *bench.report()};
            is_one_waiting_ = true;
        }
    }
    changed_.notify_all();
    if (found) bench.adopt_cures(found->revision, std::move(found->cures));
    return found.has_value();
}

void CureFinder::work(const std::stop_token& stop) {
    while (true) {
        Job job;
        {
            std::unique_lock lock(mutex_);
            if (!changed_.wait(lock, stop, [&] { return waiting_.has_value(); })) return;
            job = *std::exchange(waiting_, std::nullopt);
            is_one_waiting_ = false;
        }
        const auto is_given_up = [&] { return stop.stop_requested() || is_one_waiting_.load(); };
        auto cures = find_cures(job.setup, job.report, is_given_up);
        if (is_given_up()) continue;
        {
            const std::lock_guard lock(mutex_);
            found_ = Found{job.revision, std::move(cures)};
        }
        finished_();
    }
}

}  // namespace beamfork
