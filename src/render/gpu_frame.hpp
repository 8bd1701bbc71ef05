// A Frame as it lies on the graphics card, by topic. Buffers are replaced whole at an upload.
#pragma once

#include <cstdint>
#include <optional>

#include "render/gpu_discs.hpp"
#include "render/gpu_light.hpp"
#include "render/gpu_meshes.hpp"
#include "render/gpu_overlay.hpp"

namespace beamfork {

struct GpuFrame {
    GpuMeshes meshes;
    GpuMeshes housings;
    GpuLight light;
    GpuLines lines;
    GpuMarks marks;
    GpuDiscs discs;
    Palette palette;
    std::optional<std::uint64_t> revision;  ///< of what was sent last

    /// Needs a current context.
    static GpuFrame create();

    /// Sends the frame; nothing happens when its revision is the one last sent.
    void upload(const Frame& frame);
};

}  // namespace beamfork
