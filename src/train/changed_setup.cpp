#include "train/changed_setup.hpp"

#include <algorithm>

#include "parts/fitting.hpp"
#include "parts/mount.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

void move_choice(Choice& choice, std::size_t from, int by) {
    for (std::size_t* index : {&choice.eyepiece, &choice.observer, &choice.target}) {
        if (*index >= from) *index = static_cast<std::size_t>(static_cast<long>(*index) + by);
    }
}

std::string unused_name(const Setup& setup, Role role, const std::string& wanted) {
    const auto is_taken = [&](const std::string& name) {
        return std::any_of(setup.parts.begin(), setup.parts.end(), [&](const Part& part) {
            return role_of(part) == role && part.name == name;
        });
    };
    std::string name = wanted;
    for (int number = 2; is_taken(name); ++number)
        name = fmt::format("{} {}", wanted, number);
    return name;
}

void keep_fittings(PartBody& body, const PartBody& before) {
    const auto old = mount_of(before);
    auto mount = mount_of(body);
    if (!old || !mount) return;
    if (mount->front == Fitting::unstated) mount->front = old->front;
    if (mount->rear == Fitting::unstated) mount->rear = old->rear;
    set_mount(body, *mount);
}

}  // namespace

Setup with_part(Setup setup, std::size_t at, Part part) {
    part.name = unused_name(setup, role_of(part), part.name);
    setup.parts.insert(setup.parts.begin() + static_cast<long>(at), std::move(part));
    move_choice(setup.chosen, at, +1);
    return setup;
}

Setup without_part(Setup setup, std::size_t at) {
    setup.parts.erase(setup.parts.begin() + static_cast<long>(at));
    move_choice(setup.chosen, at + 1, -1);
    return setup;
}

Setup with_body(Setup setup, std::size_t at, PartBody body, const std::string& name) {
    Part& part = setup.parts.at(at);
    keep_fittings(body, part.body);
    part.body = std::move(body);
    part.tolerances.clear();  // they were of the old part's lengths
    part.unrecognised.clear();
    part.name.clear();
    part.name = unused_name(setup, role_of(part), name);
    return setup;
}

}  // namespace beamfork
