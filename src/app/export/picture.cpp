#include "app/export/picture.hpp"

#include "app/stage/scene_painter.hpp"
#include "app/stage/window_painter.hpp"
#include "desk/open_setup.hpp"
#include "scene/picture/light_arrival.hpp"
#include "scene/picture/pulled_apart.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/step_picture.hpp"
#include "scene/tour/tour_motion.hpp"
#include "ui/talk/talk_overlay.hpp"

namespace beamfork {

namespace {

// What is to be painted: with the other setup in it, where one is asked for, or with that in a right half.
struct Frames {
    Frame frame;
    std::optional<Frame> right_half{};
};

Result<Frames> frames_of(const Setup& setup, const Report& report, const MakePicture& command) {
    if (command.options.apart > 0)
        return Frames{pulled_apart(setup, report, command.options.apart, stage_effort())};
    Frame frame = build_frame(setup, report, stage_effort());
    if (command.other.empty()) return Frames{std::move(frame)};
    const auto read = open_named(command.other);
    if (!read) return tl::make_unexpected(read.error());
    const Setup& other = read->document.setup;
    const auto other_report = make_report(other, other.chosen);
    if (!other_report) return tl::make_unexpected(other_report.error());
    const Frame alone = build_frame(other, *other_report, stage_effort());
    switch (command.other_place) {
    case CompanionPlace::over: return Frames{with_other_over(frame, alone, other.title)};
    case CompanionPlace::split:
        return Frames{as_half(frame, "this setup"), as_half(alone, other.title)};
    case CompanionPlace::beside:
    case CompanionPlace::none: break;
    }
    return Frames{with_other_beside(frame, alone, other.title)};
}

// Of one height, side by side.
Image joined(const Image& left, const Image& right) {
    Image both{left.width + right.width, left.height, {}};
    for (int y = 0; y < both.height; ++y) {
        for (const Image* half : {&left, &right}) {
            const auto row = half->rgba.begin() + std::ptrdiff_t{4} * half->width * y;
            both.rgba.insert(both.rgba.end(), row, row + std::ptrdiff_t{4} * half->width);
        }
    }
    return both;
}

Result<Image> halved_picture(const Frames& frames, const MakePicture& command) {
    const int left = command.width / 2;
    const float aspect = static_cast<float>(left) / static_cast<float>(command.height);
    const FilmMoment moment{
        .camera = command.camera.value_or(standard_view(command.view, frames.frame, aspect)),
        .options = command.options};
    const auto paint = [&](const Frame& frame, int width) -> Result<Image> {
        auto painter = ScenePainter::create({width, command.height, command.text_scale});
        if (!painter) return tl::make_unexpected(painter.error());
        return painter->paint(frame, moment, command.transparent);
    };
    const auto here = paint(frames.frame, left);
    if (!here) return here;
    const auto there = paint(*frames.right_half, command.width - left);
    if (!there) return there;
    return joined(*here, *there);
}

struct ToldPicture {
    TourFrame told;
    const MakePicture& command;
};

// The step as the film and the talk show it; packets of light stand where they have just been divided.
Result<Image> tour_picture(ScenePainter& painter,
                           const Document& document,
                           const Report& report,
                           const Frame& frame,
                           const ToldPicture& picture) {
    constexpr double behind_splitter_mm = 60;
    const auto& [told, command] = picture;
    FilmMoment moment;
    moment.options = shown_in(told.told, command.options);
    moment.told = told;
    ViewOptions& options = moment.options;
    if (options.light_moves && !command.options.light_moves) {
        options.light_front_mm =
            packets_after(0, 1, frame.arrival.at_splitter_mm + behind_splitter_mm);
    }
    std::optional<Frame> apart;
    if (options.apart > 0)
        apart = pulled_apart(document.setup, report, options.apart, stage_effort());
    const auto own = step_picture(told.told, document.setup, report, stage_effort());
    const Frame& seen = own.frame ? *own.frame : apart ? *apart : frame;
    moment.own = &own;
    moment.camera = tour_camera(told.told, seen, talk_aspect(command.width, command.height));
    moment.is_revealed = command.is_revealed || !told.asked;
    moment.emphasis = step_emphasis(told.told, document.setup, moment.is_revealed ? 1.0F : 0.0F);
    return painter.paint(seen, moment);
}

Result<Image>
scene_picture(const Document& document, const Report& report, const MakePicture& command) {
    const Setup& setup = document.setup;
    const auto frames = frames_of(setup, report, command);
    if (!frames) return tl::make_unexpected(frames.error());
    if (frames->right_half) return halved_picture(*frames, command);
    const Frame& frame = frames->frame;
    auto painter = ScenePainter::create({command.width, command.height, command.text_scale});
    if (!painter) return tl::make_unexpected(painter.error());
    if (!command.tour.empty()) {
        const auto shown = tour_frame(all_tours(document, report), command.tour, command.step,
                                      tour_quotes(setup, report));
        if (!shown) return tl::make_unexpected(shown.error());
        return tour_picture(*painter, document, report, frame, {*shown, command});
    }
    const float aspect = static_cast<float>(command.width) / static_cast<float>(command.height);
    const FilmMoment moment{.camera =
                                command.camera.value_or(standard_view(command.view, frame, aspect)),
                            .options = command.options};
    return painter->paint(frame, moment, command.transparent);
}

Result<Image> window_picture(const Document& document, const MakePicture& command) {
    auto window = WindowPainter::create(document, {command.width, command.height});
    if (!window) return tl::make_unexpected(window.error());
    WindowPainter& painter = **window;
    Session& session = painter.session;
    session.view = command.options;
    session.layout.text_scale = command.text_scale;
    session.welcome_dismissed = false;
    if (!command.study.empty()) session.layout.study = session.layout.narrow_shows = command.study;
    session.layout.study_is_wide = command.study_is_wide;
    session.comparison.with = command.other;
    session.comparison.place = command.other_place;
    painter.first_view = command.view;
    if (command.camera) session.pose.camera = *command.camera;
    session.pose.camera_is_set = command.camera.has_value();
    constexpr int frames_to_settle =
        8;  // panels find their sizes, then the picture is drawn to fit
    for (int i = 0; i < frames_to_settle; ++i) {
        if (auto drawn = painter.frame(); !drawn) return tl::make_unexpected(drawn.error());
    }
    return painter.image();
}

}  // namespace

Result<Image> make_picture(const Document& document, const MakePicture& command) {
    const Setup& setup = document.setup;
    if (command.with_panels) return window_picture(document, command);
    const auto report = make_report(setup, setup.chosen);
    if (!report) return tl::make_unexpected(report.error());
    return scene_picture(document, *report, command);
}

}  // namespace beamfork
