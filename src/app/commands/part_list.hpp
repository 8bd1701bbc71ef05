// `beamfork parts`: every part kind with its fields, made from the descriptions that panels and files use.
// src/document/fields.md is its Markdown form, kept equal by a test.
#pragma once

#include <string>

namespace beamfork {

std::string part_list_text();
std::string part_list_markdown();

}  // namespace beamfork
