// What a step of a tour lights while all else fades, in words that hold for any setup: the key of a kind of part
// ("splitter_head"), a place in the train ("telescope", "chain": all between focuser and head), or one part by its name
// ("part: Spacer 2").
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "document/tour.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// By part: whether it is lit. Where the words mean no part of this setup, or there are none, everything is.
std::vector<bool> lit_parts(std::span<const std::string> lit, const Setup& setup);

/// "part: " and the name.
std::string lit_word_of(const Part& part);

/// The words with that part lit, or not: a word that means more than it is replaced by the names of what stays lit. All
/// `choices` lit, or none, is no words at all.
std::vector<std::string> with_part_lit(std::span<const std::string> lit,
                                       const Setup& setup,
                                       std::span<const std::size_t> choices,
                                       std::size_t part,
                                       bool is_lit);

/// The first word that is neither a kind, a place nor the name of a part, whatever parts there are; or empty, or twice.
std::optional<std::string> lit_objection(std::span<const std::string> lit);
/// A word for a part that this setup has not, with the nearest name.
std::optional<std::string> lit_part_objection(const std::string& word, const Setup& setup);

/// The part of that name has another name now. `is_other`: another part still has the old one.
void follow_rename(std::vector<Tour>& tours,
                   const std::string& from,
                   const std::string& to,
                   bool is_other);
/// Words for parts that are gone go too.
void forget_parts_that_are_gone(std::vector<Tour>& tours, const Setup& setup);

}  // namespace beamfork
