// Random setups that an owner could have: every field within its usual range, in the order of the light.
#pragma once

#include "parts/eyepiece_pair.hpp"
#include "parts/splitter_head.hpp"
#include "support/random.hpp"
#include "support/setups.hpp"

namespace test_setups {

/// A part of that kind with every field drawn from its usual range, and no contradiction among them.
inline PartBody random_body(Random& random, const PartKind& kind) {
    for (int attempt = 0; attempt < 1000; ++attempt) {
        PartBody body = kind.fresh;
        for (const FieldInfo& field : kind.fields) {
            FieldValue value;
            if (field.type == FieldType::choice) {
                value = random.one_of(field.choices);
            } else if (field.type == FieldType::number || random.chance(0.3)) {
                value = random.between(field.usual_low, field.usual_high);
            }
            body = with_field_unchecked(body, field.key, value).value();
        }
        if (!contradiction(body)) return body;
    }
    throw std::logic_error("no " + kind.key + " without a contradiction was found");
}

/// Prisms and eyepieces true to their place: what stands off it has tests of its own.
inline void true_up(Setup& setup) {
    the<SplitterHead>(setup).prisms_stand = PrismsStand::true_to_place;
    auto& pair = the<EyepiecePair>(setup);
    pair.left_filter = pair.right_filter = std::nullopt;
    pair.left_play_x = pair.left_play_y = pair.right_play_x = pair.right_play_y = {0};
}

inline Setup random_setup(Random& random) {
    Setup setup;
    std::vector<const PartKind*> chain;
    for (const PartKind& kind : part_kinds()) {
        if (kind.role == Role::chain) chain.push_back(&kind);
    }
    const auto add = [&](const PartKind& kind) {
        setup.parts.push_back({kind.label, random_body(random, kind), {}});
    };
    for (const Role role : {Role::telescope, Role::focuser, Role::chain, Role::splitter,
                            Role::eyepiece, Role::observer, Role::target}) {
        if (role == Role::chain) {
            for (std::size_t count = random.below(5); count > 0; --count)
                add(*random.one_of(chain));
            continue;
        }
        std::vector<const PartKind*> kinds;
        for (const PartKind& kind : part_kinds()) {
            if (kind.role == role) kinds.push_back(&kind);
        }
        add(*random.one_of(kinds));
    }
    true_up(setup);
    return with_valid_choice(std::move(setup));
}

}  // namespace test_setups
