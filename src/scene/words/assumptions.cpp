#include "scene/words/assumptions.hpp"

#include <array>

namespace beamfork {

namespace {

// Expansion of aluminium 23.1e-6 per kelvin at 25 degrees: CRC Handbook of Chemistry and Physics (from memory).
constexpr std::array assumption_paragraphs{
    Paragraph{"Lenses", "A refractor's objective, shifters and correctors are ideal lenses: what "
                        "blurs the image here is the glass of prisms and plates, mirrors off "
                        "their axis, and diffraction. A real lens adds faults of its own."},
    Paragraph{
        "Coma correctors",
        "Ideal: inside its window one takes all of the main mirror's third-order coma "
        "and adds nothing of its own. For every mm outside the window it leaves 3 mm over the "
        "distance from its lens to the image, as if its coma went with the cube of the "
        "beam's width at the lens: our assumption. A real one also adds some spherical "
        "aberration there."},
    Paragraph{
        "Corrector plates",
        "Of a moving-mirror telescope: ideal, thin, alike for all colours, and so made that a "
        "star is perfect at the stated back focus; a meniscus as well. A real plate leaves a "
        "little colour. While the figure of its mirrors is unknown they are taken as a "
        "paraboloid with a hyperboloid, and the range of the other kinds is told."},
    Paragraph{"Mirrors, prisms and plates",
              "Traced with their real faces, openings and catalogue glass, at three wavelengths "
              "(blue F, green e, red C). White light is summed over 19 wavelengths, between these "
              "and beyond, as the eye weighs them by day (CIE 1924). Faces are taken as flat or as "
              "exact conics, and as well "
              "placed, unless you enter an error of tilt or shift."},
    Paragraph{"Air and temperature",
              "The air is taken as steady and the telescope as cooled down. An aluminium tube gets "
              "0.23 mm shorter per metre when it is 10 °C colder, and focus moves as much: "
              "refocus."},
    Paragraph{"Polarised and stray light",
              "Not traced. A dividing face sends the two polarisations unequally to the two eyes, "
              "so a polarising filter belongs behind the head, one for each eye. Bare faces of a "
              "cube can show a faint ghost beside a bright star, and a Newtonian's vanes give it "
              "spikes; of vanes only the shadow is counted."},
    Paragraph{"Eyes",
              "Taken as perfect but for the pupil and the correction you state, and for the colour "
              "error that every eye has: 0.9 dioptres between blue and red, opposite to that of "
              "glass in the beam (Thibos, Ye, Zhang, Bradley, 1992). At a narrow exit pupil sharp "
              "eyes notice what glass costs, at a wide one the eye's own faults cover it. How much "
              "two eyes see more than one differs from person to person: published ranges are "
              "shown as ranges."},
    Paragraph{"Your numbers", "The result is as good as the lengths that go in. Say how well you "
                              "know each, and see under “How sure” which one to measure better."},
};

}  // namespace

std::span<const Paragraph> assumptions() { return assumption_paragraphs; }

}  // namespace beamfork
