// Taking the setup along: a sheet to print, a picture, a model or a film. Asks what and where to, and shows how far it is.
#pragma once

#include <string>

#include "ui/export/export_order.hpp"

namespace beamfork {

struct Ui;

struct ExportDialog {
    ExportOrder order;
    std::string folder;
    std::string name;  ///< without its ending
    std::string error;
    bool asks_to_overwrite = false;
    bool has_begun = false;  ///< an export was asked for in this dialog
    bool opened = false;     ///< the popup is up
};

/// ".html", ".png" ...; nothing for a folder of pictures.
std::string ending_of(const ExportOrder& order);

void start_export_dialog(const Ui& ui);
/// Draws the dialog while there is one.
void draw_export_dialog(const Ui& ui);
/// The choices of each kind (export_choices.cpp).
void draw_export_choices(const Ui& ui, ExportOrder& order);

}  // namespace beamfork
