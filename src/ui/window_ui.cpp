#include "ui/window_ui.hpp"

#include "ui/handles/handle_overlay.hpp"
#include "ui/picture/viewport.hpp"

namespace beamfork {

PictureUi WindowUi::picture() const {
    return {shared(),      view.picture,    session.pose, session.view, state.of_document.flight,
            state.picture, requests.picture};
}

HandleUi WindowUi::handles() const { return handle_ui(picture(), state.of_document.handles); }

FilesUi WindowUi::files() const {
    return {shared(), view.desk, view.files, session.files, state.files, requests.files};
}

ExportUi WindowUi::exporting() const {
    return {shared(),     view.exporting,       view.desk,           session.pose.camera,
            session.view, session.files.folder, state.export_dialog, requests.exporting};
}

TalkUi WindowUi::talk() const {
    return {shared(), picture(), view.talk, state.talk, requests.speaker};
}

ShellUi WindowUi::shell() const {
    return {shared(),
            view.desk,
            session.layout,
            session.welcome_dismissed,
            state.of_document.notices,
            state.shell,
            state.glossary_typed};
}

}  // namespace beamfork
