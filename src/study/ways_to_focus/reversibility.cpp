#include "study/ways_to_focus/reversibility.hpp"

namespace beamfork {

std::string to_words(Reversibility reversibility) {
    switch (reversibility) {
    case Reversibility::at_once: return "at once";
    case Reversibility::exchange: return "exchange a part";
    case Reversibility::comfort: return "costs comfort";
    case Reversibility::workshop: return "change the telescope";
    case Reversibility::permanent: return "cannot be undone";
    }
    return "";
}

}  // namespace beamfork
