// The whole window without a display: drawn frame by frame into memory, its mouse and keys as whoever holds it puts
// them into Dear ImGui.
#pragma once

#include <functional>
#include <memory>

#include "app/comparison/comparison_desk.hpp"
#include "app/sight_view/sight_stage.hpp"
#include "app/sight_view/told_sight.hpp"
#include "app/stage/gui.hpp"
#include "app/stage/stage_pair.hpp"
#include "app/tune/tune_finder.hpp"
#include "desk/workbench.hpp"
#include "render/canvas.hpp"
#include "render/image.hpp"
#include "render/offscreen.hpp"
#include "ui/interface.hpp"

namespace beamfork {

class WindowPainter {
public:
    struct Size {
        int width = 1920;
        int height = 1080;
    };
    /// Of a document that makes a train; its findings' cures are found first.
    /// Errors: no_graphics, and those of make_report.
    static Result<std::unique_ptr<WindowPainter>> create(const Document& document, Size size);

    /// One frame, all of whose results are there in the next. The first sets the camera, unless
    /// session.pose.camera_is_set.
    Result<void> frame();
    /// What the last frame shows, at night in red.
    Result<Image> image() const;
    /// The speaker's notes that the last frame asked for; all black without any.
    Result<Image> notes(Size size) const;

    Workbench bench;
    Session session;
    Transient transient;
    StandardView first_view = StandardView::overview;
    std::function<void(View&)> also_true;  ///< what else is told to the interface; empty: nothing
    Requests last;                         ///< of the last frame

private:
    struct Drawing {
        OffscreenContext context;  // first: it dies behind everything that draws in it
        StagePair stage;
        Gui gui;
        Canvas canvas;
    };
    WindowPainter(Drawing drawing, const Document& document, Size size)
        : bench(ReadSetup{document, {}}), drawing_(std::move(drawing)), size_(size) {}
    [[nodiscard]] View view_of_now() const;
    void set_camera();

    Drawing drawing_;
    Size size_;
    SightStage sights_{[] {}};
    ToldSight told_sight_;
    TuneFinder tune_{[] {}};
    ComparisonDesk comparison_;
    bool has_tune_ = false;
};

}  // namespace beamfork
