// Draws pictures of what each eye sees on a thread of its own, so that the window never waits: the newest
// request wins, those that have not begun are dropped.
#pragma once

#include <memory>

#include "app/finders/newest_job.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

struct DrawnSight {
    SightRequest request;
    SightImage image;
};

class SightDrawer {
public:
    /// `finished` is called on the drawing thread when a picture waits to be taken.
    explicit SightDrawer(std::function<void()> finished);

    void ask(std::shared_ptr<const Sights> sights, const SightRequest& request);
    /// The picture finished last, once.
    std::optional<DrawnSight> take();

private:
    struct Job {
        std::shared_ptr<const Sights> sights;
        SightRequest request;
    };
    NewestJob<Job, DrawnSight> drawer_;
};

}  // namespace beamfork
