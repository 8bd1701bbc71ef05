// How a view is blurred over an eye's field: a kernel for each of five places, blended between them.
#pragma once

#include <array>

#include "scene/sight_view/sight_view_blur.hpp"
#include "scene/sight_view/sight_view_grid.hpp"
#include "study/sight_view/sight_view.hpp"

namespace beamfork {

inline constexpr std::size_t blur_nodes = 5;

/// Of one channel, by node of the field (EyeSight::nodes).
struct FieldBlur {
    std::array<BlurKernel, blur_nodes> nodes;
    int reach = 0;  ///< the greatest of them, pixels
};
FieldBlur field_blur(const EyeSight& sight, std::size_t channel, const SightGrid& grid);

/// How far light of that channel spreads at most, pixels: quicker than the blur itself.
int greatest_reach(const EyeSight& sight, std::size_t channel, const SightGrid& grid);

/// Every bright pixel spread as its place of the field has it.
SightPlane blurred(const SightPlane& sharp,
                   const EyeSight& sight,
                   const SightGrid& grid,
                   const FieldBlur& blur);

}  // namespace beamfork
