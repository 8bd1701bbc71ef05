// The values of one part, of whichever kind: what a setup holds without knowing any kind. Whoever wants the values of one
// kind includes that kind's header and asks for them: `body.as<Spacer>()`.
#pragma once

#include <any>
#include <cstddef>
#include <string_view>
#include <utility>

#include "base/contract.hpp"

namespace beamfork {

/// A plain value: a copy has values of its own. What has been moved from holds nothing and can only be assigned to.
class PartBody {
public:
    /// Of any kind in the list of parts/part_kinds.cpp; another is a bug.
    template <class Kind>
    requires requires { Kind::role; }
    // A part is written down by its kind's values alone. NOLINTNEXTLINE(google-explicit-constructor)
    PartBody(Kind kind) : index_(index_of_kind(Kind::key)), values_(std::move(kind)) {}

    /// The kind's place in `part_kinds`.
    [[nodiscard]] std::size_t index() const { return index_; }

    template <class Kind>
    [[nodiscard]] bool is() const {
        return as<Kind>() != nullptr;
    }
    /// Nothing when it is of another kind.
    template <class Kind>
    [[nodiscard]] const Kind* as() const {
        return std::any_cast<Kind>(&values_);
    }
    template <class Kind>
    [[nodiscard]] Kind* as() {
        return std::any_cast<Kind>(&values_);
    }
    /// It must be of that kind.
    template <class Kind>
    [[nodiscard]] const Kind& get() const {
        BEAMFORK_EXPECTS(is<Kind>());
        return *as<Kind>();
    }
    template <class Kind>
    [[nodiscard]] Kind& get() {
        BEAMFORK_EXPECTS(is<Kind>());
        return *as<Kind>();
    }

    bool operator==(const PartBody& other) const;

private:
    static std::size_t index_of_kind(std::string_view key);

    std::size_t index_;
    std::any values_;
};

}  // namespace beamfork
