// The train as a solid model for other programs: glTF 2.0 (Khronos Group, "glTF 2.0 Specification", ISO/IEC
// 12113:2022) in one binary file. Lengths in metres, +y up, +z along the light: the world's own axes.
#pragma once

#include <string>

#include "scene/picture/frame.hpp"
#include "train/setup.hpp"

namespace beamfork {

struct ModelOptions {
    bool light = true;          ///< the beams as lines, and the dimension of a missing focus
    bool whole_shells = false;  ///< else tubes are cut open lengthwise, so that one sees into them
};

/// The bytes of a .glb file: one node for each part, named after it and numbered from 1, one for each beam.
/// `frame` is of that setup.
std::string model_glb(const Setup& setup, const Frame& frame, const ModelOptions& options = {});

/// A shell without the half that faces the viewer of the side view, or, where it runs towards that viewer, without
/// the upper half.
Mesh halved_shell(const Mesh& shell);

}  // namespace beamfork
