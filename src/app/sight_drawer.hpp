// Draws pictures of what each eye sees on a thread of its own, so that the window never waits: the newest
// request wins, those that have not begun are dropped.
#pragma once

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "scene/sight_view_picture.hpp"

namespace beamfork {

struct DrawnSight {
    SightRequest request;
    SightImage image;
};

class SightDrawer {
public:
    /// `finished` is called on the drawing thread when a picture waits to be taken.
    explicit SightDrawer(std::function<void()> finished);
    SightDrawer(const SightDrawer&) = delete;
    SightDrawer& operator=(const SightDrawer&) = delete;
    SightDrawer(SightDrawer&&) = delete;
    SightDrawer& operator=(SightDrawer&&) = delete;
    ~SightDrawer();

    void ask(std::shared_ptr<const Sights> sights, const SightRequest& request);
    /// The picture finished last, once.
    std::optional<DrawnSight> take();

private:
    struct Job {
        std::shared_ptr<const Sights> sights;
        SightRequest request;
    };
    void work(const std::stop_token& stop);

    std::function<void()> finished_;
    std::mutex mutex_;
    std::condition_variable_any changed_;
    std::optional<Job> waiting_;
    std::optional<DrawnSight> drawn_;
    std::jthread thread_;  // last: it ends before what it uses
};

}  // namespace beamfork
