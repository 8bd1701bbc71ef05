#include "app/stage/scene_painter.hpp"

#include <algorithm>

#include "render/night_pass.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/picture/label_overlay.hpp"
#include "ui/picture/light_key.hpp"
#include "ui/talk/talk_overlay.hpp"
#include "ui/talk/talk_sight.hpp"

#include <imgui.h>

namespace beamfork {

namespace {

// Letters as large as on a screen of 900 lines.
float letters_for(const PaintedSize& size) {
    return size.text_scale * std::max(0.9F, static_cast<float>(size.height) / 900);
}

// Names, clear of the light's key and of `foot` pixels at the lower edge.
void draw_words(ImDrawList& list,
                ImVec2 corner,
                Viewport viewport,
                const Frame& frame,
                const FilmMoment& moment,
                float foot) {
    const auto key = draw_light_key(list, corner, viewport, {frame, moment.camera, moment.options});
    if (!moment.options.labels) return;
    LightCover cover = light_cover(frame, moment.camera, viewport);
    if (key) cover.taken.push_back(*key);
    draw_labels(list, corner, viewport,
                {.frame = frame,
                 .camera = moment.camera,
                 .options = moment.options,
                 .hot_part = moment.highlighted_part,
                 .selected_part = std::nullopt,
                 .foot_px = foot,
                 .cover = &cover,
                 .emphasis = moment.emphasis});
}

void draw_caption(ImDrawList& list, const Viewport& viewport, const FilmMoment& moment) {
    if (moment.caption.empty()) return;
    const std::string words = shortened(moment.caption, viewport.width - grid(12));
    const float width = text_width(words, TextFace::bold);
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 low{(viewport.width - width) / 2, viewport.height - line - grid(6)};
    const bool is_light = moment.options.on_light_ground();
    list.AddRectFilled(
        {low.x - grid(3), low.y - grid(1.5F)}, {low.x + width + grid(3), low.y + line + grid(1.5F)},
        is_light ? IM_COL32(255, 255, 255, 230) : colour(Tone::ground, 0.8F), grid(1.5F));
    text_at(list, low, words, is_light ? IM_COL32(24, 32, 42, 255) : colour(Tone::text),
            TextFace::bold);
}

}  // namespace

Result<ScenePainter> ScenePainter::create(const PaintedSize& size) {
    auto context = OffscreenContext::create();
    if (!context) return tl::make_unexpected(context.error());
    auto stage = Stage::create();
    if (!stage) return tl::make_unexpected(stage.error());
    auto gui = Gui::create(nullptr);
    if (!gui) return tl::make_unexpected(gui.error());
    auto canvas = Canvas::create(size.width, size.height);
    if (!canvas) return tl::make_unexpected(canvas.error());
    return ScenePainter(*std::move(context), *std::move(stage), *std::move(gui), *std::move(canvas),
                        size);
}

Result<Image> ScenePainter::paint(const Frame& frame, const FilmMoment& moment, bool transparent) {
    if (moment.told) return paint_talk(frame, moment);
    const float letters = letters_for(size_);
    const Viewport viewport{static_cast<float>(size_.width), static_cast<float>(size_.height)};
    const Stage::Look look{.camera = moment.camera,
                           .options = moment.options,
                           .area = {size_.width, size_.height},
                           .highlighted_part = moment.highlighted_part,
                           .pixel_scale = std::max(1.0F, letters),
                           .transparent = transparent};
    if (auto drawn = stage_.show(frame, look); !drawn) return tl::make_unexpected(drawn.error());
    gui_.begin(letters, size_.width, size_.height);
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    if (!transparent)
        list.AddImage(as_imgui_texture(stage_.texture()), {0, 0}, {viewport.width, viewport.height},
                      {0, 1}, {1, 0});
    draw_words(list, {0, 0}, viewport, frame, moment, 0);
    draw_caption(list, viewport, moment);
    if (transparent) {
        const Image scene = stage_.renderer().read_pixels();
        canvas_.bind_layer();
        gui_.end();
        return straight(over(canvas_.read_layer(), scene));
    }
    return finish(moment.options);
}

Result<Image> ScenePainter::paint_talk(const Frame& frame, const FilmMoment& moment) {
    const TourFrame& step = *moment.told;
    const ImVec2 size{static_cast<float>(size_.width), static_cast<float>(size_.height)};
    const TalkLayout layout = talk_layout(size.x, size.y);
    const float letters = talk_scale(size.y);
    const SceneArea area{size_.width, static_cast<int>(layout.picture_height)};
    const Viewport viewport{size.x, static_cast<float>(area.height)};
    const Stage::Look look{.camera = moment.camera,
                           .options = moment.options,
                           .area = area,
                           .pixel_scale = std::max(1.0F, letters),
                           .emphasis = moment.emphasis};
    if (auto drawn = stage_.show(frame, look); !drawn) return tl::make_unexpected(drawn.error());
    gui_.begin(letters, size_.width, size_.height);
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    const ImVec2 corner{0, layout.title_height};
    list.AddImage(as_imgui_texture(stage_.texture()), corner,
                  {viewport.width, corner.y + viewport.height}, {0, 1}, {1, 0});
    const float foot = step.asked ? asked_foot(layout) : 0;
    draw_words(list, corner, viewport, frame, moment, foot);
    sight_.show(moment.own != nullptr && moment.is_revealed ? moment.own->sight : nullptr);
    if (sight_.texture() != ImTextureID{})
        draw_talk_sight(list, {corner.x, corner.y, viewport.width, viewport.height}, foot,
                        sight_.texture());
    TalkWords words = talk_words(step);
    words.is_revealed = moment.is_revealed;
    draw_talk_overlay(list, size, words);
    return finish(moment.options);
}

Result<Image> ScenePainter::finish(const ViewOptions& options) {
    canvas_.bind();
    gui_.end();
    return options.night ? read_in_red(canvas_, options.night_brightness) : canvas_.read_pixels();
}

}  // namespace beamfork
