// What is asked of a part's values without knowing their kind; `part.cpp` asks, each kind of the list in `part_kinds.cpp`
// answers.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "parts/balance.hpp"
#include "parts/layout.hpp"
#include "parts/mount.hpp"
#include "parts/part.hpp"

namespace beamfork {

/// Of one kind; every body that is handed in must be of it. A field is told by its place among the kind's fields.
class KindAnswers {
public:
    KindAnswers() = default;
    KindAnswers(const KindAnswers&) = delete;
    KindAnswers& operator=(const KindAnswers&) = delete;
    virtual ~KindAnswers() = default;

    [[nodiscard]] virtual PartKind describe() const = 0;
    [[nodiscard]] virtual bool equal(const PartBody& one, const PartBody& other) const = 0;
    [[nodiscard]] virtual FieldValue value(const PartBody& body, std::size_t field) const = 0;
    /// The value must have no objection.
    virtual void set(PartBody& body, std::size_t field, const FieldValue& value) const = 0;
    /// What counts in place of its number while that is unstated; nothing where nothing does.
    [[nodiscard]] virtual std::optional<TakenValue> taken(const PartBody& body,
                                                          std::size_t field) const = 0;
    [[nodiscard]] virtual std::optional<std::string> contradiction(const PartBody& body) const = 0;
    [[nodiscard]] virtual PartLayout layout(const PartBody& body,
                                            const LayoutContext& context) const = 0;
    /// Nothing where it is not stated, and for kinds without such a field.
    [[nodiscard]] virtual std::optional<Millimetres>
    stated_light_path(const PartBody& body) const = 0;
    /// Null for kinds without.
    [[nodiscard]] virtual const Mount* mount(const PartBody& body) const = 0;
    [[nodiscard]] virtual Mount* mount(PartBody& body) const = 0;
    [[nodiscard]] virtual const Balance* balance(const PartBody& body) const = 0;
    [[nodiscard]] virtual Balance* balance(PartBody& body) const = 0;
};

const KindAnswers& answers_of(const PartBody& body);

}  // namespace beamfork
