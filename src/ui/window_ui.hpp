// All that the interface has in hand in one frame, and what each room is handed of it.
#pragma once

#include "ui/actions/action_search.hpp"
#include "ui/export/export_dialog.hpp"
#include "ui/handles/handle_overlay.hpp"
#include "ui/home_measurement/home_measurement_panel.hpp"
#include "ui/interface.hpp"
#include "ui/part/part_panel.hpp"
#include "ui/part/train_panel.hpp"
#include "ui/shell/shell_ui.hpp"
#include "ui/tour/tours_panel.hpp"
#include "ui/unfolded_path/unfolded_path_state.hpp"

namespace beamfork {

/// What belongs to a document and goes with it, a half-typed number too.
struct DocumentState {
    CameraFlight flight;
    HandleState handles;
    PartState part;
    TourEditState tour;
    NoticeState notices;
};

struct TransientState {
    UiState shared;
    DocumentState of_document;
    PictureState picture;
    ShellState shell;
    FilesState files;
    TalkPlace talk;
    TrainState train;
    SightState sight;
    UnfoldedPathState unfolded_path;
    MeasurementDraft measurement;
    std::optional<ExportDialog> export_dialog;
    std::optional<ActionSearch> search;
    std::string glossary_typed;  ///< what is sought among the words of the trade
};

struct WindowUi : Ui {
    const View& view;
    Session& session;
    TransientState& state;
    Requests& requests;

    [[nodiscard]] PictureUi picture() const;
    [[nodiscard]] HandleUi handles() const;
    [[nodiscard]] FilesUi files() const;
    [[nodiscard]] ExportUi exporting() const;
    [[nodiscard]] TalkUi talk() const;
    [[nodiscard]] ShellUi shell() const;
};

}  // namespace beamfork
