// Bodies opened towards the viewer or cut by a plane. Bodies are closed, so a back face is seen only through the
// cut: painted in one bright tone it looks like the solid wall that was cut.
in vec3 v_world;
in vec3 v_colour;
out vec4 o_colour;

uniform int u_by_plane;  // 1: cut by the plane x = u_section_x, else opened about the axis
uniform vec3 u_axis_point;
uniform vec3 u_axis;
uniform vec4 u_opening;  // direction to the viewer across the axis; cosine of half the opening
uniform float u_section_x;
uniform vec3 u_rim;  // display colour of the cut

// How far inside the metal that stays, in any unit that grows evenly.
float beyond_cut() {
    if (u_by_plane == 1) return v_world.x - u_section_x;
    vec3 d = v_world - u_axis_point;
    d -= dot(d, u_axis) * u_axis;
    return u_opening.w - dot(d, u_opening.xyz) * inversesqrt(dot(d, d) + 1e-8);
}

void main() {
    float beyond = beyond_cut();
    float pixels = beyond / max(fwidth(beyond), 1e-7);
    float coverage = clamp(pixels + 0.5, 0.0, 1.0);
    if (coverage <= 0.0) discard;
    float rim = gl_FrontFacing ? 0.85 * clamp(1.7 - pixels / PIXEL_SCALE, 0.0, 1.0) : 1.0;
    o_colour = vec4(mix(v_colour, u_rim, rim), coverage);
#ifdef FADES
    o_colour.a *= what_stays(gl_FragCoord.xy);
    if (o_colour.a <= 0.0) discard;
#endif
}
