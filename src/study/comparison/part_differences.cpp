#include "study/comparison/part_differences.hpp"

#include <algorithm>

#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::vector<std::size_t> parts_in_use(const Setup& setup) {
    auto parts = parts_in_light(setup, setup.chosen);
    parts.push_back(setup.chosen.observer);
    parts.push_back(setup.chosen.target);
    return parts;
}

std::string words_of(const FieldInfo& field, const FieldValue& value) {
    if (const auto* number = std::get_if<double>(&value)) {
        const auto unit = symbol(field.unit);
        return format_exact(*number) + (unit.empty() ? "" : " ") + std::string(unit);
    }
    if (const auto* word = std::get_if<std::string>(&value)) return *word;
    return "not stated";
}

class PartDifferences {
public:
    PartDifferences(const Setup& here, const Setup& there)
        : here_(here), there_(there), left_(parts_in_use(there)) {}

    std::vector<PartDifference> find() {
        const auto parts = parts_in_use(here_);
        std::vector<std::optional<std::size_t>> partners(parts.size());
        using Alike = bool (*)(const Part&, const Part&);
        // The surest likeness first.
        for (const Alike alike :
             {Alike(is_same), Alike(is_same_sort), Alike(plays_same_lone_role)}) {
            for (std::size_t i = 0; i < parts.size(); ++i) {
                if (!partners[i]) partners[i] = take(here_.parts[parts[i]], alike);
            }
        }
        for (std::size_t i = 0; i < parts.size(); ++i)
            compare(parts[i], partners[i]);
        for (const std::size_t other : left_)
            found_.push_back({{}, other, {}, "", there_.parts[other].name});
        return std::move(found_);
    }

private:
    static bool is_same(const Part& a, const Part& b) {
        return a.name == b.name && a.body.index() == b.body.index();
    }
    static bool is_same_sort(const Part& a, const Part& b) {
        return a.body.index() == b.body.index();
    }
    static bool plays_same_lone_role(const Part& a, const Part& b) {
        return role_of(a) == role_of(b) && role_of(a) != Role::chain;
    }

    std::optional<std::size_t> take(const Part& part, bool (*alike)(const Part&, const Part&)) {
        const auto found = std::find_if(left_.begin(), left_.end(), [&](std::size_t other) {
            return alike(part, there_.parts[other]);
        });
        if (found == left_.end()) return std::nullopt;
        const std::size_t partner = *found;
        left_.erase(found);
        return partner;
    }

    void compare(std::size_t index, std::optional<std::size_t> partner) {
        const Part& part = here_.parts[index];
        if (!partner) {
            found_.push_back({index, {}, {}, part.name, ""});
            return;
        }
        const Part& other = there_.parts[*partner];
        if (part.body.index() != other.body.index()) {
            found_.push_back({index, partner, {}, part.name, other.name});
            return;
        }
        if (part.name != other.name && part.body == other.body)
            found_.push_back({index, partner, {}, part.name, other.name});
        for (const FieldInfo& field : kind_of(part.body).fields) {
            const auto value = field_value(part.body, field.key);
            const auto value_there = field_value(other.body, field.key);
            if (!value || !value_there || *value == *value_there) continue;
            const bool matters = is_relevant(part.body, field) || is_relevant(other.body, field);
            if (!matters) continue;
            found_.push_back(
                {index, partner, field, words_of(field, *value), words_of(field, *value_there)});
        }
    }

    const Setup& here_;
    const Setup& there_;
    std::vector<std::size_t> left_;  // parts of the other setup without a partner
    std::vector<PartDifference> found_;
};

}  // namespace

std::vector<PartDifference> part_differences(const Setup& here, const Setup& there) {
    return PartDifferences(here, there).find();
}

}  // namespace beamfork
