// The joints of a train: at each, the rear end of one part meets the front end of the next, and either they
// fit or an adapter is needed. A part that screws into the front of the barrel behind it (a filter, a
// lens cell) leaves that barrel to meet the part before.
#pragma once

#include <string>
#include <vector>

#include "parts/fitting.hpp"
#include "train/setup.hpp"

namespace beamfork {

struct Joint {
    std::size_t before = 0;             ///< index of the part nearer the telescope
    std::size_t behind = 0;             ///< index of the part whose front end meets it
    Fitting rear = Fitting::unstated;   ///< of the part before
    Fitting front = Fitting::unstated;  ///< of the part behind
    [[nodiscard]] bool is_claimed() const {
        return rear != Fitting::unstated && front != Fitting::unstated;
    }
    [[nodiscard]] bool fits() const { return beamfork::fits(rear, front); }
    bool operator==(const Joint&) const = default;
};

/// A part that ends so screws into the front of a barrel: that part's own front end.
bool screws_into_front_of(Fitting rear, Fitting front_behind);

/// All joints from the focuser's rear end to the eyepieces, in the order of the light.
std::vector<Joint> joints(const Setup& setup, const Choice& choice);

/// The adapter that joins two ends which do not fit: "an adapter with a 1.25 in barrel in front and a
/// 2 in holder behind".
std::string adapter_between(Fitting rear, Fitting front);

}  // namespace beamfork
