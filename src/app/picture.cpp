#include "app/picture.hpp"

#include <algorithm>

#include "app/gui.hpp"
#include "app/sight_stage.hpp"
#include "app/stage.hpp"
#include "app/workbench.hpp"
#include "render/canvas.hpp"
#include "render/offscreen.hpp"
#include "scene/built_in_tours.hpp"
#include "scene/tour_frame.hpp"
#include "study/cure_search.hpp"
#include "ui/label_overlay.hpp"
#include "ui/talk_overlay.hpp"

#include <imgui.h>

namespace beamfork {

namespace {

ImTextureID to_imgui(PictureTexture texture) {
    return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture));
}

// The text size that suits a picture of this height: letters as large as on a screen of 900 lines.
float text_scale(const MakePicture& command) {
    return command.text_scale * std::max(0.9F, static_cast<float>(command.height) / 900);
}

Result<Image> scene_picture(
    const Frame& frame, const MakePicture& command, Gui& gui, Stage& stage, const Canvas& canvas) {
    const float scale = text_scale(command);
    const Viewport viewport{static_cast<float>(command.width), static_cast<float>(command.height)};
    const Camera camera = standard_view(command.view, frame, viewport.aspect());
    const SceneArea area{command.width, command.height};
    if (auto drawn =
            stage.show(frame, {camera, command.options, area, -1, std::max(1.0F, scale), false});
        !drawn) {
        return tl::make_unexpected(drawn.error());
    }
    gui.begin(scale, command.width, command.height);
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    list.AddImage(to_imgui(stage.texture()), {0, 0}, {viewport.width, viewport.height}, {0, 1},
                  {1, 0});
    draw_labels(list, {0, 0}, viewport, {frame, camera, command.options, -1, std::nullopt});
    canvas.bind();
    gui.end();
    return canvas.read_pixels();
}

Result<Image> talk_picture(const Frame& frame,
                           const TourFrame& shown,
                           const MakePicture& command,
                           Gui& gui,
                           Stage& stage,
                           const Canvas& canvas) {
    const ImVec2 size{static_cast<float>(command.width), static_cast<float>(command.height)};
    const TalkLayout layout = talk_layout(size.x, size.y);
    const float scale = talk_scale(size.y);
    const SceneArea area{command.width, static_cast<int>(layout.picture_height)};
    const Viewport viewport{size.x, static_cast<float>(area.height)};
    const Camera camera = standard_view(shown.view, frame, viewport.aspect());
    if (auto drawn =
            stage.show(frame, {camera, command.options, area, -1, std::max(1.0F, scale), false});
        !drawn) {
        return tl::make_unexpected(drawn.error());
    }
    gui.begin(scale, command.width, command.height);
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    const ImVec2 corner{0, layout.title_height};
    list.AddImage(to_imgui(stage.texture()), corner, {viewport.width, corner.y + viewport.height},
                  {0, 1}, {1, 0});
    draw_labels(list, corner, viewport, {frame, camera, command.options, -1, std::nullopt});
    draw_talk_overlay(list, size, {shown.title, shown.caption, shown.step, shown.steps});
    canvas.bind();
    gui.end();
    return canvas.read_pixels();
}

Result<Image> window_picture(
    Workbench& bench, const MakePicture& command, Gui& gui, Stage& stage, const Canvas& canvas) {
    Session session;
    session.view = command.options;
    session.welcome_dismissed = false;
    if (!command.study.empty()) session.study = command.study;
    session.study_is_wide = command.study_is_wide;
    Transient transient;
    SightStage sights([] {});
    constexpr int frames_to_settle =
        8;  // panels find their sizes, then the picture is drawn to fit
    for (int i = 0; i < frames_to_settle; ++i) {
        gui.begin(command.text_scale, command.width, command.height);
        View view = bench.view();
        view.scene_texture = to_imgui(stage.texture());
        sights.fill(view);
        Requests requests;
        draw_interface(view, session, transient, requests);
        sights.draw_now(bench, requests.sight);
        if (requests.scene.height > 0 && i == 0) {
            const float aspect = static_cast<float>(requests.scene.width)
                                 / static_cast<float>(requests.scene.height);
            session.camera = standard_view(command.view, bench.frame(), aspect);
            session.camera_is_set = true;
        }
        canvas.bind();
        gui.end();
        if (auto drawn = stage.show(bench.frame(),
                                    {session.camera, session.view, requests.scene, -1, 1, false});
            !drawn) {
            return tl::make_unexpected(drawn.error());
        }
    }
    return canvas.read_pixels();
}

}  // namespace

Result<Image> make_picture(const Document& document, const MakePicture& command) {
    const auto context = OffscreenContext::create();
    if (!context) return tl::make_unexpected(context.error());
    auto stage = Stage::create();
    if (!stage) return tl::make_unexpected(stage.error());
    auto gui = Gui::create(nullptr);
    if (!gui) return tl::make_unexpected(gui.error());
    const auto canvas = Canvas::create(command.width, command.height);
    if (!canvas) return tl::make_unexpected(canvas.error());
    if (command.with_panels) {
        Workbench bench(ReadSetup{document, {}});
        bench.refresh();
        if (bench.report() == nullptr)
            return fail(ErrorCode::impossible, bench.view().report_error);
        bench.adopt_cures(bench.report_revision(), find_cures(document.setup, *bench.report()));
        return window_picture(bench, command, *gui, *stage, *canvas);
    }
    const Setup& setup = document.setup;
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tl::make_unexpected(report.error());
    const Frame frame = build_frame(setup, *report, stage_effort());
    if (command.tour.empty()) return scene_picture(frame, command, *gui, *stage, *canvas);
    const auto shown = tour_frame(built_in_tours(setup, *report), command.tour, command.step,
                                  tour_quotes(setup, *report));
    if (!shown) return tl::make_unexpected(shown.error());
    return talk_picture(frame, *shown, command, *gui, *stage, *canvas);
}

}  // namespace beamfork
