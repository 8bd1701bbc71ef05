// Buttons that panels share. Each logs itself under its name for tests.
#pragma once

#include <span>
#include <string_view>

#include "ui/kit/icons.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

bool text_button(const Ui& ui,
                 std::string_view name,
                 std::string_view label,
                 std::string_view help,
                 bool enabled = true,
                 bool is_on = false);

bool icon_button(
    const Ui& ui, std::string_view name, Icon icon, std::string_view help, bool enabled = true);

/// One of a few words, side by side, or in further lines where they `may_wrap`. Returns the index now chosen.
std::size_t segments(const Ui& ui,
                     std::string_view name,
                     std::span<const std::string_view> words,
                     std::span<const std::string_view> helps,
                     std::size_t chosen,
                     bool may_wrap = false);

}  // namespace beamfork
