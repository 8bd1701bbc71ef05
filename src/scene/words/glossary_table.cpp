#include "scene/words/glossary_table.hpp"

#include <array>

namespace beamfork {

namespace {

constexpr std::array terms{
    Term{
        "Airy disc", "", "µm",
        "The small round spot that light makes of a star even in a faultless telescope. Its radius "
        "is 1.22 wavelengths times the focal ratio."},
    Term{"aperture", "", "mm",
         "Clear diameter of the front lens or main mirror: it decides how much light is gathered "
         "and how fine the details can be."},
    Term{"apparent field", "", "°",
         "How wide the round view looks to the eye: about 50° in simple eyepieces, 65° and more in "
         "wide ones."},
    Term{"arcminute", "arcmin", "′",
         "A sixtieth of a degree. Differences between the two eyes' images are told in it."},
    Term{"arm", "arm prism, arm offset", "",
         "The half of a splitter head that carries the light to one eye. Its offset, in mm, is the "
         "way from the head's middle to that eyepiece."},
    Term{"astigmatism", "", "waves",
         "Light of one plane focuses nearer than light of the plane across it, so that a star is "
         "never quite round. Glass that is met aslant causes it."},
    Term{"axial colour", "focus shift, blue focus, red focus", "mm",
         "Red, green and blue light come to focus at different distances, which puts a coloured "
         "rim around bright things."},
    Term{"back focus", "", "mm",
         "How far behind the racked-in drawtube the image of a star lies. It is all the light path "
         "that diagonal, head and adapters together may spend."},
    Term{"baffle", "", "mm",
         "A ring or tube inside the telescope that keeps stray light out. Too narrow, it also cuts "
         "the light cone."},
    Term{"balance point", "", "mm", "Where the tube rests level on a finger, without clamps."},
    Term{"barrel", "barrel length", "mm",
         "The tube in front of an eyepiece's or part's shoulder that slides into a holder; 31.7 mm "
         "and 50.8 mm wide are usual."},
    Term{"bending moment", "twisting moment, lever, load", "Nm",
         "Weight times its distance from what holds it. A heavy head far behind the focuser bends "
         "or twists the drawtube although the scales are content."},
    Term{"brightness", "brightness of areas", "%",
         "How bright nebulae or the Moon's face look; it goes with the exit pupil's area and "
         "with what the glass lets through."},
    Term{"caution", "", "",
         "A sentence about what can hurt: the Sun, weight at the end of a lever, lasers, work in "
         "the dark."},
    Term{"cell", "cell length, ring length", "mm",
         "The ring or tube that holds a lens or filter; its length holds the parts before and "
         "behind it apart."},
    Term{"central obstruction", "obstruction", "%",
         "The shadow of a small mirror in front of the large one, told as a share of the "
         "aperture's diameter."},
    Term{"chance of focus", "how sure focus is", "%",
         "How likely the image falls on the field stops when each length may be off by its ±."},
    Term{"clear opening",
         "opening, clear diameter, entry opening, exit opening, rear port, drawtube opening", "mm",
         "The free diameter through which light passes a part. Narrower than the beam, it clips."},
    Term{"clipping", "vignetting, clipped, left out", "%",
         "An opening narrower than the beam cuts rays off: in the middle the telescope loses "
         "aperture, at the edge the field gets dark."},
    Term{"coating", "mirror coating, lens faces", "",
         "A thin layer on glass or a mirror. On a face of glass it keeps light from being thrown "
         "back, on a mirror it throws more of it on."},
    Term{"coma", "", "waves",
         "Stars away from the middle get a tail to one side. A paraboloid mirror has it, the more "
         "the faster it is."},
    Term{"coma corrector", "wanted spacing, corrector, spacing window, window", "",
         "Lenses in front of a Newtonian's eyepieces that take its coma away, when they stand at "
         "their stated spacing from the image."},
    Term{"compensating glass", "compensator", "mm",
         "A block of glass in one arm of a head that makes both arms spend the same light path."},
    Term{"corrector plate", "figure of the mirrors, meniscus", "",
         "A thin plate of glass in front of a telescope whose mirrors are spheres, bent so little "
         "that one hardly sees it, which takes their spherical aberration away."},
    Term{"counterweight", "", "g",
         "A weight on the other side of the balance point that holds up what hangs behind the "
         "focuser."},
    Term{"cube", "splitting cube, reflected at the cube, lost at the cube", "",
         "Two prisms cemented together in a splitter head. The coated face between them sends part "
         "of the light to one eye and lets the rest go on to the other."},
    Term{"cure", "", "",
         "A change that would mend a finding, worked out and studied anew before it is offered."},
    Term{"diagonal", "mirror diagonal, prism diagonal, entry leg, exit leg, leg", "mm",
         "A mirror or prism that turns the light, mostly by 90°, so that one looks down in "
         "comfort. Its two legs, front face to fold and fold to rear face, make up its length."},
    Term{"dimension", "", "mm",
         "A line between two arrows in the picture, with the length that it measures."},
    Term{"dioptre", "spectacle correction", "D",
         "Strength of a lens: 1 divided by its focal length in metres. A short-sighted eye has "
         "negative dioptres."},
    Term{"drawtube", "extension, held at", "mm",
         "The tube of the focuser that slides in and out. Fully in is called racked in; how far it "
         "stands out is its extension."},
    Term{"drift timing", "time across the field, declination of the star", "s",
         "A star crosses the view of a telescope that stands still; the seconds that it takes, and "
         "how far it is from the celestial equator, tell how wide the view is."},
    Term{"effective focal length", "", "mm",
         "The telescope's focal length at the present focus times what shifters make of it."},
    Term{"erecting diagonal", "roof prism", "",
         "A diagonal whose prism has two faces like a roof, so that all is seen upright and the "
         "right way round, as by day one wants it."},
    Term{"exit pupil", "", "mm",
         "Width of the beam that leaves the eyepiece: aperture divided by magnification. What is "
         "wider than the eye's own pupil is lost."},
    Term{"eye relief", "", "mm",
         "How far behind the eyepiece the eye must be to see the whole field. With spectacles on, "
         "15 mm to 20 mm are wanted."},
    Term{"eyepiece pair", "eyepiece", "",
         "Two equal magnifiers, one for each eye, through which the image on the field stops is "
         "looked at."},
    Term{"field stop", "field stop depth", "mm",
         "The ring in an eyepiece that bounds the view. The image must fall on it to be sharp; its "
         "depth says where it lies from the eyepiece's shoulder."},
    Term{"filter", "", "",
         "A plane plate of glass that takes out part of the light. It also moves the image outward "
         "by about a third of its thickness. None at this end makes the Sun safe to look at."},
    Term{"finding", "", "",
         "What you should know of this setup, in a sentence: it fails, it is poor, or it is worth "
         "a note."},
    Term{"fit", "tightest nose, widest housing, between the eyepieces", "mm",
         "Whether eyes, nose, housings and barrels have room beside each other at your pupil "
         "distance."},
    Term{"fitting", "thread, front fitting, rear fitting, joint", "",
         "The barrel, holder or screw thread at the end of a part. Two parts can be joined when "
         "one goes into the other."},
    Term{"focal length", "", "mm",
         "The way from a lens or mirror to the image it makes of a star. Longer magnifies more; in "
         "eyepieces, shorter does."},
    Term{"focal ratio", "f-number", "f/",
         "Focal length divided by aperture, written f/7. A small number is called fast: its cone "
         "of light is wide and is clipped more easily."},
    Term{"focus budget", "path left", "mm",
         "The back focus and what each part takes from it. What is left is how far the drawtube "
         "must stand out; less than nothing means no focus."},
    Term{"focus margin", "margin, reach, refocus, short by", "mm",
         "How much farther the drawtube could still go in or out from where it is in focus. Where "
         "it cannot go in far enough, the setup is short of focus by so many millimetres."},
    Term{"focus shifter", "shifter, lens position", "",
         "A lens in the chain that moves the image outward, so that light path is gained, and "
         "magnifies. Both depend on how far it is from the field stop."},
    Term{"focuser", "", "",
         "What brings the image to the eyepieces: a drawtube that slides, or a main mirror that "
         "moves."},
    Term{"fully lit diameter", "fully lit, fully illuminated diameter, field seen in full light",
         "mm",
         "Width of the middle of the field to which every part of the aperture sends its light."},
    Term{"gain", "shifter gain, stated gain", "mm",
         "How much farther outward a shifter moves the image: so much more light path may be "
         "spent."},
    Term{"ghost", "", "",
         "A see-through picture of where parts would stand after a change that you only point at."},
    Term{"glass", "glass type, corrected for glass", "",
         "The kind of glass by its catalogue name. A higher index bends light more and shortens "
         "what a block of it takes of the light path."},
    Term{"hinge", "", "°",
         "The joint about which the arms of a head turn to fit the distance of two eyes; the light "
         "path stays as it is."},
    Term{"illumination", "light at the field stops, edge, enters the eye", "%",
         "How much of the light that belongs there arrives at a place of the field."},
    Term{"image rotation", "turned against each other, image stands", "°",
         "How far an image is turned. Mirrors and prisms turn and mirror it; both eyes must see "
         "the same."},
    Term{"index of refraction", "index", "",
         "How much slower light is in a glass than in air; about 1.5. It differs with colour."},
    Term{"lateral colour", "colour apart", "µm",
         "The red image is a little larger or smaller than the blue one, which gives things near "
         "the edge of the view a coloured side."},
    Term{"leak", "leaked, reflecting faces", "%",
         "A bare face inside a prism throws back only rays that meet it aslant enough. Steep rays "
         "of a fast telescope pass through it and are lost."},
    Term{"light path", "stated light path, path", "mm",
         "How much of the back focus a part takes. Air counts in full; glass counts its length "
         "divided by its index of refraction, so that it costs less than its length."},
    Term{"magnification", "power", "×",
         "How many times larger things look: effective focal length divided by the eyepiece's."},
    Term{"magnitude", "faintest star, companion fainter by", "mag",
         "Brightness of a star; one more is fainter by 2.5 times."},
    Term{"main mirror", "main mirror alone", "mm",
         "The large curved mirror at the bottom of a mirror telescope, which gathers the light."},
    Term{"merging", "fusing, two eyes, images apart in height, eyes must turn", "′",
         "What the brain does with two images that are nearly alike. It bears little height "
         "between them, and eyes turned outward, far less than eyes turned inward."},
    Term{
        "moving-mirror Cassegrain", "main mirror moved up, mirror travel", "",
        "A short telescope with two curved mirrors that focuses by moving the large one. It nearly "
        "always reaches focus, and its focal length grows with the light path."},
    Term{"Newtonian", "axis to drawtube", "",
         "A telescope that gathers light with a curved mirror and turns it out sideways with a "
         "flat one. Its back focus is short."},
    Term{"nose", "nose length", "mm",
         "The barrel at the front of a splitter head or adapter; a shifter is often screwed into "
         "it."},
    Term{"objective", "", "", "The front lens of a refractor, or the main mirror of a reflector."},
    Term{"observer", "", "", "Who looks: pupil distance, pupil size, dioptres, spectacles or not."},
    Term{
        "optical path", "light in motion", "mm",
        "Length times the index of refraction: what the time of light follows, for glass slows it. "
        "Not the light path, which divides by the index and is what focus spends."},
    Term{"parallelism", "alignment", "′",
         "How parallel the two beams leave the eyepieces. Prisms that are tilted a little, or "
         "eyepieces out of the middle of their seats, spoil it."},
    Term{"prism width", "prism", "mm",
         "The side of a prism's square face: the beam inside a head has no more room than that."},
    Term{"pupil distance", "pupil distance with a mirror", "mm",
         "From the middle of one pupil to the middle of the other when you look far away; about "
         "55 mm to 72 mm in grown-ups. The eyepieces must stand as far apart."},
    Term{"pupil of the eye", "eye pupil, pupil", "mm",
         "The eye's own opening: about 2 mm to 3 mm by day, 5 mm to 7 mm in the dark."},
    Term{"rated load", "mass, tube mass", "g",
         "What its maker says a focuser may carry. Weight behind it is held against that."},
    Term{"rear face", "mirror to rear face", "mm",
         "The end of a part towards the eyes. From the drawtube's, racked in, the back focus is "
         "measured."},
    Term{"refractor", "", "", "A telescope with a lens in front."},
    Term{"resolution", "", "″",
         "The closest double star that can still be told apart, in arcseconds (3600 to a degree)."},
    Term{"rhomboid prism", "rhomboid, outer prism, inner prism", "mm",
         "A slanted block of glass with two mirror faces that carries a beam aside and leaves its "
         "direction as it was."},
    Term{"seat", "seat height, seat travel, seat shift", "mm",
         "Where an eyepiece's shoulder rests on the head. Each seat can be screwed in and out a "
         "little to suit each eye."},
    Term{"secondary", "secondary holder", "mm",
         "The small mirror in a mirror telescope, with its holder in the way of the light."},
    Term{"shifter factor", "factor, stated factor", "×",
         "How much a shifter magnifies at its real spacing: 1 plus its distance to the field stop "
         "divided by its focal length. The one on its label is true for one spacing only."},
    Term{"shoulder", "", "mm",
         "The edge of an eyepiece or part that rests on its seat; its barrel is in front of it."},
    Term{"slide", "slide of each arm, sliding head, mechanism", "mm",
         "In some heads the arms slide apart instead of turning on a hinge. Then the light path "
         "changes with the pupil distance, and focus with it."},
    Term{"spacer", "adapter, extension tube", "mm",
         "An empty tube or ring between two parts; it takes its own length of the light path."},
    Term{"spectacles", "spectacle distance", "mm",
         "Worn at the telescope for astigmatism of the eye, they keep the eye back from the "
         "eyepiece: mind the eye relief. Short or long sight alone is focused away without them."},
    Term{"spectral lines", "lines, wavelength", "nm",
         "Blue, green and red light of 486 nm, 546 nm and 656 nm (the lines F, e and C), in which "
         "the tracing is done."},
    Term{"spherical aberration", "spherical", "waves",
         "Rays through the rim and rays through the middle focus at different distances. Much "
         "glass in a fast cone causes it."},
    Term{"splitter head", "head", "",
         "A box of prisms that divides the telescope's beam and carries it to two eyepieces, one "
         "for each eye."},
    Term{"spot", "", "µm",
         "The patch that the rays of one star make, told by the root mean square of their "
         "distances from its middle."},
    Term{"Strehl ratio", "peak, sharpness", "%",
         "How bright the middle of a star's image is against a faultless telescope's. From 80 % on "
         "nobody sees a fault of the wavefront."},
    Term{"target", "", "", "What is looked at: the sky, or something at a distance."},
    Term{"throughput", "transmission, lost", "%",
         "Share of the light that comes through all glass and mirrors to one eye."},
    Term{"travel", "", "mm",
         "How far something can move: the drawtube from fully in to fully out, a seat, a mirror."},
    Term{"true field", "width on the sky", "°", "How much of the sky is seen at once."},
    Term{"uncertainty", "plus or minus", "mm",
         "How far a value may be from what is stated, written with ±: from a datasheet, a ruler "
         "or a guess."},
    Term{"unfolded path", "", "mm",
         "The whole train drawn straight, as if no mirror or prism turned it: lengths along, the "
         "beam's width across."},
    Term{"vanes", "spider vanes, vane width", "mm",
         "The thin blades that carry a Newtonian's secondary; each puts a spike on bright stars."},
    Term{"wavefront", "", "waves",
         "The surface to which the light has come at one moment. How far it is from a perfect "
         "sphere is told in waves of light; 0.071 (root mean square) leaves a Strehl ratio of "
         "80 %."},
    Term{"working aperture", "", "mm",
         "The part of the aperture whose light still reaches the middle of the field."},
    Term{"zenith", "room at the zenith, free at the zenith", "mm",
         "Straight overhead. A tube that points there needs free room behind it for focuser, "
         "diagonal and head."},
};

}  // namespace

std::span<const Term> glossary_table() { return terms; }

}  // namespace beamfork
