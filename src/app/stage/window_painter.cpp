#include "app/stage/window_painter.hpp"

#include "app/stage/notes_window.hpp"
#include "render/night_pass.hpp"
#include "study/cures/cure_search.hpp"
#include "ui/talk/talk_overlay.hpp"

#include <imgui.h>

namespace beamfork {

Result<std::unique_ptr<WindowPainter>> WindowPainter::create(const Document& document, Size size) {
    auto context = OffscreenContext::create();
    if (!context) return tl::make_unexpected(context.error());
    auto stage = StagePair::create();
    if (!stage) return tl::make_unexpected(stage.error());
    auto gui = Gui::create(nullptr);
    if (!gui) return tl::make_unexpected(gui.error());
    auto canvas = Canvas::create(size.width, size.height);
    if (!canvas) return tl::make_unexpected(canvas.error());
    std::unique_ptr<WindowPainter> made(new WindowPainter(  // NOLINT: the constructor is private
        {*std::move(context), *std::move(stage), *std::move(gui), *std::move(canvas)}, document,
        size));
    Workbench& bench = made->bench;
    bench.refresh();
    if (bench.report() == nullptr) return fail(ErrorCode::impossible, bench.report_error());
    bench.adopt_cures(bench.report_revision(), find_cures(document.setup, *bench.report()));
    return made;
}

void WindowPainter::set_camera() {
    if (session.pose.camera_is_set || last.picture.scene.height <= 0) return;
    const float aspect = static_cast<float>(last.picture.scene.width)
                         / static_cast<float>(last.picture.scene.height);
    session.pose.camera = standard_view(first_view, bench.frame(), aspect);
    session.pose.camera_is_set = true;
}

View WindowPainter::view_of_now() const {
    DeskView desk = bench.view();
    ComparisonView comparison = comparison_.view(desk);
    std::vector<DemoEntry> entries;
    for (const Demo& demo : demos())
        entries.push_back({demo.title, demo.story, demo.asset, {}});
    return {.document = bench.document(),
            .report = bench.report(),
            .report_error = bench.report_error(),
            .picture = {bench.frame(), bench.other_frame(),
                        as_imgui_texture(drawing_.stage.texture()),
                        as_imgui_texture(drawing_.stage.other_texture()), told_sight_.texture()},
            .desk = std::move(desk),
            .files = {std::move(entries), {}},
            .comparison = std::move(comparison),
            .sight = sights_.view(),
            .tune = {tune_.study()}};
}

Result<void> WindowPainter::frame() {
    const bool is_talk = transient.is_giving_talk();
    drawing_.gui.begin(is_talk ? talk_scale(static_cast<float>(size_.height))
                               : session.layout.text_scale,
                       size_.width, size_.height);
    View view = view_of_now();
    if (also_true) also_true(view);
    last = {};
    const bool is_first = !session.pose.camera_is_set;
    session.pose.camera_is_set = true;  // the interface would take the overview
    draw_interface(view, {}, session, transient, last);
    session.pose.camera_is_set = !is_first;
    sights_.draw_now(bench, last.sight);
    if (last.tune && !has_tune_) tune_.find_now(bench, last.tune);
    has_tune_ = last.tune.has_value();
    bench.carry_out(last.desk);
    comparison_.refresh(bench, last.comparison);
    bench.pull_apart(session.view.apart);
    bench.tell_step(last.picture.told_step);
    bench.refresh();
    told_sight_.show(bench.told_sight());
    set_camera();
    drawing_.canvas.bind();
    drawing_.gui.end();
    const auto drawn = drawing_.stage.show(
        bench.frame(), last.picture.shows_other_half ? bench.other_frame() : nullptr,
        {session.pose.camera, session.view, last.picture.scene, last.picture.highlighted_part, 1,
         false, false, last.picture.emphasis});
    if (!drawn) return tl::make_unexpected(drawn.error());
    return {};
}

Result<Image> WindowPainter::image() const {
    return session.view.night ? read_in_red(drawing_.canvas, session.view.night_brightness)
                              : drawing_.canvas.read_pixels();
}

Result<Image> WindowPainter::notes(Size size) const {
    const auto canvas = Canvas::create(size.width, size.height);
    if (!canvas) return tl::make_unexpected(canvas.error());
    canvas->bind();
    if (last.speaker) paint_speaker_page(*last.speaker, size.width, size.height);
    return canvas->read_pixels();
}

}  // namespace beamfork
