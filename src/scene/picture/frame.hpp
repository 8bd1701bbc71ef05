// One picture of the train as plain data: meshes, light, lines, marks, field-stop images, labels.
//
// Everything is in world millimetres (axes as in geometry/pose.hpp: +z along the light at the
// objective, +y up, +x to the observer's right). Light, lines, marks and images say what they are by a ColourRole;
// which colour that is is decided where they are drawn (render/palette.hpp, the sheet's style). No GL here: render
// draws a Frame, tests read it.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "scene/kit/colours.hpp"

#include <glm/glm.hpp>

namespace beamfork {

/// How a mesh answers light. Opaque finishes are lit and hide what is behind them; glass only ever
/// adds light (reflection, rim, tint), so that it needs no sorting.
enum class Finish { metal, blackened, mirror, ring, glass };

struct MeshVertex {
    glm::vec3 position{0};
    glm::vec3 normal{0, 0, 1};
};

/// Triangles of one body. Opaque bodies are closed surfaces with outward normals: a back face is seen only
/// through a cut and is drawn as the metal that was cut.
/// `part` is the index in the setup's parts (-1: none), for picking and hover.
/// Shells open towards the viewer: `shell_axis_point` and `shell_axis` (unit) say about which line.
struct Mesh {
    std::vector<MeshVertex> vertices;
    std::vector<std::uint32_t> indices;
    Finish finish = Finish::metal;
    Rgb tint{0.5F};
    int part = -1;
    bool is_shell = false;
    glm::vec3 shell_axis_point{0};
    glm::vec3 shell_axis{0, 0, 1};
};

/// A stretch of a traced ray, drawn additively as light. `strength` is the share of one ray's light
/// (1 for an undivided ray, 0.5 behind the splitter); render normalises by the number of rays.
struct LightRibbon {
    glm::vec3 from{0};
    glm::vec3 to{0};
    ColourRole role = ColourRole::undivided_beam;
    float strength = 1;
    bool clipped = false;  ///< belongs to a ray that dies; ViewOptions::clipped_rays may hide it
    /// Of its ray, 0 to 1: a picture with a share of the rays leaves out those that are not below it. Rays of any such
    /// share lie evenly over the objective.
    float rank = 0;
    glm::vec2 pupil{0};  ///< where the ray met the objective, in units of its radius
    /// Optical path at either end since the ray's wavefront passed the objective's middle, mm; before it: negative.
    float from_path_mm = 0;
    float to_path_mm = 0;
    /// Of its strength, at either end; even between them. A ray comes out of the dark and goes into it without a step.
    float from_share = 1;
    float to_share = 1;
};

/// When light along the axis comes to where it is divided and to each field stop: optical path since it passed the
/// objective's middle, mm. By eye: left, right.
struct LightArrival {
    bool is_known = false;
    double at_splitter_mm = 0;
    std::array<double, 2> at_stop_mm{};
    std::array<glm::vec3, 2> stop{};  ///< the middle of each field stop
};

/// A crisp line with a width in pixels: prism edges, dimension lines, ring outlines.
struct Line {
    glm::vec3 from{0};
    glm::vec3 to{0};
    ColourRole role = ColourRole::dimension;
    float width_px = 1.5F;
    bool dashed = false;
    bool on_top = false;     ///< drawn over everything (dimensions), else hidden by opaque bodies
    int part = -1;           ///< that it belongs to and fades with; -1: none
    bool is_result = false;  ///< was traced or worked out; Emphasis::results may hold it back
    float shade = 1;         ///< of its role's colour, in linear light: less is darker
};

enum class MarkShape { cross, dot, ring, diamond };

/// A small screen-facing sign: a cross where a ray is clipped, a ring where it leaks, a diamond at the focus.
struct Mark {
    glm::vec3 at{0};
    ColourRole role = ColourRole::clipped;
    float size_px = 7;
    MarkShape shape = MarkShape::cross;
    bool on_top = false;
    bool clipped = false;  ///< marks the end of a clipped ray; hidden together with it
};

/// A disc carrying a computed image (the illumination of a field stop). `light` is size*size, linear, 1 where all of
/// it arrives, row 0 at -y of the disc; `right` and `up` are the disc's +x and +y with length = radius. `lost` likewise,
/// in the clipping colour; empty: nothing is told of it.
struct ImageDisc {
    glm::vec3 centre{0};
    glm::vec3 right{1, 0, 0};
    glm::vec3 up{0, 1, 0};
    ColourRole role = ColourRole::undivided_beam;
    int size = 0;
    std::vector<float> light;
    std::vector<float> lost{};
};

/// `dimension`: of focus that falls short; `clipped`: what takes light; `good`: what is as it should be;
/// `title`: which of two setups this is.
enum class LabelRole { part, dimension, left_eye, right_eye, note, good, clipped, title };

/// Words by a place; picture_words.hpp lays them out: what is told of a part stands below its name. The smaller
/// `priority` stays when there is no room.
struct Label {
    glm::vec3 at{0};
    std::string text;
    LabelRole role = LabelRole::part;
    int part = -1;
    int priority = 0;
    int along = 0;                    ///< of a part's name: counted along the light
    bool on_hover = false;            ///< is shown only while its part is pointed at
    std::optional<glm::vec3> twin{};  ///< the same in the other arm
    /// Was worked out: all but names of parts, eyes and setups.
    [[nodiscard]] bool is_result() const {
        return role == LabelRole::dimension || role == LabelRole::note || role == LabelRole::good
               || role == LabelRole::clipped;
    }
    bool operator==(const Label&) const = default;
};

struct Bounds {
    glm::vec3 low{0};
    glm::vec3 high{0};
    [[nodiscard]] glm::vec3 centre() const { return 0.5F * (low + high); }
    [[nodiscard]] float radius() const { return 0.5F * glm::length(high - low); }
};

struct Frame {
    std::uint64_t revision = 0;  ///< changes with the content; equal revisions need no new upload
    std::vector<Mesh> meshes;
    std::vector<Mesh>
        housings;  ///< round the glass, drawn where tubes are whole (ShellView::whole)
    std::vector<LightRibbon> light;
    int ray_count = 1;  ///< number of rays behind `light`, for normalising its brightness
    LightArrival arrival;
    std::vector<Line> lines;
    std::vector<Mark> marks;
    std::vector<ImageDisc> discs;
    std::vector<Label> labels;
    Bounds bounds;       ///< of the whole train, with the eyes that look in
    Bounds rear_bounds;  ///< of what lies behind the drawtube's rear face: the interesting end
    Bounds head_bounds;  ///< from the focuser to the eyes: what the overview shows large
    std::vector<Bounds> part_bounds;  ///< by part index; the observer's: of the eyes that look in
    glm::vec3 eye_axis{0, 1, 0};  ///< direction (unit) in which light leaves towards the observer
};

}  // namespace beamfork
