// Traces what each eye sees and draws pictures of it on a thread of its own, so that the window never waits: the newest
// request wins, those that have not begun are dropped.
#pragma once

#include <memory>

#include "app/finders/newest_job.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

/// What is looked at, kept while others change theirs.
struct TracedSetup {
    Setup setup;
    Report report;
};

struct DrawnSight {
    SightRequest request;
    std::shared_ptr<const Sights> sights;  ///< that the picture is of
    SightImage image;
};

/// At once, on the calling thread.
DrawnSight drawn_sight(const TracedSetup& traced, const SightRequest& request);

class SightDrawer {
public:
    /// `finished` is called on the drawing thread when a picture waits to be taken.
    explicit SightDrawer(std::function<void()> finished);

    void ask(std::shared_ptr<const TracedSetup> traced, const SightRequest& request);
    /// The picture finished last, once.
    std::optional<DrawnSight> take();

private:
    struct Job {
        std::shared_ptr<const TracedSetup> traced;
        SightRequest request;
    };
    NewestJob<Job, DrawnSight> drawer_;
};

}  // namespace beamfork
