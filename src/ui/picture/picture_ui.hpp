// What the picture of the train is shown, what is kept of it, and what it asks for.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "desk/setup_pose.hpp"
#include "document/tour.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/view_options.hpp"
#include "ui/kit/ui.hpp"
#include "ui/picture/word_glide.hpp"

namespace beamfork {

struct Frame;

/// Where the 3D picture goes. Pixels of the framebuffer; the picture is rendered at this size.
struct SceneArea {
    int width = 0;
    int height = 0;
    bool operator==(const SceneArea&) const = default;
};

/// Frames must live until draw_interface returns.
struct PictureView {
    const Frame& frame;                  ///< the picture's data: of the last report there was
    const Frame* other_frame = nullptr;  ///< of the picture's right half; null: it is not split
    ImTextureID texture{};               ///< the picture, row 0 at its bottom; null: none yet
    ImTextureID other_texture{};         ///< of the right half
    ImTextureID
        told_sight{};  ///< of a tour's step: what each eye sees, side by side; null: not shown
};

struct PictureRequests {
    SceneArea scene;
    Emphasis emphasis{};
    std::optional<TourStep> told_step{};  ///< of a tour: the picture shows what it shows
    bool shows_other_half = false;  ///< the picture is split: PictureView::other_frame is drawn too
    int highlighted_part = -1;      ///< under the pointer, in the picture or in a list
};

struct LaidBefore;

/// A smooth move of the camera; `done` runs from 0 to 1.
struct CameraMove {
    Camera from;
    Camera to;
    float done = 0;
};

/// Which part was under the pointer when these last were as they are.
struct Pick {
    ImVec2 pixel;
    Camera camera;
    std::uint64_t revision = 0;
    int part = -1;
};

/// Goes with the document.
struct CameraFlight {
    std::optional<CameraMove> move;
    std::optional<Pick> pick;
    WordGlide words;
    std::shared_ptr<LaidBefore> laid{};  ///< names as they stand (label_overlay.hpp)
};

/// Parts on their way apart or back; `done` runs from 0 to 1.
struct ApartMove {
    struct Flight {
        Camera from;
        Camera to;
        Camera seen;  ///< as it was left in the frame before
    };
    float from = 0;
    float to = 1;
    float done = 0;
    std::optional<Flight> camera;
};

struct PictureState {
    bool is_split = false;  ///< the picture was, in the last frame
    std::optional<ApartMove> apart_move;
    std::optional<Camera> camera_together;  ///< before the parts were pulled apart
    SceneArea size;                         ///< of the frame before
    float drag_length = 0;                  ///< pixels since the button went down in the picture
    std::string view_bar_window;            ///< the name of the foot of the picture
};

struct PictureUi : Ui {
    const PictureView& view;
    SetupPose& pose;
    ViewOptions& options;
    CameraFlight& flight;
    PictureState& state;
    PictureRequests& asks;
};

}  // namespace beamfork
