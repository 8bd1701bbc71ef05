#include "parts/observer.hpp"

namespace beamfork {

Dioptres at_the_eye(Dioptres lens) {
    return lens / (1 - to_metres(vertex_distance).value * lens.value);
}

Dioptres Observer::correction(Eye eye) const {
    if (spectacles == Spectacles::kept_on) return {0};
    return at_the_eye(eye == Eye::left ? left : right);
}

std::vector<Field<Observer>> Observer::fields() {
    const auto dioptres = [](std::string key, std::string label, const std::string& side) {
        FieldInfo info;
        info.key = std::move(key);
        info.label = std::move(label);
        info.help = "Spectacle correction of the " + side
                    + " eye, as in the prescription: negative when short-sighted. Without "
                      "spectacles the eye asks for a little less or more: the lens stands some "
                      "15 mm in front of it.";
        info.unit = FieldUnit::dioptre;
        info.low = -20;
        info.high = 20;
        info.usual_low = -6;
        info.usual_high = 6;
        return info;
    };
    FieldInfo spectacles;
    spectacles.key = "spectacles";
    spectacles.label = "Spectacles";
    spectacles.help = "Taken off, the focus must make up for the eyes; kept on, it need not.";
    // 12 mm from lens to cornea, 2 mm of lens, 3 mm on to the pupil: common practice, no source.
    FieldInfo spectacle_distance = length_info(
        "spectacle_distance_mm", "Spectacle distance",
        "From the front of the spectacle lens to the eye's pupil: the eye cannot come nearer to "
        "the eyepiece than this; 15 to 20 mm is usual.",
        5, 40, 10, 25);
    spectacle_distance.only_if = {{"spectacles", "kept on"}};
    return {
        number_field(
            moved_by_hand(length_info("pupil_distance_mm", "Pupil distance",
                                      "Between the centres of the two pupils.", 35, 85, 50, 75),
                          {HandMoves::arms, "Pupil distance",
                           "Drag to set the head's arms apart, for another observer's eyes.",
                           "as narrow as the head goes", "as wide as the head goes"}),
            &Observer::pupil_distance),
        number_field(dioptres("left_dioptres", "Left eye", "left"), &Observer::left),
        number_field(dioptres("right_dioptres", "Right eye", "right"), &Observer::right),
        choice_field(spectacles, &Observer::spectacles, {"taken off", "kept on"}),
        number_field(spectacle_distance, &Observer::spectacle_distance),
        number_field(
            length_info("eye_pupil_mm", "Eye pupil",
                        "Diameter of the eye's own pupil in the dark; light outside it is lost.", 1,
                        9, 3, 8),
            &Observer::eye_pupil),
    };
}

}  // namespace beamfork
