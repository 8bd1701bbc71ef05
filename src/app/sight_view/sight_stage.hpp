// What the window shows of what each eye sees: has it traced and drawn when the report or the request has changed, also
// while something is dragged, and holds the last picture on the graphics card.
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
    /// when there is one to show. Does nothing while no panel wants one.
    bool refresh(const Workbench& bench, std::optional<SightRequest> wanted);
    /// As refresh(), but draws at once: for a window that is drawn only once.
    void draw_now(const Workbench& bench, const std::optional<SightRequest>& wanted);

private:
    bool keep_report(const Workbench& bench);
    void show(DrawnSight drawn);

    std::shared_ptr<const TracedSetup> traced_;
    std::uint64_t traced_revision_ = 0;
    std::shared_ptr<const Sights> sights_;  ///< of the picture that is shown
    std::optional<SightRequest> asked_;
    SightRequest shown_;
    UploadedPicture texture_;
    SightDrawer drawer_;
};

}  // namespace beamfork
