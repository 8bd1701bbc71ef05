// One thread that does the newest of the jobs it is given: a job that has not begun is dropped for a newer one, one
// under way can ask whether it is still wanted.
#pragma once

#include <atomic>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace beamfork {

template <class Job, class Found>
class NewestJob {
public:
    /// What a job may ask, on the working thread, and how it hands over what it found.
    struct Desk {
        std::function<bool()> is_ending;     ///< the program waits for the thread to end
        std::function<bool()> is_given_up;   ///< that, or a newer job waits
        std::function<void(Found)> publish;  ///< may be called more than once; the last one is kept
    };
    using Work = std::function<void(const Job&, const Desk&)>;

    /// `published` is called on the working thread when something waits to be taken.
    NewestJob(Work work, std::function<void()> published)
        : work_(std::move(work)),
          published_(std::move(published)),
          thread_([this](const std::stop_token& stop) { run(stop); }) {}
    NewestJob(const NewestJob&) = delete;
    NewestJob& operator=(const NewestJob&) = delete;
    NewestJob(NewestJob&&) = delete;
    NewestJob& operator=(NewestJob&&) = delete;
    ~NewestJob() {
        thread_.request_stop();
        changed_.notify_all();
    }

    void ask(Job job) {
        {
            const std::lock_guard lock(mutex_);
            waiting_ = std::move(job);
            is_one_waiting_ = true;
        }
        changed_.notify_all();
    }
    /// What was published last, once.
    std::optional<Found> take() {
        const std::lock_guard lock(mutex_);
        return std::exchange(found_, std::nullopt);
    }

private:
    void run(const std::stop_token& stop) {
        const Desk desk{[&stop] { return stop.stop_requested(); },
                        [this, &stop] { return stop.stop_requested() || is_one_waiting_.load(); },
                        [this](Found found) {
                            {
                                const std::lock_guard lock(mutex_);
                                found_ = std::move(found);
                            }
                            published_();
                        }};
        while (true) {
            std::optional<Job> job;
            {
                std::unique_lock lock(mutex_);
                if (!changed_.wait(lock, stop, [&] { return waiting_.has_value(); })) return;
                job = std::exchange(waiting_, std::nullopt);
                is_one_waiting_ = false;
            }
            work_(*job, desk);
        }
    }

    Work work_;
    std::function<void()> published_;
    std::mutex mutex_;
    std::condition_variable_any changed_;
    std::optional<Job> waiting_;
    std::atomic<bool> is_one_waiting_ = false;
    std::optional<Found> found_;
    std::jthread thread_;  // last: it ends before what it uses
};

}  // namespace beamfork
