// The pictures of the demos on the start page: shipped beside them (assets/demos/NAME.png), put on the graphics
// card one a frame once the page is shown, so that a start without it costs nothing.
#pragma once

#include <map>
#include <string>

#include "render/image.hpp"
#include "render/uploaded_picture.hpp"
#include "ui/files/files_ui.hpp"

namespace beamfork {

/// The picture that is shipped for a demo. Errors: `not_found`, `bad_input`.
Result<Image> demo_picture(const std::string& demo_asset);

class DemoPictures {
public:
    /// All demos, with the pictures there are.
    [[nodiscard]] std::vector<DemoEntry> entries() const;
    /// After a frame: loads the next one that is wanted. True when there is one more to show.
    bool refresh(bool is_wanted);

private:
    std::map<std::string, UploadedPicture> pictures_;  ///< by the demo's asset; empty: it has none
};

}  // namespace beamfork
