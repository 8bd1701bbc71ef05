#include "app/picture.hpp"

#include "app/comparison_desk.hpp"
#include "app/gui.hpp"
#include "app/scene_painter.hpp"
#include "app/sight_stage.hpp"
#include "app/tune_finder.hpp"
#include "app/workbench.hpp"
#include "render/canvas.hpp"
#include "render/night_pass.hpp"
#include "render/offscreen.hpp"
#include "scene/built_in_tours.hpp"
#include "study/cure_search.hpp"

#include <imgui.h>

namespace beamfork {

namespace {

// With the other setup in it, where one is asked for.
Result<Frame> frame_of(const Setup& setup, const Report& report, const MakePicture& command) {
    Frame frame = build_frame(setup, report, stage_effort());
    if (command.other.empty()) return frame;
    const auto read = open_named(command.other);
    if (!read) return tl::make_unexpected(read.error());
    const Setup& other = read->document.setup;
    const auto other_report = make_report(other, other.chosen);
    if (!other_report) return tl::make_unexpected(other_report.error());
    const Frame alone = build_frame(other, *other_report, stage_effort());
    return command.other_place == CompanionPlace::over
               ? with_other_over(frame, alone, other.title)
               : with_other_beside(frame, alone, other.title);
}

Result<Image>
scene_picture(const Document& document, const Report& report, const MakePicture& command) {
    const Setup& setup = document.setup;
    const auto frame = frame_of(setup, report, command);
    if (!frame) return tl::make_unexpected(frame.error());
    auto painter = ScenePainter::create({command.width, command.height, command.text_scale});
    if (!painter) return tl::make_unexpected(painter.error());
    if (!command.tour.empty()) {
        const auto shown = tour_frame(all_tours(document, report), command.tour, command.step,
                                      tour_quotes(setup, report));
        if (!shown) return tl::make_unexpected(shown.error());
        return painter->paint(*frame, *shown, command.options);
    }
    const float aspect = static_cast<float>(command.width) / static_cast<float>(command.height);
    const FilmMoment moment{
        .camera = command.camera.value_or(standard_view(command.view, *frame, aspect)),
        .options = command.options};
    return painter->paint(*frame, moment, command.transparent);
}

Result<Image> window_picture(
    Workbench& bench, const MakePicture& command, Gui& gui, Stage& stage, const Canvas& canvas) {
    Session session;
    session.view = command.options;
    session.welcome_dismissed = false;
    if (!command.study.empty()) session.study = session.narrow_shows = command.study;
    session.study_is_wide = command.study_is_wide;
    session.compare_with = command.other;
    session.compare_place = command.other_place;
    Transient transient;
    SightStage sights([] {});
    TuneFinder tune([] {});
    ComparisonDesk comparison;
    constexpr int frames_to_settle =
        8;  // panels find their sizes, then the picture is drawn to fit
    for (int i = 0; i < frames_to_settle; ++i) {
        gui.begin(command.text_scale, command.width, command.height);
        View view = bench.view();
        view.scene_texture = as_imgui_texture(stage.texture());
        sights.fill(view);
        tune.fill(view);
        comparison.fill(view, bench);
        Requests requests;
        draw_interface(view, session, transient, requests);
        sights.draw_now(bench, requests.sight);
        if (i == 0) tune.find_now(bench, requests.tune);
        comparison.refresh(bench, requests);
        bench.refresh();
        if (requests.scene.height > 0 && i == 0) {
            const float aspect = static_cast<float>(requests.scene.width)
                                 / static_cast<float>(requests.scene.height);
            session.camera =
                command.camera.value_or(standard_view(command.view, bench.frame(), aspect));
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
    return command.options.night ? read_in_red(canvas, command.options.night_brightness)
                                 : canvas.read_pixels();
}

}  // namespace

Result<Image> make_picture(const Document& document, const MakePicture& command) {
    const Setup& setup = document.setup;
    if (!command.with_panels) {
        const auto report = make_report(setup, setup.chosen);
        if (!report) return tl::make_unexpected(report.error());
        return scene_picture(document, *report, command);
    }
    const auto context = OffscreenContext::create();
    if (!context) return tl::make_unexpected(context.error());
    auto stage = Stage::create();
    if (!stage) return tl::make_unexpected(stage.error());
    auto gui = Gui::create(nullptr);
    if (!gui) return tl::make_unexpected(gui.error());
    const auto canvas = Canvas::create(command.width, command.height);
    if (!canvas) return tl::make_unexpected(canvas.error());
    Workbench bench(ReadSetup{document, {}});
    bench.refresh();
    if (bench.report() == nullptr) return fail(ErrorCode::impossible, bench.view().report_error);
    bench.adopt_cures(bench.report_revision(), find_cures(setup, *bench.report()));
    return window_picture(bench, command, *gui, *stage, *canvas);
}

}  // namespace beamfork
