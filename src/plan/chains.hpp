// Every chain that can stand between a focuser and a head. A chain has, in the order of the light and each at most once:
//   a coma corrector (on a Newtonian alone), right behind the focuser;
//   a diagonal, or none;
//   a shifter, before the diagonal or behind it, with any one spacer right behind it or none;
//   without a shifter, any one spacer before the diagonal or behind it, or none.
// Where two of these do not join, the shortest row of the spacers that are left stands between them, joint after joint in
// the order of the light. A part whose rear thread the front of the barrel behind it takes up is screwed in there, and
// the row stands before it.
#pragma once

#include <vector>

#include "plan/adapters.hpp"
#include "plan/quick_focus.hpp"

namespace beamfork {

struct Chain {
    std::size_t tube = 0;  ///< indices into DrawerParts::tubes and heads
    std::size_t head = 0;
    PartRow parts{};  ///< of DrawerParts::chain, in the order of the light
    Axis axis{};      ///< from the drawtube to the head
    bool lens_in_glass =
        false;                ///< a lens would stand in glass: reckoned at the face that it meets
    int unstated_joints = 0;  ///< of which an end is not stated, the eyepieces' left out
    double mass = 0;          ///< g of what is stated, head included
};

/// All chains between that tube and head, each once.
std::vector<Chain> chains_between(const DrawerParts& parts,
                                  const Adapters& adapters,
                                  std::size_t tube,
                                  std::size_t head);

}  // namespace beamfork
