#include "study/findings/finding_scope.hpp"
#include "study/findings/unstated_inside.hpp"

#include <fmt/format.h>

namespace beamfork {

// A lens that is said to stand where glass, a mirror or another lens is.
void lens_findings(const FindingScope& scope) {
    for (const LensRoom& room : scope.report.train.lens_rooms) {
        if (room.inside() == 0) continue;
        const bool is_behind = room.stated > room.placed();
        const LensNeighbour& face = is_behind ? room.behind : room.before;
        const bool may_have_room = is_behind && room.inside() <= room.spare;
        const std::string where =
            fmt::format("{}: its lens would stand {:.1f} mm beyond the {} of {}",
                        scope.name(room.part), room.inside(), face.face, scope.name(face.part));
        const std::string worked_out = " All numbers are for the lens at that face.";
        if (may_have_room) {
            scope.add(
                Severity::note, "lens_may_be_in_glass",
                fmt::format("{}, {}.{}", where, where_glass_is_taken(scope, face.part), worked_out),
                measure_from_front(), room.part);
        } else {
            scope.add(
                Severity::fails, "lens_in_glass",
                fmt::format("{}, where no lens can stand.{}", where, worked_out),
                is_behind
                    ? fmt::format("Its “Lens position” can be {:.2f} mm at most.", room.highest())
                    : fmt::format("Its “Lens position” can be {:.2f} mm at least.", room.lowest()),
                room.part);
        }
    }
}

}  // namespace beamfork
