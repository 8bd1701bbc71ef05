// What a row of the focus budget does with the light path.
#pragma once

namespace beamfork {

enum class BudgetEntry { available, spends, gives_back, observer, left_over };

}  // namespace beamfork
