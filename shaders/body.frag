// Bodies, or parts of bodies, that no cut runs through. A back face is seen only through a cut nearby.
in vec3 v_colour;
out vec4 o_colour;

uniform vec3 u_rim;  // display colour of the cut

void main() {
    o_colour = vec4(gl_FrontFacing ? v_colour : u_rim, 1.0);
#ifdef FADES
    o_colour.a = what_stays(gl_FragCoord.xy);
    if (o_colour.a <= 0.0) discard;
#endif
}
