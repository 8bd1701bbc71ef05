// What the window asks to be written for taking along, and how far that is.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "scene/picture/camera.hpp"

namespace beamfork {

enum class ExportKind { sheet, picture, model, film };

/// Each kind reads its own members and leaves the others alone.
struct ExportOrder {
    ExportKind kind = ExportKind::sheet;
    std::filesystem::path output;  ///< a folder for a film as single pictures; may be overwritten
    bool night = false;            ///< of a sheet
    int width = 1920;              ///< of pictures and films
    int height = 1080;
    bool white_ground = false;
    bool transparent = false;  ///< of a picture
    bool names = true;         ///< of parts, in pictures and films
    Camera camera{};           ///< of a picture: as in the window
    bool painted = false;      ///< the objective, in pictures and films
    bool light_moves = false;  ///< likewise
    float light_front_mm = 0;  ///< of a picture: as in the window
    float apart = 0;    ///< of a picture: as in the window; of a film: above 0, apart and back
    bool light = true;  ///< of a model
    bool whole_shells = false;
    double seconds = 12;  ///< of a film, once round
    bool whole_train = false;
    bool single_pictures = false;
    bool operator==(const ExportOrder&) const = default;
};

struct ExportRequests {
    std::optional<ExportOrder> order;  ///< write this
    bool gives_up = false;             ///< end what is being written
};

/// What is being written now, if anything is.
struct ExportState {
    bool is_running = false;
    double share = -1;    ///< done, 0 to 1; negative: not known
    std::string words{};  ///< "12 of 360 pictures"
};

}  // namespace beamfork
