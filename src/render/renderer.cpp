#include "render/renderer.hpp"

#include <algorithm>
#include <utility>

#include "render/debug_log.hpp"
#include "render/gpu_frame.hpp"
#include "render/passes.hpp"
#include "render/targets.hpp"
#include "render/view_block.hpp"

namespace beamfork {

struct Renderer::Parts {
    DebugLog log;
    GpuFrame frame;
    Targets targets;
    Buffer view_block;
    BodyPass bodies;
    LightPass light;
    BloomPass bloom;
    CompositePass composite;
    OverlayPass overlay;
};

Result<Renderer> Renderer::create() {
    auto parts = std::make_unique<Parts>();
    parts->log = DebugLog::create();
    auto bodies = BodyPass::create();
    if (!bodies) return tl::make_unexpected(bodies.error());
    auto light = LightPass::create();
    if (!light) return tl::make_unexpected(light.error());
    auto bloom = BloomPass::create();
    if (!bloom) return tl::make_unexpected(bloom.error());
    auto composite = CompositePass::create();
    if (!composite) return tl::make_unexpected(composite.error());
    auto overlay = OverlayPass::create();
    if (!overlay) return tl::make_unexpected(overlay.error());
    parts->bodies = *std::move(bodies);
    parts->light = *std::move(light);
    parts->bloom = *std::move(bloom);
    parts->composite = *std::move(composite);
    parts->overlay = *std::move(overlay);
    parts->frame = GpuFrame::create();
    parts->view_block = Buffer::create();
    return Renderer(std::move(parts));
}

Renderer::Renderer(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Renderer::Renderer(Renderer&&) noexcept = default;
Renderer& Renderer::operator=(Renderer&&) noexcept = default;
Renderer::~Renderer() = default;

void Renderer::upload(const Frame& frame) {
    parts_->frame.upload(frame);
    parts_->log.ask("upload");
}

Result<PictureTexture> Renderer::draw(const Camera& camera,
                                      const ViewOptions& options,
                                      const PictureSize& size,
                                      int highlighted_part,
                                      const Emphasis& emphasis) {
    Parts& p = *parts_;
    if (auto ok = p.targets.resize(size); !ok) return tl::make_unexpected(ok.error());
    if (auto ok = p.light.prepare(options); !ok) return tl::make_unexpected(ok.error());
    if (needs_ribbon_extras(options)) p.frame.light.upload_extras();
    const ViewBlock block = view_block(camera, options, size);
    glBindBuffer(GL_UNIFORM_BUFFER, p.view_block.name());
    glBufferData(GL_UNIFORM_BUFFER, sizeof(block), &block, GL_STREAM_DRAW);
    glBindBufferBase(GL_UNIFORM_BUFFER, 0, p.view_block.name());
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_STENCIL_TEST);
    glDisable(GL_FRAMEBUFFER_SRGB);
    glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
    const PassInput input{.frame = p.frame,
                          .targets = p.targets,
                          .camera = camera,
                          .options = options,
                          .emphasis = emphasis,
                          .highlighted_part = highlighted_part,
                          .rays = size.rays};
    p.bodies.draw(input);
    p.light.draw_light(input);
    p.bloom.draw(input);
    p.light.add_glass(input);
    p.composite.draw(input);
    p.overlay.draw(input);
    glBindVertexArray(0);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    p.log.ask("draw");
    return p.targets.result_texture();
}

void Renderer::finish() const { glFinish(); }

Image Renderer::read_pixels() const {
    const PictureSize& size = parts_->targets.size();
    Image image{.width = size.width, .height = size.height, .rgba = {}};
    if (size.width == 0) return image;
    const std::size_t row = static_cast<std::size_t>(size.width) * 4;
    image.rgba.resize(row * size.height);
    parts_->targets.bind_result();
    glPixelStorei(GL_PACK_ALIGNMENT, 4);
    glReadPixels(0, 0, size.width, size.height, GL_RGBA, GL_UNSIGNED_BYTE, image.rgba.data());
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    for (int y = 0; y < size.height / 2; ++y) {  // OpenGL's row 0 is the bottom
        const auto upper = image.rgba.begin() + static_cast<std::ptrdiff_t>(row) * y;
        const auto lower =
            image.rgba.begin() + static_cast<std::ptrdiff_t>(row) * (size.height - 1 - y);
        std::swap_ranges(upper, upper + static_cast<std::ptrdiff_t>(row), lower);
    }
    return image;
}

std::vector<std::string> Renderer::take_errors() { return parts_->log.take(); }

}  // namespace beamfork
