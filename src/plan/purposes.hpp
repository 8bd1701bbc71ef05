// What one may want of a train, and how well one serves it by its quick numbers. A new purpose is one entry of the table in
// purposes.cpp. The numbers wanted are common practice, no source, unless said otherwise.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"
#include "study/results/results.hpp"

namespace beamfork {

/// What is seen through a train in one use, and what its uses have in common.
struct Sight {
    double magnification = 0;
    Degrees true_field{0};
    Millimetres exit_pupil{0};
    Millimetres aperture{0};
    Millimetres eye_pupil{6};  ///< the smallest of all observers
    Millimetres eye_relief{0};
    Degrees apparent_field{0};
    Millimetres refocus{
        0};  ///< between the drawtube's places for all uses that the purpose asks for
    bool is_erect = false;  ///< the image stands upright and the right way round
};

struct Purpose {
    std::string_view key;    ///< for machines: "planets"
    std::string_view label;  ///< "Planets"
    std::string_view wants;  ///< one sentence
    bool is_near = false;    ///< asks for the near targets, else for the sky
    /// The more the better, above 0; nothing where the train is not for this.
    std::optional<double> (*score)(const Sight&) = nullptr;
    /// Of the train tried in full, in percent: less than is enough of it lessens the score in proportion.
    ResultId keeps = ResultId::edge_light;
    double enough = 80;
};

std::span<const Purpose> purposes();

/// The purpose with that key, or an error with the nearest one.
Result<Purpose> find_purpose(std::string_view key);

/// A train for a purpose. Each of these is a respect in which it can be better or worse than another. Under the sky the
/// score of one that is looked through straight ahead is a quarter less: the neck tells.
struct Candidate {
    std::size_t train = 0;  ///< index into Plan::trains
    std::size_t use = 0;    ///< the first of those that the purpose asks for
    Sight sight{};
    double score = 0;
    double margin = 0;  ///< the smallest of those uses, mm; more than is enough counts as enough
    bool looks_down =
        false;  ///< one looks down or sideways into the eyepieces, not straight through
    std::size_t pieces = 0;
    double mass = 0;  ///< g, of what is stated
    int unstated_joints = 0;
};

/// All trains that serve that purpose: they reach for everybody, the head can be set for everybody, and no lens would stand
/// in glass; the best score first.
std::vector<Candidate> candidates(const Plan& plan, const Purpose& purpose);

/// Those than which no other is as good in every respect and better in one; of equals the first.
std::vector<Candidate> not_outdone(const std::vector<Candidate>& candidates);

}  // namespace beamfork
