#include "document/document.hpp"

namespace beamfork {

Document new_document() {
    Document document;
    document.setup.title = "New setup";
    for (const Role role : {Role::telescope, Role::focuser, Role::splitter, Role::eyepiece,
                            Role::observer, Role::target}) {
        for (const PartKind& kind : part_kinds()) {
            if (kind.role != role) continue;
            document.setup.parts.push_back({kind.label, kind.fresh, {}});
            break;
        }
    }
    document.setup = with_valid_choice(std::move(document.setup));
    return document;
}

}  // namespace beamfork
