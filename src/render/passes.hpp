// The passes that make one picture, in their order: bodies, light, bloom, glass, composite, overlay.
//
// Each pass sets all the state it needs and trusts none. README.md in this folder says why the order of
// light and glass cannot matter.
#pragma once

#include "base/error.hpp"
#include "render/gpu_frame.hpp"
#include "render/program.hpp"
#include "render/targets.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/view_options.hpp"

namespace beamfork {

/// Shader variant for light ground, where light darkens as ink does.
inline constexpr const char* light_is_ink = "#define LIGHT_IS_INK\n";

/// What is drawn and how; lives for one draw call.
struct PassInput {
    const GpuFrame& frame;
    const Targets& targets;
    const Camera& camera;
    const ViewOptions& options;
    const Emphasis& emphasis;
    int highlighted_part = -1;
    float rays = 1;  ///< as PictureSize::rays
};

/// Metal, mirrors, rings and the field-stop images, multisampled; opened shells. What fades is drawn grain by grain, until
/// nothing of it is left but its outline of glass (LightPass).
class BodyPass {
public:
    static Result<BodyPass> create();
    void draw(const PassInput& input) const;

private:
    void set_finish(const Program& program, const MeshRange& mesh, const PassInput& input) const;
    void draw_uncut(const PassInput& input, bool fading) const;
    void draw_cut(const PassInput& input, bool fading) const;
    void draw_discs(const PassInput& input) const;
    void draw_housings(const PassInput& input) const;
    Program programs_[2][2];  // [cut][fading]: a branch in the shader would cost both sides
    Program disc_;
    VertexArray disc_layout_;
};

/// Ribbons of light and the glass they pass, added up in floating point. Glass comes after the bloom has
/// been taken, for it does not glow; with it what is left of bodies that have faded.
class LightPass {
public:
    static Result<LightPass> create();
    /// Makes the shader that these options need; most never paint the light nor let it move.
    Result<void> prepare(const ViewOptions& options);
    void draw_light(const PassInput& input) const;
    void add_glass(const PassInput& input) const;

private:
    void add_faded_bodies(const PassInput& input) const;
    [[nodiscard]] const Program& ribbon_for(const ViewOptions& options) const;
    Program ribbons_[2][2];  // [painted][moves]
    bool is_made_[2][2] = {{true, false}, {false, false}};
    Program glass_[2];  // [light is ink]
    Program faded_[2];
};

/// The soft bloom round bright light, at a quarter of the size.
class BloomPass {
public:
    static Result<BloomPass> create();
    void draw(const PassInput& input) const;

private:
    Program downsample_;
    Program blur_;
    VertexArray layout_;
};

/// Ground, bodies and tone-mapped light become the picture.
class CompositePass {
public:
    static Result<CompositePass> create();
    void draw(const PassInput& input) const;

private:
    // [no ground][light is ink][with bloom]: a branch in the shader would cost both sides
    Program programs_[2][2][2];
    VertexArray layout_;
};

/// Crisp lines and marks over the picture, antialiased by their own distance.
class OverlayPass {
public:
    static Result<OverlayPass> create();
    void draw(const PassInput& input) const;

private:
    void draw_lines(const PassInput& input, bool on_top) const;
    Program line_;
    Program mark_;
};

/// Light is painted or moves: RibbonExtras are drawn with it.
bool needs_ribbon_extras(const ViewOptions& options);

/// Peak of one undivided ray at 1 pixel per mm, so that the beam as a whole is equally bright for any number of
/// rays, any zoom and any aperture.
float ray_level(int ray_count, float light_breadth_mm, float light_gain);

}  // namespace beamfork
