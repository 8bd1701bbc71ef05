#include "render/gpu_frame.hpp"

namespace beamfork {

GpuFrame GpuFrame::create() {
    GpuFrame made;
    made.meshes.create();
    made.housings.create();
    made.light.create();
    made.lines.create();
    made.marks.create();
    return made;
}

void GpuFrame::upload(const Frame& frame) {
    if (revision == frame.revision) return;
    revision = frame.revision;
    meshes.upload(frame.meshes);
    housings.upload(frame.housings);
    light.upload(frame, palette);
    lines.upload(frame.lines, palette);
    marks.upload(frame.marks, palette);
    discs.upload(frame.discs, palette);
}

}  // namespace beamfork
