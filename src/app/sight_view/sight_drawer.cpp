#include "app/sight_view/sight_drawer.hpp"

#include <utility>

namespace beamfork {

SightDrawer::SightDrawer(std::function<void()> finished)
    : drawer_(
        [](const Job& job, const auto& desk) {
            desk.publish(DrawnSight{job.request, draw_sight(*job.sights, job.request)});
        },
        std::move(finished)) {}

void SightDrawer::ask(std::shared_ptr<const Sights> sights, const SightRequest& request) {
    drawer_.ask(Job{std::move(sights), request});
}

std::optional<DrawnSight> SightDrawer::take() { return drawer_.take(); }

}  // namespace beamfork
