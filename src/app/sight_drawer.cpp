#include "app/sight_drawer.hpp"

#include <utility>

namespace beamfork {

SightDrawer::SightDrawer(std::function<void()> finished)
    : finished_(std::move(finished)),
      thread_([this](const std::stop_token& stop) { work(stop); }) {}

SightDrawer::~SightDrawer() {
    thread_.request_stop();
    changed_.notify_all();
}

void SightDrawer::ask(std::shared_ptr<const Sights> sights, const SightRequest& request) {
    {
        const std::lock_guard lock(mutex_);
        waiting_ = Job{std::move(sights), request};
    }
    changed_.notify_all();
}

std::optional<DrawnSight> SightDrawer::take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(drawn_, std::nullopt);
}

void SightDrawer::work(const std::stop_token& stop) {
    while (true) {
        Job job;
        {
            std::unique_lock lock(mutex_);
            if (!changed_.wait(lock, stop, [&] { return waiting_.has_value(); })) return;
            job = *std::exchange(waiting_, std::nullopt);
        }
        SightImage image = draw_sight(*job.sights, job.request);
        {
            const std::lock_guard lock(mutex_);
            drawn_ = DrawnSight{job.request, std::move(image)};
        }
        finished_();
    }
}

}  // namespace beamfork
