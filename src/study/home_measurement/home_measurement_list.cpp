#include <cmath>
#include <limits>

#include "study/home_measurement/home_measurement.hpp"

namespace beamfork {

namespace {

using Values = std::span<const double>;

constexpr double sky = std::numeric_limits<double>::infinity();

const std::string sun_caution =
    "Never the Sun, and never a place where the Sun could come into the tube: the image would burn "
    "paper, parts and eyes.";
const std::string lamp_caution =
    "Do not look into the lamp, nor into the telescope while it shines; use a small battery lamp, "
    "not a laser.";

// A ruler with mm lines is read to about half a line; a clock worked by hand to a few tenths of a second.
ReadingInfo ruler(std::string key, std::string label, std::string help, double low, double high) {
    return {std::move(key), std::move(label), "mm", std::move(help), low, high, 0.5};
}

ReadingInfo seconds(std::string key, std::string label, std::string help) {
    return {std::move(key),
            std::move(label),
            "s",
            std::move(help) + " Enter every timing, with blanks between them.",
            1,
            3600,
            0.3};
}

ReadingInfo focal_length() {
    return {"focal_length_mm",
            "Focal length",
            "mm",
            "Of the telescope as it is used for this: with a shifter in place, times its factor.",
            50,
            20000,
            5};
}

HomeMeasurement back_focus() {
    HomeMeasurement one{"back_focus_by_paper", "Back focus with a paper screen", "Back focus",
                        "mm"};
    one.readings = {
        ruler("drawtube_mm", "Drawtube out",
              "How far the drawtube stands out of its racked-in place.", 0, 500),
        ruler("paper_mm", "Paper behind drawtube",
              "From the drawtube's rear face to the paper where the image is sharpest; find it "
              "afresh several times.",
              -100, 1000),
        focal_length(),
        {"distance_m", "Distance of the target", "m",
         "From the front of the telescope; leave it empty for the Moon or a star.", 5, 1e7, 1,
         sky}};
    one.steps = {
        "Take out the diagonal and everything behind the drawtube.",
        "Point at the Moon, or by night at a lamp that is far away.",
        "Note how far the drawtube is racked out.",
        "Hold thin white paper behind the drawtube and move it until the image is sharpest.",
        "Measure from the drawtube's rear face to the paper. Repeat five times."};
    one.cautions = {sun_caution};
    one.formula =
        "Drawtube out plus distance of the paper, less F² / (u − F), by which a target at "
        "distance u focuses farther out than the sky (Newton's conjugates).";
    one.fields = {"back_focus_mm"};
    one.value = [](Values v) { return back_focus_by_paper({v[0]}, {v[1]}, {v[2]}, {v[3]}).value; };
    return one;
}

HomeMeasurement light_path() {
    HomeMeasurement one{"light_path_by_travel", "Light path by drawtube travel", "Light path",
                        "mm"};
    one.readings = {
        ruler("without_mm", "Drawtube without the part",
              "Drawtube out, in focus with one eyepiece and without the part.", 0, 500),
        ruler("with_mm", "Drawtube with the part",
              "Drawtube out, in focus with the same eyepiece behind the part.", 0, 500),
        {"adapters_mm", "Adapters added with it", "mm",
         "Length of rings that had to be put in together with the part; less those taken out.",
         -200, 200, 0.1, 0.0}};
    one.steps = {
        "Focus on a star through one eyepiece without the part; add an extension if the "
        "drawtube would have to go too far out.",
        "Note how far the drawtube is out. Focus afresh several times.",
        "Put the part in and focus the same eyepiece on the same star. Set a splitter head that "
        "slides to the middle of its range: that is where its light path is stated.",
        "Note the drawtube again. The part's light path is how much farther in it stands."};
    one.cautions = {sun_caution};
    one.formula =
        "Drawtube without the part, less drawtube with it, less adapters: the image stays "
        "where it is, so the drawtube gives way by just what the part takes (geometry; glass "
        "counts as air by itself).";
    one.fields = {"stated_light_path_mm"};
    one.value = [](Values v) { return v[0] - v[1] - v[2]; };
    return one;
}

HomeMeasurement glass_depth() {
    HomeMeasurement one{"depth_by_paper", "Depth of the first glass with a strip of paper",
                        "Depth to the glass", "mm"};
    one.readings = {
        ruler(
            "strip_mm", "Strip below the bar's upper edge",
            "From the strip's lower end to its mark at the bar; let it down afresh several times.",
            0, 300),
        ruler("bar_mm", "Height of the bar",
              "Of the straight bar that lies across the seat or the "
              "front face.",
              0, 50)};
    one.steps = {
        ("Take the eyepiece, or what stands before the head, out; lay the head down so that "
         "you look straight into it."),
        ("Lay a straight bar across the seat on which the eyepiece's shoulder rests, or across "
         "the front face, beside the opening's middle."),
        "Let a strip of clean, stiff paper down along the bar until it just meets the glass.",
        "Mark it at the bar's upper edge and measure from its lower end to the mark.",
        "From the seat it is the seat's height, from the front face the air before the cube."};
    one.cautions = {"Only paper may touch the glass: metal scratches prisms and their coatings."};
    one.formula =
        "Strip below the bar's upper edge, less the bar's height (straight lines along the "
        "axis).";
    one.fields = {"seat_height_mm", "entry_air_mm"};
    one.value = [](Values v) { return v[0] - v[1]; };
    return one;
}

HomeMeasurement opening() {
    HomeMeasurement one{"opening_by_lamp", "Clear opening with a lamp", "Clear diameter", "mm"};
    one.readings = {
        ruler("circle_mm", "Circle of light",
              "Diameter of the bright circle on the paper, measured in several directions.", 1,
              1000),
        ruler("lamp_mm", "Lamp before the opening",
              "From the lamp to the narrowest opening; far is better.", 50, 20000),
        ruler("screen_mm", "Paper behind the opening",
              "From that opening to the paper; near is better.", 0, 2000)};
    one.steps = {"Stand a small bare lamp well away from the part, in line with its axis.",
                 "Hold paper close behind the part: a round patch of light falls on it.",
                 "Measure the patch in several directions, then both distances from the opening."};
    one.cautions = {lamp_caution};
    one.formula = "Circle times lamp distance over the sum of lamp and paper distance (similar "
                  "triangles); through glass count two thirds of its length.";
    one.fields = {"clear_diameter_mm",    "entry_clear_diameter_mm",  "exit_clear_diameter_mm",
                  "drawtube_diameter_mm", "barrel_clear_diameter_mm", "baffle_diameter_mm"};
    one.value = [](Values v) { return opening_by_lamp({v[0]}, {v[1]}, {v[2]}).value; };
    return one;
}

HomeMeasurement working_aperture() {
    HomeMeasurement one{"aperture_by_lamp", "Working aperture with a lamp", "Working aperture",
                        "mm"};
    one.readings = {ruler("circle_mm", "Circle at the front",
                          "Diameter of the bright circle on paper over the front of the telescope, "
                          "measured in several directions.",
                          5, 1000)};
    one.steps = {
        "Focus the telescope on a star, then leave the focus alone.",
        "Shine a lamp through a pinhole held close to the eyepiece, at its middle, in the dark.",
        "Lay thin white paper over the front of the telescope: a bright circle shows.",
        "Measure it in several directions. If it is smaller than the lens or mirror, "
        "something inside stops light."};
    one.cautions = {lamp_caution, sun_caution};
    one.formula =
        "The circle itself: focused on a star, light leaves the front as a beam that keeps "
        "its width (common practice, no source).";
    one.fields = {"aperture_mm"};
    one.value = [](Values v) { return v[0]; };
    return one;
}

HomeMeasurement field_stop() {
    HomeMeasurement one{"field_stop_by_drift", "Field stop by drift timing", "Field stop", "mm"};
    one.readings = {
        seconds("seconds", "Time across the field",
                "From when the star comes in at one edge until it leaves at the other, drive off."),
        {"declination_deg", "Declination of the star", "°",
         "Of the star, from a chart; stars near the celestial equator are best.", -80, 80, 0.05},
        focal_length()};
    one.steps = {"Choose a star near the celestial equator and read its declination from a chart.",
                 "Turn the drive off and let the star drift through the middle of the field.",
                 "Time it from edge to edge, five times or more.", "Enter all timings."};
    one.cautions = {sun_caution};
    one.formula = "Twice the focal length times the tangent of half the angle, which is 15.0411″ a "
                  "second times the cosine of the declination (mean sidereal day of 86164.09 s; "
                  "Explanatory Supplement to the Astronomical Almanac, 1992, from memory).";
    one.fields = {"field_stop_mm"};
    one.value = [](Values v) { return field_stop_by_drift({v[2]}, v[0], {v[1]}).value; };
    return one;
}

HomeMeasurement factor_by_scale() {
    HomeMeasurement one{"factor_by_scale", "Shifter factor with a distant scale", "Factor", "×"};
    const auto width = [](std::string key, std::string label, const std::string& how) {
        return ReadingInfo{std::move(key),
                           std::move(label),
                           "",
                           "Divisions of the scale that fit across the field " + how
                               + "; bricks, fence posts or lines on a board.",
                           0.5,
                           10000,
                           0.2};
    };
    one.readings = {width("without", "Divisions without it", "without the shifter"),
                    width("with", "Divisions with it", "with the shifter")};
    one.steps = {"By day, look at an even scale some way off: bricks, a fence, a ruled board.",
                 "Count how many divisions fit across the middle of the field without the shifter.",
                 "Put the shifter in just where it is to be used, focus, and count again."};
    one.cautions = {sun_caution};
    one.formula =
        "Divisions without, over divisions with: the field shrinks as the image grows. It "
        "holds for the spacing at which it was measured (geometry).";
    one.fields = {"stated_factor"};
    one.value = [](Values v) { return v[0] / v[1]; };
    return one;
}

HomeMeasurement factor_by_drift() {
    HomeMeasurement one{"factor_by_drift", "Shifter factor by drift timing", "Factor", "×"};
    one.readings = {
        seconds("without_seconds", "Time without it", "Edge to edge without the shifter."),
        seconds("with_seconds", "Time with it", "Edge to edge with the shifter, the same star.")};
    one.steps = {
        "Turn the drive off and let a star drift through the middle of the field.",
        "Time it from edge to edge without the shifter, five times.",
        "Put the shifter in just where it is to be used, focus, and time the same star again."};
    one.cautions = {sun_caution};
    one.formula =
        "Tangent of half the drift without, over the same with (the star's declination "
        "cancels for fields so small). It holds for the spacing at which it was measured.";
    one.fields = {"stated_factor"};
    one.value = [](Values v) {
        return std::tan(drift_angle(v[0], {0}).value / 2)
               / std::tan(drift_angle(v[1], {0}).value / 2);
    };
    return one;
}

HomeMeasurement gain_by_travel() {
    HomeMeasurement one{"gain_by_travel", "Shifter gain by drawtube travel", "Gain", "mm"};
    one.readings = {ruler("without_mm", "Drawtube without it",
                          "Drawtube out, in focus without the shifter.", 0, 500),
                    ruler("with_mm", "Drawtube with it",
                          "Drawtube out, in focus with the shifter, all else the same.", 0, 500)};
    one.steps = {"Focus on a star without the shifter; note how far the drawtube is out.",
                 "Put the shifter in just where it is to be used and focus again.",
                 "The drawtube now stands farther out: by that much the image has moved.",
                 "Measure the factor at the same spacing, so that both belong together."};
    one.cautions = {sun_caution};
    one.formula = "Drawtube with the shifter, less drawtube without it (geometry).";
    one.fields = {"stated_gain_mm"};
    one.value = [](Values v) { return v[1] - v[0]; };
    return one;
}

HomeMeasurement pupil_distance() {
    HomeMeasurement one{"pupil_distance_by_mirror", "Pupil distance with a mirror",
                        "Pupil distance", "mm"};
    one.readings = {ruler("left_mm", "Mark at the left pupil",
                          "On the ruler, with the right eye closed.", 0, 300),
                    ruler("right_mm", "Mark at the right pupil",
                          "On the ruler, with the left eye closed.", 0, 300)};
    one.steps = {"Fix a ruler level on a mirror and stand about an arm's length in front of it.",
                 "Keep the head still. Close the right eye; note where the left pupil's image lies "
                 "on the ruler.",
                 "Close the left eye; note where the right pupil's image lies. Repeat five times.",
                 "Each eye looks straight at itself, so the two lines of sight are parallel."};
    one.cautions = {"Fix the ruler to the mirror, not near the eyes, and mind its corners."};
    one.formula = "Distance between the two marks: an eye sees its own pupil along the "
                  "perpendicular to the mirror (law of reflection).";
    one.fields = {"pupil_distance_mm"};
    one.value = [](Values v) { return std::abs(v[1] - v[0]); };
    return one;
}

}  // namespace

std::span<const HomeMeasurement> home_measurements() {
    static const std::vector<HomeMeasurement> all{
        back_focus(), light_path(),      glass_depth(),     opening(),        working_aperture(),
        field_stop(), factor_by_scale(), factor_by_drift(), gain_by_travel(), pupil_distance()};
    return all;
}

}  // namespace beamfork
