// What planning asks of a drawer's parts, measured once: each is put into a train of its own by the builder that serves
// all studies (train/train.hpp), and its piece of the axis is read off. All lengths are reduced (air-equivalent) mm at
// the primary wavelength.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "document/drawer.hpp"
#include "parts/fitting.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// Somebody who looks at something: indices into Drawer::parts.
struct Sighting {
    std::size_t observer = 0;
    std::size_t target = 0;
    bool is_near = false;  ///< the target stands at a distance
    bool operator==(const Sighting&) const = default;
};

/// A part between focuser and head.
struct ChainPart {
    std::size_t part = 0;  ///< index into Drawer::parts
    Fitting front = Fitting::unstated;
    Fitting rear = Fitting::unstated;
    double length = 0;  ///< from its entry face to its exit
    /// From its entry face to its first face, and from its last face to its exit; nothing of an empty tube.
    std::optional<double> first_face{};
    std::optional<double> behind_last_face{};
    std::optional<double> lens_focal_length{};
    double lens_at = 0;  ///< stated, behind the entry face
    bool turns_light = false;
    bool is_corrector = false;
    bool is_spacer = false;
    double mass = 0;  ///< g; 0: unstated
};

/// A telescope with one of its focusers.
struct Tube {
    std::size_t telescope = 0;  ///< indices into Drawer::parts
    std::size_t focuser = 0;
    Setup alone{};  ///< the two, the telescope with the light path that a lower focuser gives
    Fitting rear = Fitting::unstated;
    double behind_last_face =
        0;  ///< from its last mirror or lens to the drawtube's rear face, racked in
    std::vector<std::optional<double>>
        back_focus{};  ///< by use; nothing where the target is too near
    std::vector<std::optional<Millimetres>>
        distance{};  ///< of the target, by use; nothing for the sky
    bool takes_corrector = false;
};

/// A head with an eyepiece pair for each use: where the image must lie.
struct Ending {
    double needed = 0;     ///< behind the head's entry face
    double seats_ask = 0;  ///< how far off its middle the left seat stands for eyes and arms, mm
    double arm_difference = 0;
};

struct Head {
    std::size_t part = 0;
    Fitting front = Fitting::unstated;
    Fitting rear = Fitting::unstated;
    double first_face = 0;  ///< from its entry face
    double seat_travel = 0;
    std::vector<std::size_t> pairs{};  ///< indices into DrawerParts::pairs: those that it holds
    std::vector<std::vector<Ending>> endings{};  ///< by place in `pairs`, then by use
    std::vector<bool> fits_eyes{};               ///< by use: it can be set for the observer
    double mass = 0;
};

struct Pair {
    std::size_t part = 0;
    double mass = 0;  ///< g of both; 0: unstated
};

struct DrawerParts {
    std::vector<Sighting> uses;  ///< observers outermost
    std::vector<Tube> tubes;
    std::vector<ChainPart> chain;
    std::vector<Head> heads;
    std::vector<Pair> pairs;
    std::vector<std::string> left_out;  ///< sentences: parts that stand in no train, and why
};

/// More uses are refused: a train keeps for which of them it reaches in the bits of one word.
inline constexpr std::size_t most_uses = 64;

/// Of the parts for which `may_use` holds; observers by name, all of them when none is named; a drawer without an
/// observer or target has one of the kind's own values, which is added to `drawer`. Errors: an unknown name, too many uses,
/// a part that makes no train.
Result<DrawerParts> measured_parts(Drawer& drawer,
                                   const std::vector<bool>& may_use,
                                   const std::vector<std::string>& observers = {});

/// The telescope with as much more light path behind its drawtube as the focuser is lower; nothing when it cannot be.
std::optional<PartBody> with_lower_focuser(const PartBody& telescope, Millimetres lower_by);

}  // namespace beamfork
