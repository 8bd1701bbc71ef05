#include "app/export/model.hpp"

#include "document/atomic_file.hpp"
#include "scene/picture/picture.hpp"

namespace beamfork {

namespace {

/// Round enough to be looked at closely; rays enough to see the beams and few enough to see between them.
constexpr PictureEffort model_effort{.axis_rays = 48,
                                     .rim_rays = 24,
                                     .edge_points = 2,
                                     .edge_rays = 8,
                                     .disc_pixels = 8,
                                     .round_segments = 96};

}  // namespace

Result<void> write_model(const Document& document, const MakeModel& command) {
    const Setup& setup = document.setup;
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tl::make_unexpected(report.error());
    const Frame frame = build_frame(setup, *report, model_effort);
    return replace_file(command.output, model_glb(setup, frame, command.options));
}

}  // namespace beamfork
