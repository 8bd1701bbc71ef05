// What the window shows of what each eye sees: keeps the traced sights of the report, has pictures drawn when
// they or the request have changed, and holds the last one on the graphics card.
#pragma once

#include "app/sight_view/sight_drawer.hpp"
#include "desk/workbench.hpp"
#include "render/uploaded_picture.hpp"
#include "ui/sight_view/sight_view_panel.hpp"

namespace beamfork {

class SightStage {
public:
    /// `wake` is called from another thread when a picture is ready; may do nothing.
    explicit SightStage(std::function<void()> wake) : drawer_(std::move(wake)) {}

    /// What there is to show.
    [[nodiscard]] SightView view() const;
    /// After a frame: asks for a new picture where something has changed, and takes a finished one. True
    /// when there is a new picture or new sights to show. Does nothing while no panel wants one.
    bool refresh(const Workbench& bench, const std::optional<SightRequest>& wanted);
    /// As refresh(), but draws at once: for a window that is drawn only once.
    void draw_now(const Workbench& bench, const std::optional<SightRequest>& wanted);

private:
    bool update_sights(const Workbench& bench);
    void show(const DrawnSight& drawn);

    std::shared_ptr<const Sights> sights_;
    std::uint64_t sights_revision_ = 0;
    std::optional<SightRequest> asked_;
    SightRequest shown_;
    UploadedPicture texture_;
    SightDrawer drawer_;
};

}  // namespace beamfork
