// A setup: everything the user describes, in the order in which light meets it, with the eyepiece pair,
// observer and target that are looked at now. A plain value; files and undo hold nothing else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "parts/part.hpp"

namespace beamfork {

/// Which eyepiece pair, observer and target are in use: indices into Setup::parts.
struct Choice {
    std::size_t eyepiece = 0;
    std::size_t observer = 0;
    std::size_t target = 0;
    bool operator==(const Choice&) const = default;
};

/// Parts stand in the order of their roles: one telescope, one focuser, the chain with one splitter head
/// as its last part, then at least one eyepiece pair, one observer and one target. `order_fault` says
/// what is wrong with another order.
struct Setup {
    std::string title;
    std::string story;  ///< what it is about, for the welcome line and the printed sheet
    std::vector<Part> parts;
    Choice chosen;
    bool operator==(const Setup&) const = default;
};

/// Why this setup cannot be a train, with the index of the part to blame; nothing when it can.
struct OrderFault {
    std::string sentence;
    std::size_t part = 0;
};
std::optional<OrderFault> order_fault(const Setup& setup);

/// Why nothing more need be looked at: more parts of a role than a setup can have (one telescope, focuser and head; of
/// others far more than anybody owns, since a stranger's file must not ask for hours). order_fault() says it too.
std::optional<OrderFault> too_many_parts(const Setup& setup);

/// Indices of all parts with that role, in order.
std::vector<std::size_t> parts_with_role(const Setup& setup, Role role);

/// The parts light passes: telescope, focuser, chain and head, then that choice's eyepiece pair.
std::vector<std::size_t> parts_in_light(const Setup& setup, const Choice& choice);

/// The part of that kind at that index; the index must hold that kind.
template <class Kind>
const Kind& part_as(const Setup& setup, std::size_t index) {
    const auto* body = setup.parts.at(index).body.as<Kind>();
    BEAMFORK_EXPECTS(body != nullptr);
    return *body;
}

/// The first part of that kind, if there is one.
template <class Kind>
const Kind* find_part(const Setup& setup) {
    for (const Part& part : setup.parts) {
        if (const auto* body = part.body.as<Kind>()) return body;
    }
    return nullptr;
}

/// The setup with other choices; indices that do not hold the right role are moved to the first that does.
Setup with_valid_choice(Setup setup);

}  // namespace beamfork
