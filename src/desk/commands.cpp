#include "desk/commands.hpp"

namespace beamfork {

namespace {

template <class... Kinds>
bool is_one_of(const Command& command) {
    return (std::holds_alternative<Kinds>(command) || ...);
}

}  // namespace

bool changes_document(const Command& command) {
    return is_one_of<NewSetup, DuplicateSetup, StartSetup, OpenDemo, OpenFile, ShowSetup,
                     CloseSetup>(command);
}

}  // namespace beamfork
