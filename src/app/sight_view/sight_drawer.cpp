#include "app/sight_view/sight_drawer.hpp"

#include <utility>

namespace beamfork {

DrawnSight drawn_sight(const TracedSetup& traced, const SightRequest& request) {
    auto sights = std::make_shared<const Sights>(sights_of(traced.setup, traced.report));
    SightImage image = draw_sight(*sights, request);
    return {request, std::move(sights), std::move(image)};
}

SightDrawer::SightDrawer(std::function<void()> finished)
    : drawer_([](const Job& job,
                 const auto& desk) { desk.publish(drawn_sight(*job.traced, job.request)); },
              std::move(finished)) {}

void SightDrawer::ask(std::shared_ptr<const TracedSetup> traced, const SightRequest& request) {
    drawer_.ask(Job{std::move(traced), request});
}

std::optional<DrawnSight> SightDrawer::take() { return drawer_.take(); }

}  // namespace beamfork
