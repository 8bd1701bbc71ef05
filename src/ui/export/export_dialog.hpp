// Taking the setup along: a sheet to print, a picture, a model or a film. Asks what and where to, and shows how far it is.
#pragma once

#include <optional>
#include <string>

#include "desk/desk_view.hpp"
#include "scene/picture/view_options.hpp"
#include "ui/export/export_order.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct ExportDialog {
    ExportOrder order;
    std::string folder;
    std::string name;  ///< without its ending
    std::string error;
    bool asks_to_overwrite = false;
    bool has_begun = false;  ///< an export was asked for in this dialog
    bool opened = false;     ///< the popup is up
};

struct ExportUi : Ui {
    const ExportState& view;
    const DeskView& desk;
    const Camera& camera;        ///< of the picture
    const ViewOptions& options;  ///< likewise
    std::string& folder;         ///< where a file was opened or written last; remembered
    std::optional<ExportDialog>& dialog;
    ExportRequests& asks;
};

/// ".html", ".png" ...; nothing for a folder of pictures.
std::string ending_of(const ExportOrder& order);

void start_export_dialog(const ExportUi& ui);
/// Draws the dialog while there is one.
void draw_export_dialog(const ExportUi& ui);
/// The choices of each kind (export_choices.cpp).
void draw_export_choices(const ExportUi& ui, ExportOrder& order);

}  // namespace beamfork
